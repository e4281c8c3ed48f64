import type { Section } from '../../../engine/index.ts';
import { angleBetween_deg } from '../precision.ts';
import { SQRT2, type Toe } from './outline.ts';

/**
 * **Overlap**: metal resting on plate that never melted: toe of the metal minus edge of the fused plate, along the plate's surface
 * (ISO 5817 506, AWS D1.1 5.24; cold lap in the shop). mm; negative: the plate is fused beyond the metal, nothing rests on it.
 * @param toe_mm way from root to toe along the plate's surface
 * @param fusedEdge_mm way from root to the edge of the fused plate
 */
export function overlap_mm(toe_mm: number, fusedEdge_mm: number): number {
  return toe_mm - fusedEdge_mm;
}

/**
 * Overlap counts from the least that is told from none by eye at the bench (common practice, no source): a toe that rests this far on cold
 * plate is seen, less is a ripple's scallop. mm
 */
export const OVERLAP_SEEN_MM = 0.7;

/**
 * **Toe risk**: melted plate outside the metal. The groove was molten and froze full of its own metal; on steel it may have drained
 * and left undercut, which this model carries only where a weld drops metal. mm, 0 where there is none.
 */
export function toeRisk_mm(overlap: number): number {
  return Math.max(0, -overlap);
}

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

/**
 * **Toe angle**: between the plate outside the weld and the face at the toe, through the air; 135° for a flat mitre on a right-angled
 * tee (ISO 5817:2014, 505). Degrees. Taken from a least-squares quadratic over the last 2 mm of face: a tighter curl is
 * read blunter than it is.
 * @param onTop the toe stands on top of a lap's edge instead of on the fusion face
 */
export function toeAngle_deg(toe: Toe, onTop = false): number {
  const way = toe.side === 'A' ? 1 : -1;
  // Inward along the face, and outward along the plate: away from the root at 45° in the welder's view, or down over an edge's top.
  return angleBetween_deg(-way, -way * toe.slope, way, onTop ? -1 : 1);
}
