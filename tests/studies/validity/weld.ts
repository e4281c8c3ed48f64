import {
  createRecorder,
  createSimulation,
  type HandFaults,
  noFaults,
  type Pose,
  type SimulationOptions,
  weaveHand,
} from '../../../engine/index.ts';
import {
  type AttemptRecording,
  type Exercise,
  freeExercise,
  judgeAttempt,
  type Result,
  recordingSchema,
  Trace,
} from '../../../scoring/index.ts';

/** A weld of a cohort: joint and settings, weave, hand. */
export interface Case {
  setting: SettingName;
  weave?: Partial<Exercise['demonstration']>;
  faults?: Partial<HandFaults>;
  seed: number;
}

/**
 * Joints and settings the cohorts weld: short, so that many can be. What a workshop would weld (size no more than the plate, the edge plate of a lap
 * at least the size and 1 mm more), chosen where the steady robot is within or too close to call.
 */
export const settings = {
  tee: {
    joint: { kind: 'tee', plateA_mm: 5, plateB_mm: 5, length_mm: 50 },
    process: { feed_mpmin: 4.6, volts_V: 19 },
    weave: { cyclesPerSecond: 0.9, width_mm: 5, travel_mmps: 2.2, pauseA_s: 0.25, pauseB_s: 0.25, apex_mm: 2 },
    leg_mm: 5,
  },
  'thin tee': {
    joint: { kind: 'tee', plateA_mm: 4, plateB_mm: 4, length_mm: 50 },
    process: { feed_mpmin: 4.2, volts_V: 18.5 },
    weave: { cyclesPerSecond: 1, width_mm: 4, travel_mmps: 2.4, pauseA_s: 0.2, pauseB_s: 0.2, apex_mm: 1.5 },
    leg_mm: 4.3,
  },
  'tee, 1.0 wire': {
    joint: { kind: 'tee', plateA_mm: 6, plateB_mm: 6, length_mm: 50 },
    process: { wire_mm: 1, feed_mpmin: 4.4, volts_V: 19 },
    weave: { cyclesPerSecond: 1, width_mm: 5.5, travel_mmps: 2.6, pauseA_s: 0.2, pauseB_s: 0.2, apex_mm: 2.5 },
    leg_mm: 5,
  },
  lap: {
    joint: { kind: 'lap', plateA_mm: 6, plateB_mm: 6, length_mm: 50 },
    process: { feed_mpmin: 4.8, volts_V: 19 },
    weave: {
      cyclesPerSecond: 0.9,
      width_mm: 5,
      travel_mmps: 2.2,
      pauseA_s: 0.3,
      pauseB_s: 0.1,
      apex_mm: 1.5,
      workAngle_deg: 50,
    },
    leg_mm: 5,
  },
} as const;
export type SettingName = keyof typeof settings;
export const settingNames = Object.keys(settings) as SettingName[];
/** Settings in which single faults are graded and asked about: the job's two joints. The cohorts weld all of them. */
export const mainSettings = ['tee', 'lap'] as const satisfies readonly SettingName[];

/** As the ready lap exercise asks. */
const EDGE_BACK_MM = 2;

export function exerciseOf(c: Pick<Case, 'setting' | 'weave'>): Exercise {
  const s = settings[c.setting];
  const asked = freeExercise({
    joint: s.joint,
    process: s.process,
    weave: { ...s.weave, start_mm: 2, length_mm: s.joint.length_mm - 4 },
    leg_mm: s.leg_mm,
    profile: 'aws-d11-static-si',
  });
  const edgeBack_mm = s.joint.kind === 'lap' ? EDGE_BACK_MM : null;
  return {
    ...asked,
    asked: { ...asked.asked, edgeBack_mm },
    demonstration: { ...asked.demonstration, ...c.weave },
  };
}

/** Welds and scores in one go. */
export function weldCase(c: Case): { recording: AttemptRecording; result: Result } {
  const exercise = exerciseOf(c);
  const faults: HandFaults = { ...noFaults(c.seed), ...c.faults, seed: c.seed };
  return weldPoses(exercise, weaveHand(exercise.demonstration, faults), {
    origin: { kind: 'robot', weave: exercise.demonstration, faults },
  });
}

/** What a file says of itself beside exercise and poses, where it is not a hand's with a pen at the bench. */
export interface Said {
  origin?: AttemptRecording['origin'];
  device?: AttemptRecording['device'];
  aids?: Partial<AttemptRecording['aids']>;
  started?: string;
  cell_mm?: number;
}

export function weldPoses(
  exercise: Exercise,
  hand: Iterable<Pose>,
  said: Said = {},
): { recording: AttemptRecording; result: Result } {
  const { origin = { kind: 'hand' }, cell_mm = 0.75 } = said;
  const simulation: SimulationOptions = { joint: exercise.joint, process: exercise.process, cell_mm };
  const sim = createSimulation(simulation);
  const recorder = createRecorder(sim, {
    origin,
    device: said.device ?? {
      kind: origin.kind === 'robot' ? 'robot' : 'pen',
      measures: { tipToWork: true, workAngle: true, travelAngle: true },
      scale: 1,
    },
    aids: { pacer: false, beat: false, toeMarks: false, plainView: false, handRig: null, ...said.aids },
    ...(said.started === undefined ? {} : { started: said.started }),
    exercise,
  });
  const trace = new Trace();
  for (const pose of hand) trace.add(sim.step(recorder.add(pose)));
  const recording = recordingSchema.parse(recorder.finish('hand-finished'));
  const attempt = {
    simulation,
    trace,
    section: sim.section,
    accounts: sim.accounts(),
    stateHash: sim.hash(),
    states: recorder.states(),
  };
  return { recording, result: judgeAttempt(recording, attempt) };
}

/** Largest error of a weld's own accounts of mass and energy, share. */
export function booksOf({ books }: Result): number {
  return Math.max(
    Math.abs(books.massError ?? Number.POSITIVE_INFINITY),
    Math.abs(books.energyError ?? Number.POSITIVE_INFINITY),
  );
}
