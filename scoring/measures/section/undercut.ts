import type { Section } from '../../../engine/index.ts';
import { SQRT2 } from './frame.ts';
import type { Toe } from './outline.ts';

/** Undercut is looked for this far outside the toe, mm along u. */
const REACH_MM = 3;

/**
 * **Undercut**: depth of the groove melted into the plate beside the toe and left unfilled, square to the plate's surface (ISO 5817
 * 5011/5012, AWS D1.1 Table 6.1). mm, 0 where no groove is found. The bottom between columns is the parabola through the deepest column
 * and its neighbours. Column heights are means over 0.75 mm of plate, so a groove narrower than that is read shallow; plus-minus says so.
 */
export function undercut_mm(s: Section, toe: Toe): number {
  const way = toe.side === 'A' ? 1 : -1;
  const n = s.u_mm.length;
  const depth = (i: number): number =>
    i < 0 || i >= n || Number.isNaN(s.wet_s[i]!) ? 0 : (s.plate_mm[i]! - s.w_mm[i]!) / SQRT2;
  let deepest = 0;
  for (let i = toe.column + way; i >= 0 && i < n && Math.abs(s.u_mm[i]! - toe.u) <= REACH_MM; i += way) {
    const here = depth(i);
    if (here <= 0) continue;
    const before = Math.max(0, depth(i - way));
    const after = Math.max(0, depth(i + way));
    const bend = before - 2 * here + after;
    const bottom = here >= before && here >= after && bend < 0;
    // The parabola's bottom, and the mean of a column back to the height at its middle (f'' du²/24).
    const peak = bottom ? here - ((after - before) * (after - before)) / (8 * bend) - bend / 24 : here;
    deepest = Math.max(deepest, peak);
  }
  return deepest;
}
