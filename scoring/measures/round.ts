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

/** To 1e-6 (balances of the books). */
export function micro(x: number): number {
  return Math.round(x * 1e6) / 1e6 + 0;
}

/** Degrees of the angle between two plane vectors, 0 to 180. */
export function angleBetween_deg(ax: number, ay: number, bx: number, by: number): number {
  return (Math.atan2(Math.abs(ax * by - ay * bx), ax * bx + ay * by) * 180) / Math.PI;
}
