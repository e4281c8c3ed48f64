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
    // Two plates mitred into an L: they part along the diagonal through the root, as deep as the thinner one; the thicker has the heel.
    const depth = Math.min(j.plateA_mm, j.plateB_mm);
    const root = { a: 0, b: 0 };
    const mitre = { a: -depth, b: -depth };
    const heel = { a: -j.plateB_mm, b: -j.plateA_mm };
    return side === 'A'
      ? [
          root,
          { a: v.aMax + far, b: 0 },
          { a: v.aMax + far, b: -j.plateA_mm },
          ...(j.plateA_mm > depth ? [heel] : []),
          mitre,
        ]
      : [
          root,
          { a: 0, b: v.bMax + far },
          { a: -j.plateB_mm, b: v.bMax + far },
          ...(j.plateB_mm > depth ? [heel] : []),
          mitre,
        ];
  }
  if (side === 'A') return box(v.aMin - far, -j.plateA_mm, v.aMax + far, 0);
  if (j.kind === 'tee') return box(-j.plateB_mm, j.gap_mm, 0, v.bMax + far);
  return box(v.aMin - far, j.gap_mm, 0, j.gap_mm + j.plateB_mm);
}

/** The part of the joint worth showing round a bead with these legs. */
export function viewOf(j: JointOptions, legA: number, legB: number): View {
  // Behind the root there is room for a leg's dimension and for what is said of the root.
  const behind = j.kind === 'lap' ? 9 : Math.max(9, j.plateB_mm + 3.5);
  return {
    aMin: -behind,
    aMax: Math.max(9, legA + 4.5),
    bMin: -j.plateA_mm - 3.2,
    bMax: j.kind === 'lap' ? j.gap_mm + j.plateB_mm + 5.5 : Math.max(9, legB + 4.5),
  };
}
