/** The fine cells near the root: plates, room for weld metal above them, and which of them touch. */
import { CELLS_THROUGH_PLATE, type JointOptions } from '../input/options.ts';
import { PART, type RodBuilder } from './rods.ts';

/** Fine cells behind the standing plate of a tee, so that heat turns the corner in fine cells. */
export const FINE_BEHIND_MM = 3;
/** Metal may stand this high out of the root; more is booked as dropped out. */
const CAP_MM = 12;
/** A back row between these shares of a cell keeps its own area, so that any thickness is exact and the time step holds. */
const THINNEST_ROW = CELLS_THROUGH_PLATE - 1;

const SQRT2 = Math.sqrt(2);

/** One number for the place (i, j) of a cell, and back. */
export function cellCode(i: number, j: number): number {
  return (i + 512) * 2048 + (j + 512);
}

export function cellOf(code: number): { i: number; j: number } {
  return { i: Math.floor(code / 2048) - 512, j: (code % 2048) - 512 };
}

/** Lays a cell at (i, j): its part, its sides, and the fraction of it that is metal. */
export type Put = (i: number, j: number, part: number, wide: number, tall: number, share: number) => void;
/** Rod of the cell at (i, j), -1 where none is laid. */
export type Get = (i: number, j: number) => number;

/** Rows through a plate from its face inward: full cells, the last one taking what is left of the thickness. */
export function rows(thickness: number, h: number): number[] {
  const fullCells = Math.floor(thickness / h + 1e-9);
  const rest = thickness - fullCells * h;
  const out = new Array<number>(fullCells).fill(h);
  if (rest > THINNEST_ROW * h) out.push(rest);
  else if (fullCells > 0) out[fullCells - 1] = h + rest;
  return out;
}

/** Height of the joint's surface over u, as cut. Exact; the mesh uses it at column centres. */
export function plateHeight(j: JointOptions, gap: number, u: number): number {
  if (j.kind === 'plate') return 0;
  const away = Math.abs(u) * SQRT2;
  if (u < 0) {
    if (gap > 0 && away <= gap * (1 + 1e-9)) return u;
    if (j.kind === 'lap' && away > gap + j.plateB_mm) return u + SQRT2 * (gap + j.plateB_mm);
  }
  return Math.abs(u);
}

/**
 * Width of the gap in whole cells; a corner and a flat plate have none.
 */
export function gapInCells(joint: JointOptions, h: number): number {
  return joint.kind === 'corner' || joint.kind === 'plate' ? 0 : Math.round(joint.gap_mm / h);
}

/**
 * A flat plate lies across the cells' diagonals, w = 0 its face: in every other column the face halves a cell, which is then part
 * filled, and so may the back. Its back is a staircase whose steps lose heat as the flat face does.
 */
function layFlatPlate(joint: JointOptions, h: number, n: number, put: Put): void {
  const du = h / SQRT2;
  const deep = Math.ceil(joint.plateA_mm / du) + 1;
  for (let k = -(n - 1); k <= n - 1; k++) {
    let rest = 0;
    for (let sum = -deep - ((deep + k) & 1); sum * du < -1e-9; sum += 2) {
      const inside = Math.min(0, (sum + 2) * du) - Math.max(-joint.plateA_mm, sum * du);
      let ofCell = Math.max(0, inside) / (2 * du) + rest;
      const atFace = (sum + 2) * du > 1e-9;
      rest = 0;
      if (!atFace && ofCell < THINNEST_ROW) {
        // Too little for the time step: it belongs to the cell above.
        rest = ofCell;
        continue;
      }
      if (Math.abs(ofCell - 1) < 1e-9) ofCell = 1;
      // Part filled at the face, where metal may come on top; of less area at the back.
      put((sum + k) / 2, (sum - k) / 2, PART.A, h, atFace ? h : h * ofCell, atFace ? ofCell : 1);
    }
  }
}

/** Where each plate's fine cells lie. Back rows carry what is left of the thickness; tops under the height field are part filled. */
export function layPlates(joint: JointOptions, h: number, n: number, gapCells: number, put: Put): void {
  if (joint.kind === 'plate') {
    layFlatPlate(joint, h, n, put);
    return;
  }
  const backA = rows(joint.plateA_mm, h);
  const backB = rows(joint.plateB_mm, h);
  if (joint.kind === 'corner') {
    // Two plates mitred into an L: the square at the corner is split along its diagonal, so the joint is its own mirror image.
    const deepA = backA.length;
    const deepB = backB.length;
    for (let j = -deepA; j < n; j++) {
      for (let i = -deepB; i < n; i++) {
        if (i >= 0 && j >= 0) continue;
        const wide = i === -deepB ? backB[deepB - 1]! : h;
        const tall = j === -deepA ? backA[deepA - 1]! : h;
        put(i, j, i >= j ? PART.A : PART.B, wide, tall, 1);
      }
    }
    return;
  }
  const left = joint.kind === 'tee' ? backB.length + Math.round(FINE_BEHIND_MM / h) : n;
  for (let i = -left; i < n; i++) {
    for (const [r, tall] of backA.entries()) put(i, -1 - r, PART.A, h, tall, 1);
  }
  if (joint.kind === 'tee') {
    for (let j = gapCells; j < n; j++) {
      for (const [r, wide] of backB.entries()) put(-1 - r, j, PART.B, wide, h, 1);
    }
  } else {
    const top = Math.ceil(joint.plateB_mm / h - 1e-9);
    for (let i = -n; i < 0; i++)
      for (let r = 0; r < top; r++) put(i, gapCells + r, PART.B, h, h, Math.min(1, joint.plateB_mm / h - r));
  }
}

