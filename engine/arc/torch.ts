/**
 * From the hand's pose to the wire's axis. The hand steers an aim point on a reference face; tip-to-work is set along the wire from
 * there, and the nozzle stops where it would touch the plates.
 *
 *   reference face: w = 2 + |u|/2, half way between following the joint's faces (w = |u|) and a hand at constant height. In a bare
 *   corner the arc's true tip-to-work is therefore longer than the hand's by up to 2 mm at the root, as at the bench.
 *   On a flat plate it is the plate's face.
 */

import type { JointPlan } from '../grid/joint.ts';
import { plateHeight } from '../grid/plates.ts';
import type { ProcessOptions } from '../input/options.ts';
import { POSE_LIMITS, type Pose } from '../input/pose.ts';
import { clamp, cos, DEGREE, sin } from '../numerics/math.ts';

const REFERENCE_ROOT_MM = 2;
const REFERENCE_SLOPE = 0.5;

export interface Axis {
  /** Unit vector from the contact tip along the wire, in (u, w, y). */
  du: number;
  dw: number;
  dy: number;
  /** Contact tip. */
  tipU: number;
  tipW: number;
  tipY: number;
  /** Tip to reference face after the nozzle floor. */
  reach: number;
  nozzleTouching: boolean;
}

export function createAxis(): Axis {
  return { du: 0, dw: -1, dy: 0, tipU: 0, tipW: 12, tipY: 0, reach: 12, nozzleTouching: false };
}

/** Fills `axis` for a pose; `surface` gives the joint's height at u where the nozzle might touch. */
export function placeTorch(axis: Axis, pose: Pose, process: ProcessOptions, plan: JointPlan): void {
  const { workAngle_deg: work, travelAngle_deg: travel, tipToWork_mm: tip } = POSE_LIMITS;
  const lean = (clamp(pose.workAngle_deg, work[0], work[1]) - 45) * DEGREE;
  const push = clamp(pose.travelAngle_deg, travel[0], travel[1]) * DEGREE;
  const reach = clamp(pose.tipToWork_mm, tip[0], tip[1]);
  const sl = sin(lean);
  const cl = cos(lean);
  const cp = cos(push);
  axis.du = sl * cp;
  axis.dw = -cl * cp;
  axis.dy = sin(push);
  const aimW = plan.joint.kind === 'plate' ? 0 : REFERENCE_ROOT_MM + REFERENCE_SLOPE * Math.abs(pose.u_mm);
  axis.reach = reach;
  axis.nozzleTouching = false;
  // The nozzle's end stands tip_mm behind the contact tip; its rim is nozzle/2 off the axis, square to it.
  const radius = process.nozzle_mm / 2;
  for (let pass = 0; pass < 8; pass++) {
    const back = axis.reach + process.tip_mm;
    const endU = pose.u_mm - back * axis.du;
    const endW = aimW - back * axis.dw;
    let sunk = 0;
    for (let side = -1; side <= 1; side += 2) {
      const rimU = endU + side * radius * cl;
      const rimW = endW + side * radius * sl;
      sunk = Math.max(sunk, plateHeight(plan.joint, 0, rimU) - rimW);
    }
    if (sunk <= 1e-6) break;
    axis.nozzleTouching = true;
    axis.reach += sunk / Math.max(0.2, -axis.dw + Math.abs(axis.du));
  }
  axis.tipU = pose.u_mm - axis.reach * axis.du;
  axis.tipW = aimW - axis.reach * axis.dw;
  axis.tipY = pose.y_mm - axis.reach * axis.dy;
}

/**
 * Shortest tip-to-work the nozzle allows in a bare right-angled corner with the wire aimed at the root: a flush tip cannot come
 * nearer than the nozzle's radius (geometry).
 */
export function minTipToWork_mm(process: ProcessOptions, workAngle_deg = 45): number {
  const lean = Math.abs(clamp(workAngle_deg, ...POSE_LIMITS.workAngle_deg) - 45) * DEGREE;
  // Rim against the nearer face: distance from the root along the axis at which radius = along * tan(45 - lean).
  const open = sin(45 * DEGREE - lean) / cos(45 * DEGREE - lean);
  return Math.max(POSE_LIMITS.tipToWork_mm[0], process.nozzle_mm / 2 / open - process.tip_mm);
}
