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
import { canonical } from '../numerics/canonical.ts';
import { layFins } from './fins.ts';
import {
  cellCode,
  cellOf,
  type Get,
  gapInCells,
  joinCells,
  layPlates,
  layRoom,
  type Put,
  plateHeight,
} from './plates.ts';
import { PART, RodBuilder, type RodPlan } from './rods.ts';

/**
 * The fine region reaches this far along each plate's face, farther on thick plate, where heat takes longer to level out through the
 * thickness; whole numbers of cells at 1.0, 0.75 and 0.5 mm.
 */
function fineArm(joint: JointOptions): number {
  const thick = joint.kind === 'plate' ? joint.plateA_mm : Math.max(joint.plateA_mm, joint.plateB_mm);
  return thick <= 8 ? 12 : thick <= 12 ? 15 : 21;
}
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

/** Joints laid out last: a class, a search and a change tried weld the same joint over and over. */
const LAID = new Map<string, JointPlan>();
const MOST_LAID = 4;

/** A joint in rods and columns of cell edge h, mm. Read only: the same joint has the same plan. */
export function buildJoint(joint: JointOptions, h: number): JointPlan {
  const key = `${h} ${canonical(joint)}`;
  const known = LAID.get(key);
  if (known) return known;
  const plan = layJoint({ ...joint }, h);
  for (const oldest of LAID.keys()) {
    if (LAID.size < MOST_LAID) break;
    LAID.delete(oldest);
  }
  LAID.set(key, plan);
  return plan;
}

function layJoint(joint: JointOptions, h: number): JointPlan {
  const n = Math.round(fineArm(joint) / h);
  const gapCells = gapInCells(joint, h);
  const gap = gapCells * h;
  const b = new RodBuilder();
  const at = new Map<number, number>();
  const get: Get = (i, j) => at.get(cellCode(i, j)) ?? -1;
  const fill: number[] = [];
  const put: Put = (i, j, part, wide, tall, share) => {
    at.set(cellCode(i, j), b.add(part, (i + 0.5) * h, (j + 0.5) * h, wide * tall));
    fill.push(share);
  };

  layPlates(joint, h, n, gapCells, put);
  layRoom(joint, h, n, gap, get, put);
  joinCells(joint, h, n, b, at, get, gapCells);
  layFins(joint, h, n, b, get);

  const rods = b.build();
  while (fill.length < rods.count) fill.push(1);
  const slices = sliceJoint(joint, h);
  const du = h / SQRT2;
  return {
    joint,
    rods,
    h,
    ...slices,
    du,
    long_mm: 2 * du,
    area_mm2: du * slices.dy,
    ...stackColumns(joint, h, n, gap, rods, get),
    fill: Float64Array.from(fill),
    ...layGrid(at.keys(), get),
  };
}

/** Columns across, each with its plate height and its rods from the base upward. */
function stackColumns(
  joint: JointOptions,
  h: number,
  n: number,
  gap: number,
  rods: RodPlan,
  get: Get,
): Pick<JointPlan, 'nu' | 'kMax' | 'plate' | 'base' | 'cap' | 'stackStart' | 'stack'> {
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
  return { nu, kMax, plate, base, cap, stackStart, stack: Int32Array.from(stack) };
}

/** The fine cells as a regular grid, for cuts. */
function layGrid(codes: Iterable<number>, get: Get): Pick<JointPlan, 'na' | 'nb' | 'iMin' | 'jMin' | 'rodAt'> {
  let iMin = 0;
  let jMin = 0;
  let iMax = 0;
  let jMax = 0;
  for (const code of codes) {
    const { i, j } = cellOf(code);
    iMin = Math.min(iMin, i);
    iMax = Math.max(iMax, i);
    jMin = Math.min(jMin, j);
    jMax = Math.max(jMax, j);
  }
  const na = iMax - iMin + 1;
  const nb = jMax - jMin + 1;
  const rodAt = new Int32Array(na * nb);
  for (let j = 0; j < nb; j++) for (let i = 0; i < na; i++) rodAt[j * na + i] = get(i + iMin, j + jMin);
  return { na, nb, iMin, jMin, rodAt };
}

/** Slices up the joint, tabs counted: as near to cubes as their number allows. */
function sliceJoint(joint: JointOptions, h: number): Pick<JointPlan, 'ny' | 'dy' | 'y0'> {
  const tab = joint.tabs ? TAB_MM : 0;
  const length = joint.length_mm + 2 * tab;
  const ny = Math.max(8, Math.round(length / h));
  const dy = length / ny;
  return { ny, dy, y0: -tab + dy / 2 };
}
