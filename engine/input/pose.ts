/** The hand's part: where the torch is held, how often that is taken, what is refused and what is brought to the nearest end. */
import { clamp } from '../numerics/math.ts';
import { EngineError } from './error.ts';

/** Where the hand holds the torch. Sampled every 1/100 s (POSE_RATE_HZ). */
export interface Pose {
  /** Aim point across the joint in the welder's view; + towards plate A. */
  u_mm: number;
  /** Aim point up the joint. */
  y_mm: number;
  /** Distance from contact tip to the reference face (see torch.ts) along the wire. The arc's true tip-to-work is in the trace. */
  tipToWork_mm: number;
  /** Angle of the wire from plate A's (the back plate's) face; 45 splits a right-angled corner evenly. */
  workAngle_deg: number;
  /** Push positive: the wire points up the joint, the way of travel. */
  travelAngle_deg: number;
  trigger: boolean;
}

/** Poses a second; everything recorded is in these steps. */
export const POSE_RATE_HZ = 100;

/** What a hand and a torch can do; poses outside are brought to the nearest end. */
export const POSE_LIMITS = {
  tipToWork_mm: [4, 40],
  workAngle_deg: [10, 80],
  travelAngle_deg: [-45, 45],
} as const;

const FIELDS = ['u_mm', 'y_mm', 'tipToWork_mm', 'workAngle_deg', 'travelAngle_deg'] as const;

/** @throws EngineError 'bad-pose' for what is not finite */
export function checkPose(pose: Pose): void {
  for (const field of FIELDS) {
    if (!Number.isFinite(pose[field]))
      throw new EngineError('bad-pose', `pose.${field}`, pose[field], 'a finite number');
  }
  if (typeof pose.trigger !== 'boolean')
    throw new EngineError('bad-pose', 'pose.trigger', pose.trigger, 'true or false');
}

/** Aim points farther off the joint than this are brought to this distance: still off the joint, never a huge number. */
const FAR_MM = 1000;

export function createPose(): Pose {
  return { u_mm: 0, y_mm: 0, tipToWork_mm: 0, workAngle_deg: 0, travelAngle_deg: 0, trigger: false };
}

/** Copies a pose, an aim far off the joint brought nearer. */
export function copyPose(to: Pose, from: Pose): void {
  to.u_mm = clamp(from.u_mm, -FAR_MM, FAR_MM);
  to.y_mm = clamp(from.y_mm, -FAR_MM, FAR_MM);
  to.tipToWork_mm = from.tipToWork_mm;
  to.workAngle_deg = from.workAngle_deg;
  to.travelAngle_deg = from.travelAngle_deg;
  to.trigger = from.trigger;
}

/** The pose a share `f` of the way; written out, because it runs every tick. */
export function between(at: Pose, from: Pose, to: Pose, f: number): void {
  at.u_mm = from.u_mm + (to.u_mm - from.u_mm) * f;
  at.y_mm = from.y_mm + (to.y_mm - from.y_mm) * f;
  at.tipToWork_mm = from.tipToWork_mm + (to.tipToWork_mm - from.tipToWork_mm) * f;
  at.workAngle_deg = from.workAngle_deg + (to.workAngle_deg - from.workAngle_deg) * f;
  at.travelAngle_deg = from.travelAngle_deg + (to.travelAngle_deg - from.travelAngle_deg) * f;
}
