import type { JointOptions } from '../../engine/index.ts';
import type { Place } from './zones.ts';

export interface View {
  aMin: number;
  aMax: number;
  bMin: number;
  bMax: number;
}

/** Outline of a plate as cut; where it runs on out of the picture it is drawn past the view. */
export function plateOutline(j: JointOptions, side: 'A' | 'B', v: View): Place[] {
  const far = 3;
  const box = (a0: number, b0: number, a1: number, b1: number): Place[] => [
    { a: a0, b: b0 },
    { a: a1, b: b0 },
    { a: a1, b: b1 },
    { a: a0, b: b1 },
  ];
  if (j.kind === 'corner') {
    return side === 'A' ? box(0, v.bMin - far, j.plateA_mm, 0) : box(v.aMin - far, 0, 0, j.plateB_mm);
  }
  if (side === 'A') return box(v.aMin - far, -j.plateA_mm, v.aMax + far, 0);
  if (j.kind === 'tee') return box(-j.plateB_mm, j.gap_mm, 0, v.bMax + far);
  return box(v.aMin - far, j.gap_mm, 0, j.gap_mm + j.plateB_mm);
}

/** The part of the joint worth showing round a bead with these legs. */
export function viewOf(j: JointOptions, legA: number, legB: number): View {
  const behind = j.kind === 'tee' ? j.plateB_mm + 3.5 : 9;
  const below = j.kind === 'corner' ? 9 : j.plateA_mm + 3.2;
  return {
    aMin: -behind,
    aMax: Math.max(9, legA + 4.5),
    bMin: -below,
    bMax: j.kind === 'lap' ? j.gap_mm + j.plateB_mm + 5.5 : Math.max(9, legB + 4.5),
  };
}
