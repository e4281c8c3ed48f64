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
  const own = (i: number, j: number): number => {
    if (i < 0 || j < 0 || i >= sec.na || j >= sec.nb) return Number.NaN;
    const cell = j * sec.na + i;
    const peak = sec.peak_C[cell]!;
    return sec.part[cell] !== part || Number.isNaN(peak) ? Number.NaN : spread(peak, sec.start_C);
  };
  const carried = (i: number, j: number): number => {
    const here = own(i, j);
    if (!Number.isNaN(here)) return here;
    let sum = 0;
    let count = 0;
    for (const [di, dj] of AROUND) {
      const near = own(i + di, j + dj);
      const far = own(i + 2 * di, j + 2 * dj);
      if (Number.isNaN(near)) continue;
      sum += Number.isNaN(far) ? near : 2 * near - far;
      count++;
    }
    return count > 0 ? sum / count : Number.NaN;
  };
  const beyond = (i: number, j: number): number => {
    const here = carried(i, j);
    if (!Number.isNaN(here)) return here;
    let sum = 0;
    let count = 0;
    for (const [di, dj] of AROUND) {
      const near = carried(i + di, j + dj);
      if (Number.isNaN(near)) continue;
      sum += near;
      count++;
    }
    return count > 0 ? sum / count : Number.NaN;
  };
  // Two cells more on every side than the section's grid, for what is carried over its own edges.
  return rings(sec.na + 4, sec.nb + 4, (i, j) => limit - beyond(i - 2, j - 2)).map((ring) =>
    ring.map((p) => ({ a: sec.a0_mm + (p.i - 2) * sec.cell_mm, b: sec.b0_mm + (p.j - 2) * sec.cell_mm })),
  );
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
