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
 * and 0.5 mm) and from what a hand macro can be read to (±0.25 legs, ±0.2 convexity, ±0.3 fusion; common practice). A coarser or finer
 * cell scales them in proportion.
 */
const WORKING_CELL_MM = 0.75;

export interface PlusMinus {
  value: number;
  why: string;
}

/** How far each reading may be off at the working cell of 0.75 mm (mm; degrees for angles), and why. */
export const plusMinus = {
  leg: { value: 0.3, why: 'mesh study: 0.07 rms on A, 0.22 on B; one leg of a straight run 0.55' },
  throat: { value: 0.25, why: 'legs ±0.3 across 45°, and the face between columns' },
  convexity: { value: 0.25, why: 'mesh study: at most 0.21, on a straight run; 0.09 rms' },
  'toe angle': {
    value: 8,
    why: 'slope of a least-squares quadratic over the last 2 mm of face; ripples move it by about so much',
  },
  undercut: {
    value: 0.15,
    why: 'column heights are means over 0.75 mm; a 0.2 mm groove 1.5 mm wide is found within 0.1',
  },
  overlap: { value: 0.3, why: 'toe ±0.1 and fused edge ±0.2 on different grids' },
  'unequal legs': { value: 0.4, why: 'two legs of ±0.3, partly moving together' },
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
export function plusMinusAt(name: PlusMinusName, cell_mm: number): number {
  const value = plusMinus[name].value;
  return name === 'gap' ? value : Math.round(value * (cell_mm / WORKING_CELL_MM) * 100) / 100;
}
