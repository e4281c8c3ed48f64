/**
 * Metal in and out of a column's top, with its enthalpy. The height w is the master (f64); the cells' fills follow from it, so the
 * mass balance is exact by construction.
 */

import { SLIVER, stackRod, topCell } from '../grid/columns.ts';
import { PART } from '../grid/rods.ts';
import { firstCell } from '../kernel/layout.ts';
import type { Heated, State } from './state.ts';

/**
 * Metal on its way into a column or out of it. Numbers in an object at hand, because a number handed to a function is boxed, and metal moves
 * in every column of a pool at every pose.
 */
export interface Move {
  /** What is to be put on or taken off, mm³, and its enthalpy where it is put on, J/g. */
  volume: number;
  h: number;
  /** What was taken off, or what did not fit under the cap, mm³. */
  moved: number;
  /** Enthalpy x volume of all that was taken off since it was last set to 0, J/g mm³. */
  heat: number;
}

export function createMove(): Move {
  return { volume: 0, h: 0, moved: 0, heat: 0 };
}

/** Notes which cell of its stack holds the surface of column c at slice j. Every change of the height ends here. */
function locate(s: Heated, c: number, j: number, m: number): void {
  const i = c * s.plan.ny + j;
  if (s.surfacePlace[i] === m) return;
  s.surfacePlace[i] = m;
  const { layout } = s.heat;
  s.surfaceCell[i] = firstCell(layout, stackRod(s, c, m)) + j;
  s.underCell[i] = firstCell(layout, stackRod(s, c, m > 0 ? m - 1 : m)) + j;
}

/** The same for every column, after heights were set as a whole. */
export function locateAll(s: Heated): void {
  const { nu, ny } = s.plan;
  s.surfacePlace.fill(-1);
  for (let c = 0; c < nu; c++) for (let j = 0; j < ny; j++) locate(s, c, j, topCell(s, c, s.w[c * ny + j]!));
}

function setFill(s: State, rod: number, cell: number, value: number): void {
  const { heat } = s;
  const old = heat.fill[cell]!;
  const next = Math.fround(value);
  if (old === next) return;
  heat.fill[cell] = next;
  const full = (next < 1 ? 1 : 0) - (old < 1 ? 1 : 0);
  const any = (next > 0 ? 1 : 0) - (old > 0 ? 1 : 0);
  if (full !== 0) {
    heat.notFull[rod]! += full;
    if (heat.notFull[rod]! <= 1) heat.flagsStale = true;
  }
  if (any !== 0) {
    heat.holding[rod]! += any;
    if (heat.holding[rod]! <= 1) heat.flagsStale = true;
  }
}

/** Puts `move.volume` of enthalpy `move.h` on column c, slice j. `move.moved` becomes the volume that did not fit under the cap. */
export function addMetal(s: State, c: number, j: number, move: Move): void {
  const { plan, heat } = s;
  const { volume, h } = move;
  const area = s.plan.area_mm2;
  const long = s.plan.long_mm;
  const i = c * plan.ny + j;
  const from = s.w[i]!;
  let to = from + volume / area;
  move.moved = 0;
  if (to > plan.cap[c]!) {
    move.moved = (to - plan.cap[c]!) * area;
    to = plan.cap[c]!;
  }
  s.w[i] = to;
  const last = topCell(s, c, to);
  for (let m = topCell(s, c, from + 1e-9); m <= last; m++) {
    const rod = stackRod(s, c, m);
    const cell = firstCell(heat.layout, rod) + j;
    const bottom = plan.base[c]! + m * long;
    const now = (to - bottom) / long;
    const before = (from - bottom) / long;
    // Outside 0 to 1: metal above or below this cell.
    const filled = Math.min(1, now);
    const had = Math.max(0, before);
    const gained = filled - had;
    if (gained <= 0) continue;
    if (had < SLIVER) {
      heat.H[cell] = h;
      heat.peak[cell] = s.plan.rods.part[rod] === PART.WELD ? h : Math.max(h, heat.peak[cell]!);
      heat.residual[cell] = 0;
    } else {
      heat.H[cell] = (heat.H[cell]! * had + h * gained) / filled;
    }
    setFill(s, rod, cell, filled);
  }
  locate(s, c, j, last);
}

/** Takes up to `move.volume` off the top of column c, slice j, into `move.moved`; `move.heat` gains its enthalpy. The column keeps its lowest cell. */
export function removeMetal(s: State, c: number, j: number, move: Move): void {
  const { plan, heat } = s;
  const area = s.plan.area_mm2;
  const long = s.plan.long_mm;
  const i = c * plan.ny + j;
  const from = s.w[i]!;
  const to = Math.max(plan.base[c]! + long, from - move.volume / area);
  move.moved = 0;
  if (to >= from) return;
  for (let m = s.surfacePlace[i]!; m >= 0; m--) {
    const rod = stackRod(s, c, m);
    const cell = firstCell(heat.layout, rod) + j;
    const bottom = plan.base[c]! + m * long;
    if (bottom + long <= to) break;
    const before = Math.min(1, Math.max(0, (from - bottom) / long));
    const now = Math.min(1, Math.max(0, (to - bottom) / long));
    move.heat += heat.H[cell]! * (before - now) * long * area;
    setFill(s, rod, cell, now);
  }
  s.w[i] = to;
  locate(s, c, j, topCell(s, c, to));
  move.moved = (from - to) * area;
}
