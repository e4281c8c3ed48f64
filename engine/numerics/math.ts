/**
 * Functions whose last bits feed state. `Math.exp`, `sin` and their kin may differ between browsers; these use only
 * + - * / and exact rounding, so every engine gives the same bits. `Math.sqrt`, `floor`, `abs` are exact by IEEE 754.
 */

const LN2_HI = 0.6931471803691238;
const LN2_LO = 1.9082149292705877e-10;
const INV_LN2 = Math.LOG2E;

/** 2^n for whole n in [-1022, 1023], exact. */
const POWERS = new Float64Array(2046);
POWERS[1022] = 1;
for (let n = 1; n <= 1023; n++) POWERS[1022 + n] = 2 * POWERS[1021 + n]!;
for (let n = 1; n <= 1022; n++) POWERS[1022 - n] = POWERS[1023 - n]! / 2;

/** Reciprocal factorials. */
const C2 = 1 / 2;
const C3 = C2 / 3;
const C4 = C3 / 4;
const C5 = C4 / 5;
const C6 = C5 / 6;
const C7 = C6 / 7;
const C8 = C7 / 8;
const C9 = C8 / 9;
const C10 = C9 / 10;
const C11 = C10 / 11;
const C12 = C11 / 12;
const C13 = C12 / 13;

/** e^x: at most 2 ulp off on [-700, 700]; 0 below, Infinity above. */
export function exp(x: number): number {
  if (x < -700) return 0;
  if (x > 700) return Number.POSITIVE_INFINITY;
  const n = Math.floor(x * INV_LN2 + 0.5);
  const r = x - n * LN2_HI - n * LN2_LO;
  // Taylor to r^13 on |r| <= 0.347: remainder below 1e-17. In pairs of terms (Estrin), so that the processor need not wait for each.
  const r2 = r * r;
  const r4 = r2 * r2;
  const r8 = r4 * r4;
  const low = 1 + r + r2 * (C2 + C3 * r) + r4 * (C4 + C5 * r + r2 * (C6 + C7 * r));
  const high = C8 + C9 * r + r2 * (C10 + C11 * r) + r4 * (C12 + C13 * r);
  return (low + r8 * high) * POWERS[1022 + n]!;
}

export const PI = Math.PI;

/** 1/(k (k - 1)) for k = 3, 5 .. 21. */
const SINE = Float64Array.from({ length: 10 }, (_, n) => 1 / ((2 * n + 3) * (2 * n + 2)));

/**
 * sin of an angle in radians: at most 4 units of 2^-53 off for |x| <= 7, twice round; beyond, the error grows by 1.5 units a radian, because
 * whole half turns are taken off with a rounded pi. Angles here are a torch's and a contact line's, within one turn.
 */
export function sin(x: number): number {
  const turns = Math.floor(x / PI + 0.5);
  const r = x - turns * PI;
  const r2 = r * r;
  let sum = 1;
  for (let n = 9; n >= 0; n--) sum = 1 - r2 * SINE[n]! * sum;
  const value = r * sum;
  return turns % 2 === 0 ? value : -value;
}

/** cos by sin a quarter turn on: as sin within a turn, 2.5 units a radian beyond. */
export function cos(x: number): number {
  return sin(x + PI / 2);
}

/** x, or the nearer end where it lies outside. NaN stays NaN. */
export function clamp(x: number, low: number, high: number): number {
  return x < low ? low : Math.min(x, high);
}

export const DEGREE = PI / 180;
