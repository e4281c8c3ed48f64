import type { FilletOptions } from '../../../engine/index.ts';

/** Past the standing plate the through plate of a tee goes on this far in the picture, mm. */
const PAST_MM = 14;
const LAP_OVERLAP_MM = 25;

interface Corner {
  a: number;
  b: number;
}

/**
 * The sawn end of the joint as triangles in (u, w), mm: both plates as cut, with a hair's gap between them so that the seam shows.
 * a runs out along plate A's face, b along plate B's; u = (a - b)/√2, w = (a + b)/√2.
 */
export function endTriangles(joint: FilletOptions): { places: Float32Array; triangles: Uint32Array } {
  const places: number[] = [];
  const triangles: number[] = [];
  for (const outline of outlines(joint)) {
    const first = places.length / 2;
    for (const { a, b } of outline) places.push((a - b) / Math.SQRT2, (a + b) / Math.SQRT2);
    for (let n = 1; n + 1 < outline.length; n++) triangles.push(first, first + n, first + n + 1);
  }
  return { places: Float32Array.from(places), triangles: Uint32Array.from(triangles) };
}

const SEAM_MM = 0.12;

function outlines(joint: FilletOptions): Corner[][] {
  const { plateA_mm: tA, plateB_mm: tB, gap_mm: gap, plateWidth_mm: wide } = joint;
  const box = (a0: number, b0: number, a1: number, b1: number): Corner[] => [
    { a: a0, b: b0 },
    { a: a1, b: b0 },
    { a: a1, b: b1 },
    { a: a0, b: b1 },
  ];
  if (joint.kind === 'corner') {
    const d = Math.min(tA, tB);
    const s = SEAM_MM;
    return [
      [
        { a: s, b: 0 },
        { a: wide, b: 0 },
        { a: wide, b: -tA },
        { a: -tB + s, b: -tA },
        { a: -d + s, b: -d },
      ],
      [
        { a: 0, b: s },
        { a: -d, b: -d + s },
        { a: -tB, b: -tA + s },
        { a: -tB, b: wide },
        { a: 0, b: wide },
      ],
    ];
  }
  const seam = Math.max(gap, SEAM_MM);
  if (joint.kind === 'tee') return [box(-tB - PAST_MM, -tA, wide, 0), box(-tB, seam, 0, wide)];
  return [box(-LAP_OVERLAP_MM, -tA, wide, 0), box(-wide, seam, 0, gap + tB)];
}