/** Room for weld metal above the plates, column by column, up to the cap. */
export function layRoom(joint: JointOptions, h: number, n: number, gap: number, get: Get, put: Put): void {
  for (let k = -(n - 1); k <= n - 1; k++) {
    const w0 = plateHeight(joint, gap, (k * h) / SQRT2);
    const cap = Math.min(CAP_MM, w0 + 0.9 * CAP_MM);
    // i + j rises by 2 a cell; the first cell whose top is above the plate surface and that is not plate already.
    const first = Math.floor((w0 * SQRT2) / h + 1e-6);
    for (let sum = first - 1; ((sum + 2) * h) / SQRT2 <= cap + 1e-9; sum++) {
      if ((sum + k) & 1) continue;
      const i = (sum + k) / 2;
      const j = (sum - k) / 2;
      if (((sum + 2) * h) / SQRT2 <= w0 + 1e-6 || get(i, j) >= 0) continue;
      put(i, j, PART.WELD, h, h, 0);
    }
  }
}

/** Joins every cell to its neighbours; across the faying face only by a gap's conductance. */
export function joinCells(
  joint: JointOptions,
  h: number,
  n: number,
  b: RodBuilder,
  at: Map<number, number>,
  get: Get,
  gapCells: number,
): void {
  if (joint.kind === 'plate') {
    joinFlatPlate(h, n, b, at, get);
    return;
  }
  const backA = rows(joint.plateA_mm, h);
  const backB = rows(joint.plateB_mm, h);
  const wideAt = (i: number, j: number): number =>
    i === -backB.length && (joint.kind === 'corner' || (joint.kind === 'tee' && j >= 0)) ? backB[backB.length - 1]! : h;
  const tallAt = (j: number): number => (j === -backA.length ? backA[backA.length - 1]! : h);
  for (const [code, p] of at) {
    const { i, j } = cellOf(code);
    const right = get(i + 1, j);
    const up = get(i, j + 1);
    const wide = wideAt(i, j);
    const tall = tallAt(j);
    if (right >= 0) b.join(p, right, 1, tall / ((wide + wideAt(i + 1, j)) / 2));
    if (up >= 0) {
      // Under a gap the cell above may be room for weld metal: that is no faying face.
      const faying = joint.kind !== 'corner' && i < 0 && j === -1 && b.isPlate(up);
      if (faying) b.gaps.push({ p, q: up, shape: wide / h, width_mm: wide });
      else b.join(p, up, 3, wide / ((tall + tallAt(j + 1)) / 2));
    }
    exposeCell(joint, b, p, i, j, wide, tall, get, gapCells);
  }
}

function joinFlatPlate(h: number, n: number, b: RodBuilder, at: Map<number, number>, get: Get): void {
  for (const [code, p] of at) {
    const { i, j } = cellOf(code);
    const right = get(i + 1, j);
    const up = get(i, j + 1);
    if (right >= 0) b.join(p, right, 1, 1);
    if (up >= 0) b.join(p, up, 3, 1);
    if (!b.isPlate(p)) continue;
    // Two sides of a step stand for the flat length under them. The outermost columns go on in the fins.
    if (i - j > 1 - n && get(i - 1, j) < 0) b.expose(p, h / SQRT2);
    if (i - j < n - 1 && get(i, j - 1) < 0) b.expose(p, h / SQRT2);
  }
}

/** Sides of plate cells that face the room. Sides under the height field meet weld room and lose heat there instead. */
function exposeCell(
  joint: JointOptions,
  b: RodBuilder,
  p: number,
  i: number,
  j: number,
  wide: number,
  tall: number,
  get: Get,
  gapCells: number,
): void {
  if (!b.isPlate(p)) return;
  if (get(i, j - 1) < 0 && !(gapCells > 0 && j === gapCells)) b.expose(p, wide);
  if (get(i, j + 1) < 0 && !(gapCells > 0 && j === -1 && joint.kind === 'lap')) b.expose(p, wide);
  if (get(i - 1, j) < 0) b.expose(p, tall);
  if (get(i + 1, j) < 0) b.expose(p, tall);
}
