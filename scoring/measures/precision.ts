/**
 * Readings are rounded to fixed decimals before anything is decided on them, so that the last bits of a square root or an arc tangent
 * cannot make two machines print different numbers.
 */

/** To 0.001 (lengths in mm, times in s, shares). */
export function milli(x: number): number {
  return Math.round(x * 1000) / 1000 + 0;
}

/** To 0.1 (angles in degrees). */
export function tenth(x: number): number {
  return Math.round(x * 10) / 10 + 0;
}

/** To 1e-6 (balances of the accounts). */
export function micro(x: number): number {
  return Math.round(x * 1e6) / 1e6 + 0;
}

/** Degrees of the angle between two plane vectors, 0 to 180. */
export function angleBetween_deg(ax: number, ay: number, bx: number, by: number): number {
  return (Math.atan2(Math.abs(ax * by - ay * bx), ax * bx + ay * by) * 180) / Math.PI;
}

/**
 * How far each reading may be off, at the working cell of 0.75 mm: from the mesh study (tests/studies/mesh/MESH.md, eight welds at 1.0, 0.75
 * and 0.5 mm), from twenty settings that nothing was tuned on (HELD-OUT.md beside it, 0.75 to 0.4 and 0.375 mm), and from what a hand macro can be read
 * to (±0.25 legs, ±0.2 convexity, ±0.3 fusion; common practice). A coarser or finer cell scales them in proportion. A straight run is a fat bead
 * whose sides roll over, and does not settle with the cell: it is read less closely, its legs too long and its crown too low.
 */
const WORKING_CELL_MM = 0.75;

export interface PlusMinus {
  value: number;
  why: string;
  /** Of a straight run, where that is another. */
  straight?: { value: number; why: string };
}

/** How a run was welded, as far as the plus-minus goes. */
export type RunKind = 'woven' | 'straight';

/** Narrower than this the hand welds a straight run, mm: the settings that the plus-minus was taken from wove 4 to 6 mm or not at all. */
const STRAIGHT_BELOW_MM = 3;

/**
 * Whether a hand wove, as far as the plus-minus of its bead goes.
 * @param width_mm width of the weave; null where no cycles of one were found
 */
export function runKindOf(width_mm: number | null): RunKind {
  return width_mm === null || width_mm < STRAIGHT_BELOW_MM ? 'straight' : 'woven';
}

/** How far each reading may be off at the working cell of 0.75 mm (mm; degrees for angles), and why. */
export const plusMinus = {
  leg: {
    value: 0.2,
    why: 'woven settings kept apart: 29 of 30 legs within 0.21, one 0.44; 0.14 rms',
    straight: { value: 0.6, why: 'straight settings kept apart: at most 0.69; 0.36 rms, too long' },
  },
  throat: {
    value: 0.15,
    why: 'woven settings kept apart: at most 0.16; 0.06 rms',
    straight: { value: 0.35, why: 'straight settings kept apart: at most 0.31; 0.23 rms, too thick' },
  },
  convexity: {
    value: 0.2,
    why: 'woven settings kept apart: at most 0.16; 0.10 rms',
    straight: { value: 0.6, why: 'straight settings kept apart: at most 0.57; 0.44 rms, too low' },
  },
  'toe angle': {
    value: 8,
    why: 'slope of a least-squares quadratic over the last 2 mm of face; ripples move it by about so much',
  },
  undercut: {
    value: 0.15,
    why: 'column heights are means over 0.75 mm; a 0.2 mm groove 1.5 mm wide is found within 0.1',
  },
  overlap: { value: 0.3, why: 'toe ±0.1 and fused edge ±0.2 on different grids' },
  'unequal legs': {
    value: 0.4,
    why: 'two legs of ±0.2, moving apart',
    straight: { value: 0.6, why: 'two legs of ±0.6, both too long' },
  },
  fusion: { value: 0.12, why: 'mesh study: at most 0.08; the locator itself is within 0.02' },
  'root fusion': { value: 0.15, why: 'mesh study: at most 0.11, 0.06 rms' },
  'start lump': {
    value: 0.4,
    why: 'one weave at 1.0, 0.75 and 0.5 mm: 0.8, 0.7, 0.5; half the spread of the settled face is added to it',
  },
  crater: {
    value: 0.3,
    why: 'one weave at three meshes: open 1.35, 1.41, 1.22, re-struck 0.44, 0.40, 0.40; half the spread of the settled face is added to it',
  },
  'restart flaw': { value: 1.5, why: 'a slice a millimetre at each end of a flaw, and half a slice of what is read' },
  gap: { value: 0.05, why: 'as set on the bench' },
} as const satisfies Record<string, PlusMinus>;

/** A reading whose plus-minus is stated. */
export type PlusMinusName = keyof typeof plusMinus;

/** Plus-minus of a reading at a cell size. Legs and fusion scale with the cell; the gap does not. */
export function plusMinusAt(name: PlusMinusName, cell_mm: number, run: RunKind = 'woven'): number {
  const { value, straight }: PlusMinus = plusMinus[name];
  const here = run === 'straight' && straight !== undefined ? straight.value : value;
  return name === 'gap' ? here : Math.round(here * (cell_mm / WORKING_CELL_MM) * 100) / 100;
}
