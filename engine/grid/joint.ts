/**
 * The frame everything is in: `y` runs up the joint. The plates meet at the root line a = b = 0; `a` runs out along plate A's face, `b`
 * along plate B's, square to each other. The welder looks at `u` across and `w` out of the root:
 *
 *     u = (a - b)/√2   (plate A's side is u > 0, on the right)        a = (w + u)/√2
 *     w = (a + b)/√2                                                  b = (w - u)/√2
 *
 * A joint as rods and columns. Near the root the section is square cells of edge h; farther out each plate is a fin of
 * full-thickness rods that grow wider. The cells' diagonals i - j = k are the columns of the height field:
 *
 *      b |B|  \k=-1\ 0\ 1        column k stands at u = k h/√2 and is h/√2 wide; its cells are h√2 long,
 *        |B|___\____\__          so a cell keeps its area h² and the plate faces fall exactly on cell ends.
 *        AAAAAAAAAAAAAA  a
 */

import type { JointOptions } from '../input/options.ts';
import { PART, RodBuilder, type RodPlan } from './rods.ts';

/**
 * The fine region reaches this far along each plate's face, farther on thick plate, where heat takes longer to level out through the
 * thickness; whole numbers of cells at 1.0, 0.75 and 0.5 mm.
 */
function fineArm(joint: JointOptions): number {
  const thick = Math.max(joint.plateA_mm, joint.plateB_mm);
  return thick <= 8 ? 12 : thick <= 12 ? 15 : 21;
}
/** Fine cells behind the standing plate of a tee, so that heat turns the corner in fine cells. */
const FINE_BEHIND_MM = 3;
/** Metal may stand this high out of the root; more is booked as dropped out. */
const CAP_MM = 12;
/** A back row between these shares of a cell keeps its own area, so that any thickness is exact and the time step holds. */
const THINNEST_ROW = 0.6;
/** Fins grow by this factor up to this width. */
const FIN_GROWTH = 1.5;
const FIN_WIDEST_MM = 10;
/** Overlap of a lap coupon. */
export const LAP_OVERLAP_MM = 25;
/** Joint added at each end by run-on and run-off tabs. */
export const TAB_MM = 12;

const SQRT2 = Math.sqrt(2);

export interface JointPlan {
  joint: JointOptions;
  rods: RodPlan;
  h: number;
  ny: number;
  dy: number;
  /** y of slice 0's centre; y = 0 is the bottom of the joint proper. */
  y0: number;
  /** Columns across, from u < 0 to u > 0; column c stands at u = (c - kMax) h/√2. */
  nu: number;
  kMax: number;
  du: number;
  /** Length of a cell in its column, and area of a column's face on the grid. */
  long_mm: number;
  area_mm2: number;
  /** Height of the joint as cut, bottom of the metal, most metal allowed (w, mm). */
  plate: Float64Array;
  base: Float64Array;
  cap: Float64Array;
  /** Rods of column c from its base upward: stack[stackStart[c] .. stackStart[c + 1]). */
  stackStart: Int32Array;
  stack: Int32Array;
  /** Share of each rod filled with metal before welding. */
  fill: Float64Array;
  /** Regular grid for sections: rod at (ia, ib) or -1. */
  na: number;
  nb: number;
  iMin: number;
  jMin: number;
  rodAt: Int32Array;
}

/** Rows through a plate from its face inward: whole cells, the last one taking what is left of the thickness. */
function rows(thickness: number, h: number): number[] {
  const whole = Math.floor(thickness / h + 1e-9);
  const rest = thickness - whole * h;
  const out = new Array<number>(whole).fill(h);
  if (rest > THINNEST_ROW * h) out.push(rest);
  else if (whole > 0) out[whole - 1] = h + rest;
  return out;
}

/** Height of the joint's surface over u, as cut. Exact; the mesh uses it at column centres. */
export function plateHeight(j: JointOptions, gap: number, u: number): number {
  const away = Math.abs(u) * SQRT2;
  if (u < 0) {
    if (gap > 0 && away <= gap * (1 + 1e-9)) return u;
    if (j.kind === 'lap' && away > gap + j.plateB_mm) return u + SQRT2 * (gap + j.plateB_mm);
  }
  return Math.abs(u);
}

