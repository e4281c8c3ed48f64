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
