/**
 * Columns of the height field over the rods: which cell holds the surface, what lies under it, and how steep it is. A column's stack is its
 * rods from the base upward; column i of the field is slice j of the column that stands at u, i = c * ny + j.
 */
import type { JointPlan } from './joint.ts';

/** Fills below this fraction of a cell are treated as none when looking for the top cell. */
export const SLIVER = 1e-6;

type Columns = Pick<JointPlan, 'nu' | 'ny' | 'du' | 'dy' | 'long_mm' | 'base' | 'stackStart' | 'stack'>;
interface OnPlan {
  plan: Columns;
}

/** Place in the column's stack of the cell that holds the surface. */
export function topCell({ plan }: OnPlan, c: number, w: number): number {
  const m = Math.floor((w - plan.base[c]!) / plan.long_mm - SLIVER);
  const last = plan.stackStart[c + 1]! - plan.stackStart[c]! - 1;
  return m < 0 ? 0 : Math.min(m, last);
}

/** Rod at place m of column c's stack. */
export function stackRod({ plan }: OnPlan, c: number, m: number): number {
  return plan.stack[plan.stackStart[c]! + m]!;
}

/** Metal in the top cell, mm: it may be part filled, every cell below it is full. */
export function metalInTop({ plan }: OnPlan, c: number, m: number, w: number): number {
  return Math.min(plan.long_mm, w - plan.base[c]! - m * plan.long_mm);
}

/** u of column c, mm. */
export function uOf(plan: Pick<JointPlan, 'kMax' | 'du'>, c: number): number {
  return (c - plan.kMax) * plan.du;
}

/** y of slice j, mm. */
export function yOf(plan: Pick<JointPlan, 'y0' | 'dy'>, j: number): number {
  return plan.y0 + j * plan.dy;
}

/** Neighbour columns in face order u-, u+, y-, y+ at 4 i + face; -1 beyond the grid. */
export function neighbours(nu: number, ny: number): Int32Array {
  const near = new Int32Array(4 * nu * ny);
  for (let c = 0; c < nu; c++)
    for (let j = 0; j < ny; j++) {
      const i = c * ny + j;
      near.set([c > 0 ? i - ny : -1, c < nu - 1 ? i + ny : -1, j > 0 ? i - 1 : -1, j < ny - 1 ? i + 1 : -1], 4 * i);
    }
  return near;
}

/** Which u each column of the field stands at. */
export function columnsOf(nu: number, ny: number): Int32Array {
  return Int32Array.from({ length: nu * ny }, (_, i) => Math.floor(i / ny));
}

/** Slope along the joint at slice j of column i: central, one-sided at the ends. */
export function slopeAlong({ plan }: OnPlan, w: Float64Array, i: number, j: number): number {
  const up = j < plan.ny - 1 ? i + 1 : i;
  const down = j > 0 ? i - 1 : i;
  return (w[up]! - w[down]!) / ((up - down) * plan.dy);
}

/**
 * Slope across, two ways that differ in the last bit. What runs every tick multiplies by `perAcross`, worked out once a column; what runs
 * now and then divides. Which one a stage uses is part of its bits.
 */
export function perAcross({ plan }: OnPlan, c: number): number {
  return 1 / ((rightOf(plan, c) - leftOf(plan, c)) * plan.du);
}

export function riseAcross({ plan }: OnPlan, w: Float64Array, c: number, j: number): number {
  return w[rightOf(plan, c) * plan.ny + j]! - w[leftOf(plan, c) * plan.ny + j]!;
}

export function slopeAcross(on: OnPlan, w: Float64Array, c: number, j: number): number {
  const { plan } = on;
  return riseAcross(on, w, c, j) / ((rightOf(plan, c) - leftOf(plan, c)) * plan.du);
}

function leftOf(_plan: Columns, c: number): number {
  return c > 0 ? c - 1 : c;
}

function rightOf(plan: Columns, c: number): number {
  return c < plan.nu - 1 ? c + 1 : c;
}
