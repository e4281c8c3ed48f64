import type { Section } from '../../engine/index.ts';
import { depthOf, FARTHEST_SHORT_MM, type Inward, inward, spread } from './isotherm.ts';

export interface RootFusion {
  rootFusionA_mm: number;
  rootFusionB_mm: number;
  /** The smaller of the two: the root is only as good as its colder plate. */
  rootFusion_mm: number;
}

/**
 * Distance from the root line at which fusion is read, on the weld's side along each face: half a working cell, at every mesh. At the
 * line itself the peak field is torn by the faying face, and a depth read there says more about the mesh than about the weld.
 */
export const READ_AT_MM = 0.375;

/**
 * **Root fusion**: how far fusion reaches past the faces as cut into each plate, square to the face, at the root line; negative: short
 * of it ("tied in at the root: 0.6 past the corner", "0.4 short"). mm. Read from the plates' own cells only, beside the line where
 * the faces met as cut, so a melted edge never moves it. Mesh error in `plus-minus.ts`.
 */
export function rootFusion(sec: Section): RootFusion {
  const solidus = spread(sec.solidus_C, sec.start_C);
  const depth = (side: 'A' | 'B', from: number): number => {
    const line = lineAt(sec, side, from);
    return line === null ? -FARTHEST_SHORT_MM : depthOf(line, solidus, sec.cell_mm);
  };
  const a = depth('A', 0);
  const b = depth('B', sec.joint.gap_mm);
  return { rootFusionA_mm: a, rootFusionB_mm: b, rootFusion_mm: Math.min(a, b) };
}

/** Cells going into a plate READ_AT_MM from its end of the root, straight between the two nearest lines of cells in front. */
function lineAt(sec: Section, side: 'A' | 'B', from: number): Inward | null {
  const h = sec.cell_mm;
  const first = inward(sec, side, from + h / 2);
  const second = inward(sec, side, from + 1.5 * h);
  const share = READ_AT_MM / h - 0.5;
  if (first === null || second === null || share <= 0) return first;
  const s = first.s.map((value, r) => (r < second.s.length ? value + share * (second.s[r]! - value) : value));
  return { s, length_mm: first.length_mm };
}
