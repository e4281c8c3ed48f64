import type { JointOptions } from '../../../engine/index.ts';
import { alongA, alongB } from './frame.ts';
import type { Outline } from './outline.ts';

/**
 * **Leg**: from the joint root to the toe, along each plate (AWS A3.0, ISO 17659; from memory). The root is where
 * the plates' faces meet as cut, also when an edge has melted off. mm. A toe on top of a lap's edge has a leg of the plate's
 * thickness. Error on manufactured sections at 0.75 mm cells below 0.1 mm; mesh error in `plus-minus.ts`.
 */
export function legs(o: Outline): { legA_mm: number; legB_mm: number } {
  return { legA_mm: alongA(o.toeA), legB_mm: alongB(o.toeB) };
}

/**
 * **Size**: leg of the largest right-angled isosceles triangle the weld holds, root at its corner; a gap is taken off, because the
 * triangle starts at the plate it has to reach (AWS D1.1 5.22.1, from memory: the leg grows by the gap). mm.
 * @param actualThroat_mm least distance from root to face
 */
export function size_mm(o: Outline, joint: JointOptions, actualThroat_mm: number): number {
  const { legA_mm, legB_mm } = legs(o);
  return Math.min(legA_mm, legB_mm, Math.SQRT2 * actualThroat_mm) - joint.gap_mm;
}
