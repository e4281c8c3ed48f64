import { PART, type Section } from '../../../engine/index.ts';
import { depthOf, FARTHEST_SHORT_MM, faceS, indexA, indexB, inward, spread } from './isotherm.ts';
import type { Side } from './outline.ts';

export interface FusedFace {
  /** Deepest fusion into the plate, square to its face. mm; negative where it is fused nowhere. */
  deepest_mm: number;
  /** Where along the face that is. */
  deepestAt_mm: number;
  /** Least fusion between root and toe, the first and last 1 mm left out. mm, negative: not fused there. */
  least_mm: number;
  /** Way along the face from the root to the edge of the fused plate; 0 where the face is fused nowhere. mm */
  edge_mm: number;
  /** Heat-affected zone (peak reached Ac1) below the deepest fusion, square to the face. mm */
  haz_mm: number;
}

/** Left out at root and toe when the least fusion is looked for; those have measures of their own. mm */
const END_MM = 1;

/**
 * **Fusion depth** and the **edge of the fused plate** on one plate's face. Fusion is metal of the plate whose peak temperature
 * reached the solidus; the boundary between cell centres is found in s (isotherm.ts), carried on to the face from the plate's own
 * cells. **Heat-affected zone**: plate whose peak reached Ac1. Macro practice: ISO 17639 (practice from memory). Error on manufactured
 * isotherm fields below 0.02 mm at 0.75 mm cells.
 * @param leg_mm leg on this plate
 */
export function fusedFace(sec: Section, side: Side, leg_mm: number): FusedFace {
  const h = sec.cell_mm;
  const solidus = spread(sec.solidus_C, sec.start_C);
  const ac1 = spread(sec.ac1_C, sec.start_C);
  const out: FusedFace = {
    deepest_mm: -FARTHEST_SHORT_MM,
    deepestAt_mm: 0,
    least_mm: Number.POSITIVE_INFINITY,
    edge_mm: 0,
    haz_mm: 0,
  };
  const from = side === 'B' ? sec.joint.gap_mm : 0;
  let lastAlong = 0;
  let lastS = 0;
  let open = true;
  for (let k = 0; ; k++) {
    const along = from + (k + 0.5) * h;
    const line = inward(sec, side, along);
    if (line === null) break;
    const depth = depthOf(line, solidus, h);
    if (depth > out.deepest_mm) {
      out.deepest_mm = depth;
      out.deepestAt_mm = along;
      out.haz_mm = depthOf(line, ac1, h) - Math.max(0, depth);
    }
    if (along >= END_MM + from && along <= leg_mm - END_MM) out.least_mm = Math.min(out.least_mm, depth);
    const at = faceS(line);
    if (at <= solidus) {
      out.edge_mm = along + h / 2;
      open = true;
    } else if (open && k > 0 && lastS <= solidus) {
      out.edge_mm = lastAlong + ((solidus - lastS) / (at - lastS)) * h;
      open = false;
    }
    lastAlong = along;
    lastS = at;
  }
  if (out.least_mm === Number.POSITIVE_INFINITY) out.least_mm = out.deepest_mm;
  if (out.haz_mm < 0) out.haz_mm = 0;
  return out;
}

/**
 * **Edge melted back**: on a lap, how far the edge plate's upper face is fused back from its corner as cut (common practice, no
 * source: the corner of the edge no longer stands). mm, 0 where the corner stands, null on other joints. The plates as cut locate the
 * corner, so a melted one never moves it.
 */
export function edgeMeltedBack_mm(sec: Section): number | null {
  if (sec.joint.kind !== 'lap') return null;
  const h = sec.cell_mm;
  const solidus = spread(sec.solidus_C, sec.start_C);
  const top = indexB(sec, sec.joint.gap_mm + sec.joint.plateB_mm - 0.51 * h);
  let lastA = 0;
  let lastS = 0;
  for (let ia = indexA(sec, -h / 2); ia >= 0; ia--) {
    const cell = top * sec.na + ia;
    if (sec.part[cell] !== PART.B) break;
    const a = sec.a0_mm + ia * h;
    const s = upperS(sec, ia, top);
    if (s > solidus) {
      if (lastA === 0) return 0;
      return -lastA + ((solidus - lastS) / (s - lastS)) * h;
    }
    lastA = a;
    lastS = s;
  }
  return -lastA;
}

/** s carried on to the upper face from the two top rows of plate B. */
function upperS(sec: Section, ia: number, top: number): number {
  const s1 = spread(sec.peak_C[top * sec.na + ia]!, sec.start_C);
  const below = (top - 1) * sec.na + ia;
  if (top < 1 || sec.part[below] !== PART.B) return s1;
  return 1.5 * s1 - 0.5 * spread(sec.peak_C[below]!, sec.start_C);
}