export function buildJoint(joint: JointOptions, h: number): JointPlan {
  const n = Math.round(fineArm(joint) / h);
  const gapCells = joint.kind === 'corner' ? 0 : Math.round(joint.gap_mm / h);
  const gap = gapCells * h;
  const b = new RodBuilder();
  const at = new Map<number, number>();
  const key = (i: number, j: number): number => (i + 512) * 2048 + (j + 512);
  const get = (i: number, j: number): number => at.get(key(i, j)) ?? -1;
  const fill: number[] = [];

  const put = (i: number, j: number, part: number, wide: number, tall: number, share: number): void => {
    at.set(key(i, j), b.add(part, (i + 0.5) * h, (j + 0.5) * h, wide * tall));
    fill.push(share);
  };

  layPlates(joint, h, n, gapCells, put);
  layRoom(joint, h, n, gap, get, put);
  joinCells(joint, h, b, at, get, gapCells);
  layFins(joint, h, n, b, get);

  const rods = b.build();
  while (fill.length < rods.count) fill.push(1);
  return finish(joint, h, n, gap, rods, Float64Array.from(fill), at, get);
}

type Put = (i: number, j: number, part: number, wide: number, tall: number, share: number) => void;
type Get = (i: number, j: number) => number;

/** Where each plate's fine cells lie. Back rows carry what is left of the thickness; tops under the height field are part filled. */
function layPlates(joint: JointOptions, h: number, n: number, gapCells: number, put: Put): void {
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
function layRoom(joint: JointOptions, h: number, n: number, gap: number, get: Get, put: Put): void {
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

function joinCells(
  joint: JointOptions,
  h: number,
  b: RodBuilder,
  at: Map<number, number>,
  get: Get,
  gapCells: number,
): void {
  const backA = rows(joint.plateA_mm, h);
  const backB = rows(joint.plateB_mm, h);
  const wideAt = (i: number, j: number): number =>
    i === -backB.length && (joint.kind === 'corner' || (joint.kind === 'tee' && j >= 0)) ? backB[backB.length - 1]! : h;
  const tallAt = (j: number): number => (joint.kind !== 'corner' && j === -backA.length ? backA[backA.length - 1]! : h);
  for (const [code, p] of at) {
    const i = Math.floor(code / 2048) - 512;
    const j = (code % 2048) - 512;
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

/** A fine rod where a fin begins: how wide its face is, and would be with the cell full. */
interface Edge {
  rod: number;
  across: number;
  full: number;
}

/** Plates beyond the fine cells: full-thickness rods growing wider, losing heat on both faces, clamped at the far end. */
function layFins(joint: JointOptions, h: number, n: number, b: RodBuilder, get: Get): void {
  const arm = (
    part: number,
    thickness: number,
    reach: number,
    slot: 0 | 1 | 2 | 3,
    edge: Edge[],
    place: (d: number) => [number, number],
  ): number[] => {
    const out: number[] = [];
    let from = 0;
    let wide = 2 * h;
    let last = -1;
    let lastWide = h;
    while (reach - from > 0.25 * h) {
      let w = Math.min(wide, FIN_WIDEST_MM);
      if (reach - from - w < 0.5 * w) w = reach - from;
      const [a, bb] = place(from + w / 2);
      const rod = b.add(part, a, bb, thickness * w);
      if (last < 0) for (const e of edge) b.joinFin(e.rod, rod, slot, e.full / ((h + w) / 2), e.across / ((h + w) / 2));
      else b.join(last, rod, 1, thickness / ((lastWide + w) / 2));
      b.expose(rod, 2 * w);
      out.push(rod);
      last = rod;
      lastWide = w;
      from += w;
      wide *= FIN_GROWTH;
    }
    if (last >= 0) b.sinks.push({ rod: last, share: 1 });
    else {
      const whole = edge.reduce((sum, e) => sum + e.across, 0);
      for (const e of edge) b.sinks.push({ rod: e.rod, share: e.across / whole });
    }
    return out;
  };
  const columnOf = (i: number, heights: number[]): Edge[] =>
    heights.map((across, r) => ({ rod: get(i, -1 - r), across, full: across }));
  const w = joint.plateWidth_mm;
  const rowsA = rows(joint.plateA_mm, h);
  const rowsB = rows(joint.plateB_mm, h);
  if (joint.kind === 'tee') {
    const behind = (rowsB.length + Math.round(FINE_BEHIND_MM / h)) * h;
    const middle = joint.plateB_mm / 2;
    arm(PART.A, joint.plateA_mm, w / 2 - middle - n * h, 1, columnOf(n - 1, rowsA), (d) => [
      n * h + d,
      -joint.plateA_mm / 2,
    ]);
    arm(PART.A, joint.plateA_mm, w / 2 + middle - behind, 0, columnOf(-Math.round(behind / h), rowsA), (d) => [
      -behind - d,
      -joint.plateA_mm / 2,
    ]);
    const top = rowsB.map((across, r) => ({ rod: get(-1 - r, n - 1), across, full: across }));
    arm(PART.B, joint.plateB_mm, w - joint.gap_mm - n * h, 3, top, (d) => [-joint.plateB_mm / 2, n * h + d]);
  } else if (joint.kind === 'lap') {
    const overlap = Math.min(LAP_OVERLAP_MM, w / 2);
    const topB = Math.ceil(joint.plateB_mm / h - 1e-9);
    const g = Math.round(joint.gap_mm / h);
    const edgeB = Array.from({ length: topB }, (_, r) => ({
      rod: get(-n, g + r),
      across: h * Math.min(1, joint.plateB_mm / h - r),
      full: h,
    }));
    arm(PART.A, joint.plateA_mm, w - overlap - n * h, 1, columnOf(n - 1, rowsA), (d) => [
      n * h + d,
      -joint.plateA_mm / 2,
    ]);
    const under = arm(PART.A, joint.plateA_mm, overlap - n * h, 0, columnOf(-n, rowsA), (d) => [
      -n * h - d,
      -joint.plateA_mm / 2,
    ]);
    const over = arm(PART.B, joint.plateB_mm, w - n * h, 0, edgeB, (d) => [-n * h - d, joint.plateB_mm / 2]);
    if (g === 0 && under.length > 0 && over.length > 0) {
      const wide = Math.min(overlap - n * h, 2 * h);
      b.gaps.push({ p: under[0]!, q: over[0]!, shape: wide / h, width_mm: wide });
    }
  } else {
    const top = rowsB.map((across, r) => ({ rod: get(-1 - r, n - 1), across, full: across }));
    arm(PART.A, joint.plateA_mm, w - n * h, 1, columnOf(n - 1, rowsA), (d) => [n * h + d, -joint.plateA_mm / 2]);
    arm(PART.B, joint.plateB_mm, w - n * h, 3, top, (d) => [-joint.plateB_mm / 2, n * h + d]);
  }
}

function finish(
  joint: JointOptions,
  h: number,
  n: number,
  gap: number,
  rods: RodPlan,
  fill: Float64Array,
  at: Map<number, number>,
  get: Get,
): JointPlan {
  const kMax = n - 1;
  const nu = 2 * kMax + 1;
  const plate = new Float64Array(nu);
  const base = new Float64Array(nu);
  const cap = new Float64Array(nu);
  const stackStart = new Int32Array(nu + 1);
  const stack: number[] = [];
  for (let c = 0; c < nu; c++) {
    const k = c - kMax;
    const w0 = plateHeight(joint, gap, (k * h) / SQRT2);
    plate[c] = w0;
    // Start at the cell holding the surface (its bottom at or below w0) and go down while there is metal below.
    let sum = Math.ceil((w0 * SQRT2) / h - 1e-6) - 1;
    if ((sum + k) & 1) sum -= 1;
    const plateCell = (s: number): boolean => {
      const rod = get((s + k) / 2, (s - k) / 2);
      return rod >= 0 && rods.part[rod] !== PART.WELD && Math.abs(rods.area_mm2[rod]! - h * h) < 1e-9;
    };
    while (plateCell(sum - 2)) sum -= 2;
    if (!plateCell(sum)) sum += 2;
    base[c] = (sum * h) / SQRT2;
    stackStart[c] = stack.length;
    for (let rod = get((sum + k) / 2, (sum - k) / 2); rod >= 0; ) {
      stack.push(rod);
      sum += 2;
      rod = get((sum + k) / 2, (sum - k) / 2);
    }
    cap[c] = (sum * h) / SQRT2;
  }
  stackStart[nu] = stack.length;

  let iMin = 0;
  let jMin = 0;
  let iMax = 0;
  let jMax = 0;
  for (const code of at.keys()) {
    const i = Math.floor(code / 2048) - 512;
    const j = (code % 2048) - 512;
    iMin = Math.min(iMin, i);
    iMax = Math.max(iMax, i);
    jMin = Math.min(jMin, j);
    jMax = Math.max(jMax, j);
  }
  const na = iMax - iMin + 1;
  const nb = jMax - jMin + 1;
  const rodAt = new Int32Array(na * nb);
  for (let j = 0; j < nb; j++) for (let i = 0; i < na; i++) rodAt[j * na + i] = get(i + iMin, j + jMin);

  const tab = joint.tabs ? TAB_MM : 0;
  const length = joint.length_mm + 2 * tab;
  const ny = Math.max(8, Math.round(length / h));
  const dy = length / ny;
  return {
    joint,
    rods,
    h,
    ny,
    dy,
    y0: -tab + dy / 2,
    nu,
    kMax,
    du: h / SQRT2,
    long_mm: 2 * (h / SQRT2),
    area_mm2: (h / SQRT2) * dy,
    plate,
    base,
    cap,
    stackStart,
    stack: Int32Array.from(stack),
    fill,
    na,
    nb,
    iMin,
    jMin,
    rodAt,
  };
}
