import {
  createRecorder,
  createSimulation,
  defaultWeave,
  type HandFaults,
  handOfAmount,
  noFaults,
  type Pose,
  type Recording,
  type RecordingMeta,
  weaveHand,
} from '../../engine/index.ts';
import {
  type Attempt,
  type AttemptRecording,
  checkRecording,
  type Exercise,
  freeExercise,
  judgeAttempt,
  type Result,
  type ScoreOptions,
  Trace,
} from '../../scoring/index.ts';

/** A short tee welded by the robot hand, as a recording with its exercise; every field of the exercise can be set. */
export interface Weld {
  joint?: Partial<Exercise['joint']>;
  process?: Partial<Exercise['process']>;
  weave?: Partial<Exercise['demonstration']>;
  faults?: Partial<HandFaults>;
  leg_mm?: number;
  profile?: string;
  /** Changes the robot's poses before they are welded. */
  hand?: (poses: Pose[]) => Pose[];
  device?: Recording['device'];
}

export const ROBOT: Recording['device'] = {
  kind: 'robot',
  measures: { tipToWork: true, workAngle: true, travelAngle: true },
  scale: 1,
};
export const MOUSE: Recording['device'] = {
  kind: 'mouse',
  measures: { tipToWork: false, workAngle: false, travelAngle: false },
  scale: null,
};

/** A hand that wanders, as hands do, with what a mouse does not measure held: nothing in its file speaks against itself. */
export function byMouse(seed: number, amount = 0.3): Pick<Weld, 'device' | 'faults' | 'hand'> {
  return {
    device: MOUSE,
    faults: handOfAmount(seed, amount),
    hand: (poses) => poses.map((p) => ({ ...p, tipToWork_mm: 12, workAngle_deg: 45, travelAngle_deg: 8 })),
  };
}

export function exerciseOf(w: Weld): Exercise {
  const length_mm = w.joint?.length_mm ?? 60;
  return freeExercise({
    joint: { plateA_mm: 6, plateB_mm: 6, length_mm, ...w.joint },
    process: { feed_mpmin: 5, volts_V: 18, ...w.process },
    weave: { ...defaultWeave(), start_mm: 2, length_mm: length_mm - 4, ...w.weave },
    leg_mm: w.leg_mm ?? 5,
    profile: w.profile ?? 'aws-d11-static-si',
  });
}

/** What was seen while a recording was welded, so that judging it need not weld it again. */
const attempts = new WeakMap<AttemptRecording, Attempt>();

/** Welds poses as the game does: recorded, traced and read as a file would be. */
export function record(meta: RecordingMeta, poses: Iterable<Pose>): AttemptRecording {
  const sim = createSimulation(meta.simulation);
  const recorder = createRecorder(sim, meta);
  const trace = new Trace();
  for (const pose of poses) trace.add(sim.step(recorder.add(pose)));
  const file = recorder.finish('hand-finished');
  const recording = checkRecording(JSON.parse(JSON.stringify(file)), 'weld');
  attempts.set(recording, {
    simulation: recording.simulation,
    trace,
    section: (y_mm) => sim.section(y_mm),
    accounts: sim.accounts(),
    stateHash: sim.hash(),
    states: recorder.states(),
  });
  return recording;
}

/** What was seen of a weld of this file. @throws for a recording that `record` or `weld` has not just made */
export function seen(recording: AttemptRecording): Attempt {
  const attempt = attempts.get(recording);
  if (!attempt) throw new Error('not welded here: use attemptOf or scoreAttempt');
  return attempt;
}

/** Judges a weld of this file from what was seen of it. That welding it again gives the same is tested by itself. */
export function judge(recording: AttemptRecording, options: ScoreOptions = {}): Result {
  return judgeAttempt(recording, seen(recording), options);
}

/** Welds without a change to the hand, by what was asked for. */
const made = new Map<string, AttemptRecording>();

/** A recording of one's own of this weld; it is welded once by a worker. */
export function weld(w: Weld = {}): AttemptRecording {
  if (w.hand) return weldNow(w);
  const key = JSON.stringify(w);
  const first = made.get(key) ?? weldNow(w);
  made.set(key, first);
  const own = structuredClone(first);
  attempts.set(own, seen(first));
  return own;
}

function weldNow(w: Weld): AttemptRecording {
  const exercise = exerciseOf(w);
  const faults = { ...noFaults(1), ...w.faults };
  const poses = [...weaveHand(exercise.demonstration, faults)];
  const device = w.device ?? ROBOT;
  return record(
    {
      simulation: { joint: exercise.joint, process: exercise.process, cell_mm: 0.75 },
      origin: device.kind === 'robot' ? { kind: 'robot', weave: exercise.demonstration, faults } : { kind: 'hand' },
      device,
      aids: { pacer: false, beat: false, toeMarks: false, plainView: false, handRig: null },
      exercise,
    },
    w.hand?.(poses) ?? poses,
  );
}
