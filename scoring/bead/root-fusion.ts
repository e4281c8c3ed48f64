import type { Section } from '../../engine/index.ts';
import { depthOf, FARTHEST_SHORT_MM, type Inward, inward, spread } from './isotherm.ts';

export interface RootFusion {
  rootFusionA_mm: number;
  rootFusionB_mm: number;
  /** The smaller of the two: the root is only as good as its colder plate. */
  rootFusion_mm: number;
}

/**
 * **Root fusion**: how far fusion reaches past the root line into each plate, square to its face, at the line where the faces met as
 * cut; negative: short of it ("tied in at the root: 0.6 past the corner", "0.4 short"). mm. Read from the plates' own cells only: at
 * plate A between the cells either side of the line, at plate B carried on to the line from its first two rows of cells. Mesh error in
 * `plus-minus.ts`.
 */
export function rootFusion(sec: Section): RootFusion {
  const h = sec.cell_mm;
  const solidus = spread(sec.solidus_C, sec.start_C);
  // Plate A runs on under plate B, so the line has a cell on either side; a corner joint has only the ones in front.
  const front = inward(sec, 'A', h / 2);
  const behind = inward(sec, 'A', -h / 2);
  const lineA = behind === null ? blend(front, inward(sec, 'A', 1.5 * h), 1.5) : blend(front, behind, 0.5);
  const gap = sec.joint.gap_mm;
  const lineB = blend(inward(sec, 'B', gap + h / 2), inward(sec, 'B', gap + 1.5 * h), 1.5);
  const a = lineA === null ? -FARTHEST_SHORT_MM : depthOf(lineA, solidus, h);
  const b = lineB === null ? -FARTHEST_SHORT_MM : depthOf(lineB, solidus, h);
  return { rootFusionA_mm: a, rootFusionB_mm: b, rootFusion_mm: Math.min(a, b) };
}

/** s on a line between or beyond two neighbouring lines of cells: `share` of the first, the rest of the second. */
function blend(first: Inward | null, second: Inward | null, share: number): Inward | null {
  if (first === null || second === null) return first;
  const count = Math.min(first.s.length, second.s.length);
  const s: number[] = [];
  for (let r = 0; r < count; r++) s.push(share * first.s[r]! + (1 - share) * second.s[r]!);
  return { s, length_mm: first.length_mm };
}
