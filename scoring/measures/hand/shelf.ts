import { POSE_RATE_HZ } from '../../../engine/index.ts';
import type { Trace } from '../../attempt/trace.ts';
import type { StartMotion } from '../../schema/motion.ts';
import { milli } from '../precision.ts';
import type { Burn } from './stops.ts';

/** The hand has left the start when the arc never again comes this near the height of the strike, mm. */
const LEFT_MM = 1;
/** Looked for this long after the strike, s. */
const WITHIN_S = 8;
/** A shelf is full width from this share of the settled width on; ripples take it off again and again. */
const FULL_SHARE = 0.9;

/**
 * **Shelf**: a vertical-up run stands on a shelf that must come to full width before one climbs (practice, no source). Read from the puddle's
 * wetted width, both legs together, against the settled bead's: share reached when the hand left the start, and when and where it
 * reached nine tenths. Wetted edges are read within 1.5 mm of the arc, ±0.4 mm each (toe ±0.3, sampling 0.1): ±6 % of a 6 mm leg.
 * @param legs_mm both legs of the settled bead together, or null where the bead never settled
 */
export function readStart(trace: Trace, burn: Burn, legs_mm: number | null): StartMotion {
  const t = trace.column('t_s');
  const y = trace.column('footY_mm');
  const wetA = trace.column('wetA_mm');
  const wetB = trace.column('wetB_mm');
  const end = burn.from + Math.min(burn.to - burn.from, POSE_RATE_HZ * WITHIN_S);
  let left = burn.from;
  for (let i = burn.from; i < end; i++) if (y[i]! <= burn.struck_mm + LEFT_MM) left = i + 1;
  let a = 0;
  let b = 0;
  let atLeaving = 0;
  let full = -1;
  for (let i = burn.from; i < end; i++) {
    if (wetA[i]! > a) a = wetA[i]!;
    if (wetB[i]! > b) b = wetB[i]!;
    if (i < left) atLeaving = a + b;
    if (full < 0 && legs_mm !== null && a + b >= FULL_SHARE * legs_mm) full = i;
  }
  return {
    t_s: milli(burn.from_s),
    y_mm: milli(burn.struck_mm),
    left_s: milli(t[Math.min(left, trace.length - 1)]! - burn.from_s),
    shelfShare: legs_mm === null ? null : milli(atLeaving / legs_mm),
    fullWidth_s: full < 0 ? null : milli(t[full]! - burn.from_s),
    fullWidth_mm: full < 0 ? null : milli(y[full]! - burn.struck_mm),
  };
}
