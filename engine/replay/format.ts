import type { HandFaults } from '../hand/robot.ts';
import type { WeaveOptions } from '../hand/weave.ts';
import type { SimulationOptions } from '../input/options.ts';

/** Whose hand held the torch. A robot stays marked as one wherever its recording goes. */
export interface Origin {
  kind: 'hand' | 'robot';
  /** Pattern and faults where a robot welded. */
  weave?: WeaveOptions;
  faults?: HandFaults;
}

/** What the torch was moved with, and what of the hand it could measure. */
export interface DeviceInfo {
  kind: 'mouse' | 'touch' | 'pen' | 'gamepad' | 'keyboard' | 'robot';
  /** What the device really measured; the rest was held by the exercise. */
  measures: { tipToWork: boolean; workAngle: boolean; travelAngle: boolean };
  /** Millimetres of joint per millimetre of hand, if known (1 after calibration). */
  scale: number | null;
}

/** Guides that were shown while welding. */
export interface AidsInUse {
  /** The torch that showed the weave to go by. */
  pacer: boolean;
  beat: boolean;
  toeMarks: boolean;
  plainView: boolean;
  /** The hand rig between pointer and torch, or null. */
  handRig: { gun_g: number; hose: number } | null;
}

/** Who welded, and where, as they gave it: names on a class sheet. */
export interface Trainee {
  name: string;
  bench: string;
}

/**
 * Why an attempt ended: by the welder; off the top of the joint; because the hand had no more to do (a weave welded out); after the longest
 * time an attempt may take; because the machine fell behind real time; because the page was closed or stopped under it.
 */
export const ENDINGS = ['stopped', 'length-reached', 'hand-finished', 'time-limit', 'too-slow', 'interrupted'] as const;

/** One of `ENDINGS`. */
export type Ending = (typeof ENDINGS)[number];

/** Everything needed to weld the same bead again. Pose columns are whole numbers of the quanta in recording.ts. */
export interface Recording {
  format: 'toehold-recording';
  version: 2;
  engine: string;
  simulation: SimulationOptions;
  rate_Hz: number;
  poses: {
    u: number[];
    y: number[];
    tip: number[];
    work: number[];
    travel: number[];
    trigger: number[];
  };
  origin: Origin;
  device: DeviceInfo;
  aids: AidsInUse;
  /** Null where nobody gave a name. */
  trainee: Trainee | null;
  /** When the attempt began, ISO 8601 date and time; null where nobody knows (a robot's file from the command line). */
  started: string | null;
  /** Seed of the robot hand's faults; null for a hand. */
  seed: number | null;
  /** Name of the exercise or null for a free attempt, and the exercise as it stood, as the scoring layer wrote it. */
  exercise: unknown;
  ended: Ending;
  /** State hash at the end, as the welding machine had it. */
  stateHash: string | null;
  /** Check numbers second by second (chain.ts); null in files of version 1 and where poses or settings were changed on purpose. */
  chain: string[] | null;
}
