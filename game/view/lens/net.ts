import type { JointKind } from '../../../engine/index.ts';

/** Fine lines cover this much either side of the root, this far apart; farther out they thin out. */
const FINE_HALF_MM = 9;
const FINE_MM = 0.4;
const ROW_MM = 0.45;
const THINNING = 1.6;
const WIDEST_MM = 4;
/** Lines nearer than this are one line. */
const APART_MM = 0.02;

/** The net the skin is hung on. */
export interface Net {
  /** u and row of each vertex, in pairs; a vertex's height up the joint is `top - row * rowStep_mm`. */
  places: Float32Array;
  triangles: Uint32Array;
  rows: number;
  rowStep_mm: number;
}

/**
 * Lines up the joint, one exactly on the root and one on a lap's edge, and rows from the far end to the near one: drawn in that order
 * nearer metal covers farther metal, and no depth buffer is needed.
 */
export function makeNet(kind: JointKind, plateB_mm: number, half_mm: number, span_mm: number): Net {
  const lines = across(half_mm);
  if (kind === 'lap') lines.push(-plateB_mm / Math.SQRT2);
  lines.sort((a, b) => a - b);
  const us = lines.filter((u, i) => i === 0 || u - lines[i - 1] > APART_MM);
  const rows = Math.ceil(span_mm / ROW_MM) + 1;
  const places = new Float32Array(rows * us.length * 2);
  for (let r = 0; r < rows; r++)
    us.forEach((u, c) => {
      places[2 * (r * us.length + c)] = u;
      places[2 * (r * us.length + c) + 1] = r;
    });
  return { places, triangles: weaveTriangles(us, rows), rows, rowStep_mm: ROW_MM };
}

function across(half_mm: number): number[] {
  const lines = [0];
  for (let n = 1; n * FINE_MM <= FINE_HALF_MM; n++) lines.push(n * FINE_MM, -n * FINE_MM);
  let step = FINE_MM * THINNING;
  for (let u = FINE_HALF_MM + step; u < half_mm + step; u += step) {
    lines.push(u, -u);
    step = Math.min(WIDEST_MM, step * THINNING);
  }
  return lines;
}

/** Squares are cut along mirrored diagonals left and right of the root, so that a mirrored joint gives a mirrored picture. */
function weaveTriangles(us: readonly number[], rows: number): Uint32Array {
  const columns = us.length;
  const out = new Uint32Array((columns - 1) * (rows - 1) * 6);
  let at = 0;
  for (let r = 0; r < rows - 1; r++)
    for (let c = 0; c < columns - 1; c++) {
      const a = r * columns + c;
      const b = a + 1;
      const d = a + columns;
      const e = d + 1;
      out.set(us[c] + us[c + 1] < 0 ? [a, b, d, b, e, d] : [a, b, e, a, e, d], at);
      at += 6;
    }
  return out;
}
