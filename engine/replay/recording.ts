/**
 * Recordings: settings and quantised poses, enough to weld the same bead again. What is stepped while welding is already quantised,
 * so a replay sees the very same numbers.
 */
import type { StateChoices } from '../cold-piece.ts';
import { EngineError } from '../input/error.ts';
import type { SimulationOptions } from '../input/options.ts';
import type { Pose } from '../input/pose.ts';
import { POSE_RATE_HZ } from '../input/pose.ts';
import type { TraceSample } from '../output/trace.ts';
import { createSimulation, type Simulation } from '../simulation.ts';
import { ENGINE_VERSION } from '../version.ts';
import { type ChainFinding, chainOf, checkChain, Seconds } from './chain.ts';
import type { AidsInUse, DeviceInfo, Ending, Origin, Recording, Trainee } from './format.ts';

/** Quanta of the pose columns: whole numbers of these. */
export const QUANTUM = {
  u_mm: 0.01,
  y_mm: 0.01,
  tipToWork_mm: 0.01,
  workAngle_deg: 0.1,
  travelAngle_deg: 0.1,
} as const;
/** Twenty minutes: longer than any single-pass coupon. */
export const LONGEST_POSES = 20 * 60 * POSE_RATE_HZ;

/** What stands in a recording besides the weld: who made it, when, and with what. */
export interface AttemptMeta {
  /** A robot's faults, where it has any, carry the seed the recording gives. */
  origin: Origin;
  device: DeviceInfo;
  aids: AidsInUse;
  exercise: unknown;
  /** Left out: nobody gave a name. */
  trainee?: Trainee | null;
  /** When the attempt began, ISO 8601; left out: not known. The engine has no clock. */
  started?: string | null;
}

/** The same with the joint and settings, for a whole attempt in one go. */
export interface RecordingMeta extends AttemptMeta {
  simulation: SimulationOptions;
}

/** An attempt being taken down. */
export interface Recorder {
  readonly length: number;
  /**
   * Takes a pose down and returns it as it will be replayed: step this one.
   * @throws EngineError 'too-long' past twenty minutes, 'out-of-step' where the pose before was not stepped
   */
  add(pose: Pose): Pose;
  /** Check numbers of the weld so far: one a second, and where it stands now. */
  states(): string[];
  /** Closes the recording with the check number of the welded state and the chain of all before it. */
  finish(ended: Ending): Recording;
}

const quantise = (value: number, quantum: number): number => {
  const n = Math.round(value / quantum);
  return n === 0 ? 0 : n;
};

/** Takes down an attempt on a cold piece pose by pose. Step the pose that `add` hands back, not the one put in. */
export function createRecorder(sim: Simulation, meta: AttemptMeta): Recorder {
  const columns: Recording['poses'] = { u: [], y: [], tip: [], work: [], travel: [], trigger: [] };
  const seconds = new Seconds();
  return {
    get length() {
      return columns.u.length;
    },
    add(pose) {
      const n = columns.u.length;
      if (n >= LONGEST_POSES)
        throw new EngineError('too-long', 'poses', n, `at most ${LONGEST_POSES} poses (twenty minutes)`);
      if (sim.steps !== n)
        throw new EngineError(
          'out-of-step',
          'poses',
          `pose ${n} with ${sim.steps} stepped`,
          'each pose stepped before the next',
        );
      seconds.note(sim);
      columns.u.push(quantise(pose.u_mm, QUANTUM.u_mm));
      columns.y.push(quantise(pose.y_mm, QUANTUM.y_mm));
      columns.tip.push(quantise(pose.tipToWork_mm, QUANTUM.tipToWork_mm));
      columns.work.push(quantise(pose.workAngle_deg, QUANTUM.workAngle_deg));
      columns.travel.push(quantise(pose.travelAngle_deg, QUANTUM.travelAngle_deg));
      columns.trigger.push(pose.trigger ? 1 : 0);
      return poseAt(columns, n);
    },
    states: () => seconds.all(sim),
    finish(ended) {
      const states = seconds.all(sim);
      const made = {
        format: 'toehold-recording',
        version: 2,
        engine: ENGINE_VERSION,
        simulation: sim.options,
        rate_Hz: POSE_RATE_HZ,
        poses: columns,
        origin: meta.origin,
        device: meta.device,
        aids: meta.aids,
        trainee: meta.trainee ?? null,
        started: meta.started ?? null,
        seed: meta.origin.faults?.seed ?? null,
        exercise: meta.exercise,
        ended,
        stateHash: states.at(-1)!,
      } as const;
      return { ...made, chain: chainOf(made, states) };
    },
  };
}

/** Whole numbers divide back exactly the same everywhere: n / 100, never n * 0.01. */
function poseAt(poses: Recording['poses'], n: number): Pose {
  return {
    u_mm: poses.u[n]! / 100,
    y_mm: poses.y[n]! / 100,
    tipToWork_mm: poses.tip[n]! / 100,
    workAngle_deg: poses.work[n]! / 10,
    travelAngle_deg: poses.travel[n]! / 10,
    trigger: poses.trigger[n] === 1,
  };
}

/** A recording's poses, one each 1/100 s, as they were stepped. */
export function* poses(recording: Recording): Generator<Pose> {
  for (let n = 0; n < recording.poses.u.length; n++) yield poseAt(recording.poses, n);
}

/**
 * Welds a recording again. `onStep` sees every trace (reused object) and the attempt so far.
 * @throws EngineError when options or poses are out of range.
 */
export function replay(
  recording: Recording,
  onStep?: (trace: TraceSample, sim: Simulation) => void,
  choices: StateChoices = {},
): Simulation {
  const sim = createSimulation(recording.simulation, choices);
  for (const pose of poses(recording)) {
    const trace = sim.step(pose);
    onStep?.(trace, sim);
  }
  return sim;
}

/** Welds a recording again and follows its chain. */
export function verifyRecording(recording: Recording): ChainFinding {
  const seconds = new Seconds();
  const sim = replay(recording, (_trace, at) => seconds.note(at));
  return checkChain(recording, seconds.all(sim));
}

/** Welds a whole attempt, a robot's or any list of poses, and takes it down. */
export function recordPoses(meta: RecordingMeta, hand: Iterable<Pose>): Recording {
  const sim = createSimulation(meta.simulation);
  const recorder = createRecorder(sim, meta);
  for (const pose of hand) sim.step(recorder.add(pose));
  return recorder.finish('hand-finished');
}
