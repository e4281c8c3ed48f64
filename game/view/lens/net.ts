import type { JointKind } from '../../../engine/index.ts';

/** Fine lines cover this much either side of the root; farther out they thin out. */
const FINE_HALF_MM = 9;
/** Rows lie this much farther apart than fine lines: up the joint the skin changes more slowly than across. */
const ROW_SHARE = 1.125;
/** Meshes a line apart, and drawn pixels a mesh should have: finer is not seen, and every point costs 34 texel reads. */
const MESHES_MM = [0.4, 0.6, 0.8] as const;
const PX_A_MESH = 4.5;
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
export function makeNet(kind: JointKind, plateB_mm: number, half_mm: number, span_mm: number, mesh_mm: number): Net {
  const lines = across(half_mm, mesh_mm);
  if (kind === 'lap') lines.push(-plateB_mm / Math.SQRT2);
  lines.sort((a, b) => a - b);
  const us = lines.filter((u, i) => i === 0 || u - lines[i - 1] > APART_MM);
  const rowStep_mm = mesh_mm * ROW_SHARE;
  const rows = Math.ceil(span_mm / rowStep_mm) + 1;
  const places = new Float32Array(rows * us.length * 2);
  for (let r = 0; r < rows; r++)
    us.forEach((u, c) => {
      places[2 * (r * us.length + c)] = u;
      places[2 * (r * us.length + c) + 1] = r;
    });
  return { places, triangles: weaveTriangles(us, rows), rows, rowStep_mm };
}

/** The widest mesh that is still finer than what can be seen at so many drawn pixels per millimetre. */
export function meshFor(drawn_pxPerMm: number): number {
  const wanted = PX_A_MESH / drawn_pxPerMm;
  return [...MESHES_MM].reverse().find((mesh) => mesh <= wanted) ?? MESHES_MM[0];
}

function across(half_mm: number, mesh_mm: number): number[] {
  const lines = [0];
  for (let n = 1; n * mesh_mm <= FINE_HALF_MM; n++) lines.push(n * mesh_mm, -n * mesh_mm);
  let step = mesh_mm * THINNING;
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
