import { PART, type Section } from '../../../engine/index.ts';
import { indexA, indexB, spread } from './isotherm.ts';

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
