/** Smooth cases with exact answers, run on any cell size: relative errors (root of mean square over the field or its probes). */
import { createHeatPiece } from '../../../engine/index.ts';
import { diffusivity, KOU_STEEL as metal, pointInBlock, sourceOnBlock } from '../formulas/heat.ts';
import { constantMaterial } from './constant.ts';

const material = constantMaterial(metal);

/** A hot spot that has already spread for 1.5 s in an insulated cube, 1 s later. */
export function hotSpot(cell_mm: number): number {
  const edge = 18;
  const size = { width: edge, depth: edge, length: edge };
  const from = [6, 7.2, 8.1];
  const exact = (a: number, b: number, y: number, t: number): number =>
    pointInBlock(metal, 2000, size, from, [a, -b, y], t);
  const piece = createHeatPiece({
    piece: { kind: 'block', width_mm: edge, depth_mm: edge, length_mm: edge },
    cell_mm,
    material,
    start_C: ({ a_mm, b_mm, y_mm }) => exact(a_mm, b_mm, y_mm, 1.5),
  });
  piece.run(1);
  const f = piece.field();
  let off = 0;
  let all = 0;
  for (let r = 0; r < f.rods; r++)
    for (let j = 0; j < f.ny; j++) {
      const want = exact(f.a_mm[r]!, f.b_mm[r]!, f.y0_mm + j * f.dy_mm, 1.5 + piece.time_s);
      const got = f.temp_C[r * f.ny + j]!;
      off += (got - want) ** 2;
      all += want ** 2;
    }
  return Math.sqrt(off / all);
}

/** A wall of 12 mm between faces held at 20 °C, its sine of heat dying away; through b or along y. */
export function coolingWall(cell_mm: number, way: 'b' | 'y'): number {
  const thick = 12;
  const through = way === 'b';
  const piece = createHeatPiece({
    piece: {
      kind: 'block',
      width_mm: cell_mm,
      depth_mm: through ? thick : cell_mm,
      length_mm: through ? cell_mm : thick,
    },
    cell_mm,
    material,
    start_C: ({ b_mm, y_mm }) => 20 + 1000 * Math.sin((Math.PI * (through ? -b_mm : y_mm)) / thick),
    held: (through ? (['b-', 'b+'] as const) : (['y-', 'y+'] as const)).map((face) => ({ face, temp_C: 20 })),
  });
  piece.run(1.5);
  const fade = Math.exp(-diffusivity(metal) * (Math.PI / thick) ** 2 * piece.time_s);
  const f = piece.field();
  let off = 0;
  let all = 0;
  for (let n = 0; n < f.temp_C.length; n++) {
    const x = through ? -f.b_mm[n]! : f.y0_mm + n * f.dy_mm;
    const want = 1000 * fade * Math.sin((Math.PI * x) / thick);
    off += (f.temp_C[n]! - 20 - want) ** 2;
    all += want ** 2;
  }
  return Math.sqrt(off / all);
}

/**
 * A Gaussian of 1.5 mm moving over a small insulated block, read under and round it after 2 s. Places are cell centres of 0.75 mm cells, and
 * of cells a third of that, so that nothing is lost between cells.
 */
export function movingSpot(cell_mm: number): number {
  const size = { width: 15, depth: 9, length: 24 };
  const path = (t: number): { across: number; along: number } => ({ across: 7.125, along: 10.125 + 1.5 * t });
  const piece = createHeatPiece({
    piece: { kind: 'block', width_mm: size.width, depth_mm: size.depth, length_mm: size.length },
    cell_mm,
    material,
    start_C: 0,
    sources: [
      {
        faces: ['b+'],
        power_W: 1500,
        radius_mm: 1.5,
        path: (t) => ({ a_mm: path(t).across, b_mm: 0, y_mm: path(t).along }),
      },
    ],
  });
  piece.run(2);
  let off = 0;
  let all = 0;
  for (const [x, y, z] of [
    [0, 0, 0.375],
    [0, 0, 1.125],
    [0, 0, 3.375],
    [-2.25, 0, 0.375],
    [2.25, 0, 0.375],
    [0, 2.25, 0.375],
    [-4.5, 0.75, 1.875],
    [0, 4.5, 3.375],
  ] as const) {
    const along = 13.125 + x;
    const want = sourceOnBlock(metal, 1500, 1.5, size, path, { across: 7.125 + y, down: z, along }, piece.time_s);
    off += (piece.temperature({ a_mm: 7.125 + y, b_mm: -z, y_mm: along }) - want) ** 2;
    all += want ** 2;
  }
  return Math.sqrt(off / all);
}

/** Order seen between two cell sizes, the second `ratio` times smaller. */
export const orderOf = (coarse: number, fine: number, ratio: number): number =>
  Math.log(coarse / fine) / Math.log(ratio);
