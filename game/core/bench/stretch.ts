import {
  createSimulation,
  POSE_RATE_HZ,
  type Pose,
  poses,
  type Recording,
  type Simulation,
} from '../../../engine/index.ts';

/**
 * So much of the joint below a cut is welded anew, and so much above it, mm: 20 in all, within half a second of the choice on two quiet cores. With 7 below
 * and 4 above, legs and root already come to within 0.1 mm of what 16 mm below give (a volt more, half a millimetre a second more, a millimetre wider,
 * on the inverted V); with 6 mm below a leg is 0.15 off, with 3 mm above 0.4.
 */
const BELOW_MM = 13;
const ABOVE_MM = 7;
/** A puddle is solid within this time after the arc goes out. */
const FREEZE_S = 1;

/** The piece as it lay after so many poses. */
export interface Lay {
  step: number;
  state: ArrayBuffer;
}

/**
 * Welds the stretch about a height as another hand, or with other settings, on the piece as it lay when the arc came there: what a
 * change does to one cut, long before the whole piece has been welded again. Below that the piece stays as it was welded.
 * @param welded poses the piece was welded with, and how it lay, oldest first
 * @param changed the attempt with the change; joint and cells as they were
 * @returns the piece after that, cold enough to cut; null where the arc never came to the height
 */
export function weldStretch(
  welded: readonly Pose[],
  lays: readonly Lay[],
  changed: Recording,
  y_mm: number,
): Simulation | null {
  const came = firstAt(welded, y_mm - BELOW_MM);
  const lay = nearest(lays, came ?? 0);
  const other = [...poses(changed)];
  if (lay === undefined || firstAt(other, y_mm) === null) return null;
  const from = lay.step === 0 ? 0 : (firstAt(other, heightAt(welded, lay.step)) ?? 0);
  const to = firstAt(other, y_mm + ABOVE_MM) ?? other.length;
  const piece = createSimulation(changed.simulation);
  piece.restore(lay.state);
  for (let n = from; n < to; n++) piece.step(other[n]!);
  const rest = { ...other[Math.max(from, to - 1)]!, trigger: false };
  for (let n = 0; n < FREEZE_S * POSE_RATE_HZ; n++) piece.step(rest);
  return piece;
}

/** Laid down nearest to a pose: half a second of hand either way changes the cut by less than a reading can tell. */
function nearest(lays: readonly Lay[], step: number): Lay | undefined {
  let best = lays[0];
  for (const lay of lays) if (best && Math.abs(lay.step - step) < Math.abs(best.step - step)) best = lay;
  return best;
}

/** Half the time over which the hand's height is a mean: a weave reaches up and down within it. */
const HALF = POSE_RATE_HZ / 2;

/** The hand's height without its weave at a pose, mm. */
function heightAt(list: readonly Pose[], n: number): number {
  const from = Math.max(0, n - HALF);
  const to = Math.min(list.length, n + HALF);
  let sum = 0;
  for (let k = from; k < to; k++) sum += list[k]!.y_mm;
  return sum / Math.max(1, to - from);
}

/** The first pose at which the hand had come to a height; null where it never did. */
function firstAt(list: readonly Pose[], y_mm: number): number | null {
  for (let n = 0; n < list.length; n++) if (list[n]!.trigger && heightAt(list, n) >= y_mm) return n;
  return null;
}
