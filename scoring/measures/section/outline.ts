import type { Section } from '../../../engine/index.ts';

/**
 * Across the joint: u and w as the welder sees them, a and b along the two plates, and s, the way along a plate's own surface from
 * the root. On every surface of a tee, lap or corner as cut, s = √2 |u|: up the fusion face and on over the top of an edge.
 */

export const SQRT2 = Math.sqrt(2);

export type Side = 'A' | 'B';

export interface Point {
  u: number;
  w: number;
}

/** Distance out along plate A's face. */
export function alongA(p: Point): number {
  return (p.w + p.u) / SQRT2;
}

/** Distance out along plate B's face. */
export function alongB(p: Point): number {
  return (p.w - p.u) / SQRT2;
}

/** Way along the plate's surface from the root to a point standing on it. */
export function surfaceWay(u: number): number {
  return SQRT2 * Math.abs(u);
}

/** Metal thinner than this over the plate as cut is plate or film, not bead. mm, measured along w. */
export const LEAST_METAL_MM = 0.05;
/** Less metal than this in the whole section is no bead at all. mm² */
const LEAST_AREA_MM2 = 0.5;
/** Farthest a toe can lie beyond the last wet column, in columns: the engine's toe stands 0.5 to 1.5 columns out. */
const FARTHEST_TOE = 1.5;

/** Where the face of the bead meets a plate. */
export interface Toe extends Point {
  side: Side;
  /** Slope dw/du of the face at the toe. */
  slope: number;
  /** Last column that carries metal. */
  column: number;
}

/** The bead's outline in one section: two toes and the face between them, from B's side (u < 0) to A's. */
export interface Outline {
  toeA: Toe;
  toeB: Toe;
  /** Toe B, the columns between, toe A. */
  face: Point[];
  /** Metal standing over the plates as cut, mm². */
  area_mm2: number;
}

/**
 * Finds the bead's outline: toes by a quadratic through the last columns that carry metal, carried on to the plate's surface as cut.
 * Returns null where there is no bead.
 */
export function outlineOf(s: Section): Outline | null {
  const n = s.u_mm.length;
  const du = (s.u_mm[n - 1]! - s.u_mm[0]!) / (n - 1);
  let first = -1;
  let last = -1;
  let area = 0;
  for (let i = 0; i < n; i++) {
    const metal = s.w_mm[i]! - s.plate_mm[i]!;
    area += metal * du;
    if (metal <= LEAST_METAL_MM) continue;
    if (first < 0) first = i;
    last = i;
  }
  if (first < 0 || last - first < 3 || area < LEAST_AREA_MM2) return null;
  const toeB = toeAt(s, first, -1, du);
  const toeA = toeAt(s, last, 1, du);
  const face: Point[] = [toeB];
  for (let i = first; i <= last; i++) {
    const u = s.u_mm[i]!;
    if (u > toeB.u && u < toeA.u) face.push({ u, w: s.w_mm[i]! });
  }
  face.push(toeA);
  return { toeA, toeB, face, area_mm2: area };
}

/** Toe beyond column `i`, outward in steps of `way`. */
function toeAt(s: Section, i: number, way: 1 | -1, du: number): Toe {
  const d = (k: number): number => s.w_mm[k]! - s.plate_mm[k]!;
  const d0 = d(i);
  const d1 = d(i - way);
  const d2 = d(i - 2 * way);
  // Quadratic in x = columns outward from column i: d0 + p x + q x².
  const q = (d0 - 2 * d1 + d2) / 2;
  const p = (3 * d0 - 4 * d1 + d2) / 2;
  const inside = i + way >= 0 && i + way < s.u_mm.length && d(i + way) < 0 ? 1 : FARTHEST_TOE;
  const x = Math.min(outward(d0, p, q), inside);
  const u = s.u_mm[i]! + way * x * du;
  // The surface as cut is straight between root, toe and edge; beyond the last column it goes on as it went.
  const plate = plateAt(s, u);
  const metalSlope = (way * endSlope(d, i, way, x, p + 2 * q * x)) / du;
  const step = 0.25 * du;
  const plateSlope = (plateAt(s, u + step) - plateAt(s, u - step)) / (2 * step);
  return { side: way === 1 ? 'A' : 'B', u, w: plate, slope: metalSlope + plateSlope, column: i };
}

/**
 * Slope of the metal's height at x columns beyond column i: least-squares quadratic over the last five columns, so that the scallop of
 * one ripple does not tip it. Heights on both sides must be metal; a bead too narrow for that keeps the slope of the last three.
 */
function endSlope(d: (k: number) => number, i: number, way: number, x: number, fallback: number): number {
  let sum = 0;
  let first = 0;
  let second = 0;
  for (let k = 0; k < 5; k++) {
    const y = d(i - k * way);
    if (!(y > LEAST_METAL_MM)) return fallback;
    const z = 2 - k;
    sum += y;
    first += z * y;
    second += z * z * y;
  }
  return first / 10 + (2 * (2 + x) * (5 * second - 10 * sum)) / 70;
}

/** Smallest x >= 0 with d0 + p x + q x² = 0; the straight line through the last two columns where the quadratic never gets there. */
function outward(d0: number, p: number, q: number): number {
  const straight = p < 0 ? -d0 / p : FARTHEST_TOE;
  const under = p * p - 4 * q * d0;
  if (under < 0) return straight;
  const root = Math.sqrt(under);
  // Written so that nothing cancels; d0 > 0.
  const x = p <= 0 ? (2 * d0) / (-p + root) : (-p - root) / (2 * q);
  return x >= 0 && Number.isFinite(x) ? x : straight;
}

/** Surface as cut at any u, straight between columns. */
function plateAt(s: Section, u: number): number {
  const n = s.u_mm.length;
  const u0 = s.u_mm[0]!;
  const du = (s.u_mm[n - 1]! - u0) / (n - 1);
  const x = Math.min(n - 2, Math.max(0, Math.floor((u - u0) / du)));
  const t = (u - u0) / du - x;
  return s.plate_mm[x]! + t * (s.plate_mm[x + 1]! - s.plate_mm[x]!);
}
