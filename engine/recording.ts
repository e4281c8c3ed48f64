/**
 * Recordings: settings and quantised poses, enough to weld the same bead again. What is stepped while welding is already quantised,
 * so a replay sees the very same numbers.
 */
import { EngineError } from './options.ts';
import { createSimulation, type Simulation } from './simulation.ts';
import { POSE_RATE_HZ, type StateChoices } from './state.ts';
import type { AidsInUse, DeviceInfo, Origin, Pose, Recording, SimulationOptions, TraceSample } from './types.ts';
import { ENGINE_VERSION } from './version.ts';

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

/** What stands in a recording besides the poses. */
export interface RecordingMeta {
  simulation: SimulationOptions;
  origin: Origin;
  device: DeviceInfo;
  aids: AidsInUse;
  seed: number;
  exercise: unknown;
}

/** An attempt being taken down. */
export interface Recorder {
  readonly length: number;
  /** Takes a pose down and returns it as it will be replayed: step this one. */
  add(pose: Pose): Pose;
  /** Closes the recording with the check number of the welded state. */
  finish(sim: Simulation, ended: Recording['ended']): Recording;
}

const whole = (value: number, quantum: number): number => {
  const n = Math.round(value / quantum);
  return n === 0 ? 0 : n;
};

/** Takes down an attempt pose by pose. Step the pose that `add` hands back, not the one put in. */
export function createRecorder(meta: RecordingMeta): Recorder {
  const poses: Recording['poses'] = { u: [], y: [], tip: [], work: [], travel: [], trigger: [] };
  return {
    get length() {
      return poses.u.length;
    },
    add(pose) {
      const n = poses.u.length;
      if (n >= LONGEST_POSES)
        throw new EngineError('too-long', 'poses', n, `at most ${LONGEST_POSES} poses (twenty minutes)`);
      poses.u.push(whole(pose.u_mm, QUANTUM.u_mm));
      poses.y.push(whole(pose.y_mm, QUANTUM.y_mm));
      poses.tip.push(whole(pose.tipToWork_mm, QUANTUM.tipToWork_mm));
      poses.work.push(whole(pose.workAngle_deg, QUANTUM.workAngle_deg));
      poses.travel.push(whole(pose.travelAngle_deg, QUANTUM.travelAngle_deg));
      poses.trigger.push(pose.trigger ? 1 : 0);
      return poseAt(poses, n);
    },
    finish: (sim, ended) => ({
      format: 'toehold-recording',
      version: 1,
      engine: ENGINE_VERSION,
      simulation: meta.simulation,
      rate_Hz: POSE_RATE_HZ,
      poses,
      origin: meta.origin,
      device: meta.device,
      aids: meta.aids,
      seed: meta.seed,
      exercise: meta.exercise,
      ended,
      stateHash: sim.hash(),
    }),
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

/** Welds a whole robot attempt and takes it down. */
export function recordPoses(meta: RecordingMeta, hand: Iterable<Pose>): Recording {
  const recorder = createRecorder(meta);
  const sim = createSimulation(meta.simulation);
  for (const pose of hand) sim.step(recorder.add(pose));
  return recorder.finish(sim, 'length-reached');
}
