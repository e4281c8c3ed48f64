import type { PART, Section } from '../../engine/index.ts';
import { spread } from '../measures/section/isotherm.ts';
import { rings } from './contour.ts';

/** A place in a cut, mm from the root: a out along plate A's face, b along plate B's. */
export interface Place {
  a: number;
  b: number;
}

/**
 * Outlines of the part of one plate whose peak reached a temperature. The field s is carried over the plate's faces, one cell as it went
 * and one more as it is (a last row may be taller than a cell), so that an outline meets the face where it should; draw it clipped to the
 * plate.
 */
export function zoneOutlines(sec: Section, part: typeof PART.A | typeof PART.B, reached_C: number): Place[][] {
  const limit = spread(reached_C, sec.start_C);
  // Two cells more on every side than the section's grid, for what is carried over its own edges.
  const wide: Grid = { columns: sec.na + 4, rows: sec.nb + 4 };
  const own = new Float64Array(wide.columns * wide.rows).fill(Number.NaN);
  for (let j = 0; j < sec.nb; j++)
    for (let i = 0; i < sec.na; i++) {
      const cell = j * sec.na + i;
      if (sec.part[cell] === part) own[(j + 2) * wide.columns + i + 2] = spread(sec.peak_C[cell]!, sec.start_C);
    }
  const carried = grown(own, wide, (near, far) => (Number.isNaN(far) ? near : 2 * near - far));
  const beyond = grown(carried, wide, (near) => near);
  return rings(wide.columns, wide.rows, (i, j) => limit - beyond[j * wide.columns + i]!).map((ring) =>
    ring.map((p) => ({ a: sec.a0_mm + (p.i - 2) * sec.cell_mm, b: sec.b0_mm + (p.j - 2) * sec.cell_mm })),
  );
}

interface Grid {
  columns: number;
  rows: number;
}

/** The field with each empty (NaN) cell that touches a filled one given the mean of what its filled neighbours, and the cells behind them, say. */
function grown(field: Float64Array, { columns, rows }: Grid, say: (near: number, far: number) => number): Float64Array {
  const at = (i: number, j: number): number =>
    i < 0 || j < 0 || i >= columns || j >= rows ? Number.NaN : field[j * columns + i]!;
  const out = field.slice();
  for (let j = 0; j < rows; j++)
    for (let i = 0; i < columns; i++) {
      if (!Number.isNaN(field[j * columns + i]!)) continue;
      let sum = 0;
      let count = 0;
      for (const [di, dj] of AROUND) {
        const near = at(i + di, j + dj);
        if (Number.isNaN(near)) continue;
        sum += say(near, at(i + 2 * di, j + 2 * dj));
        count++;
      }
      if (count > 0) out[j * columns + i] = sum / count;
    }
  return out;
}

const AROUND: readonly [number, number][] = [
  [1, 0],
  [-1, 0],
  [0, 1],
  [0, -1],
  [1, 1],
  [1, -1],
  [-1, 1],
  [-1, -1],
];
