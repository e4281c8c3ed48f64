import type { PART, Section } from '../../engine/index.ts';
import { spread } from '../bead/isotherm.ts';
import { rings } from './contour.ts';

export interface Place {
  a: number;
  b: number;
}

/**
 * Outlines of the part of one plate whose peak reached a temperature. The field s is carried one cell over the plate's faces, so that an
 * outline meets the face where it should; draw it clipped to the plate.
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
  return rings(sec.na, sec.nb, (i, j) => limit - carried(i, j)).map((ring) =>
    ring.map((p) => ({ a: sec.a0_mm + p.i * sec.cell_mm, b: sec.b0_mm + p.j * sec.cell_mm })),
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
