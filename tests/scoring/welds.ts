import {
  defaultWeave,
  type HandFaults,
  noFaults,
  type Pose,
  type Recording,
  recordPoses,
  weaveHand,
} from '../../engine/index.ts';
import { type AttemptRecording, checkRecording, type Exercise, freeExercise } from '../../scoring/index.ts';

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

export function weld(w: Weld = {}): AttemptRecording {
  const exercise = exerciseOf(w);
  const faults = { ...noFaults(1), ...w.faults };
  const poses = [...weaveHand(exercise.demonstration, faults)];
  const device = w.device ?? ROBOT;
  const recording = recordPoses(
    {
      simulation: { joint: exercise.joint, process: exercise.process, cell_mm: 0.75 },
      origin: device.kind === 'robot' ? { kind: 'robot', weave: exercise.demonstration, faults } : { kind: 'hand' },
      device,
      aids: { pacer: false, beat: false, toeMarks: false, plainView: false, handRig: null },
      exercise,
    },
    w.hand?.(poses) ?? poses,
  );
  return checkRecording(JSON.parse(JSON.stringify(recording)), 'weld');
}
