/** Which columns are liquid, how deep, and which belong together. */

import { metalInTop, stackRod } from '../grid/columns.ts';
import { firstCell } from '../kernel/layout.ts';
import { liquidFraction } from '../physics/steel.ts';
import type { State } from '../state/state.ts';

/** Fresh liquid holds its contact line at the column's face beside never-wet plate, at the next column's centre beside frozen bead. */
const EDGE_FRESH = 0.5;
const EDGE_FROZEN = 1;

/** Liquid share of the top metal of column c at slice j. */
function topShare(s: State, c: number, j: number): number {
  const { plan, heat } = s;
  const { H, layout } = heat;
  const long = s.plan.long_mm;
  const i = c * plan.ny + j;
  const looked = s.cal.topShare * long;
  let left = looked;
  let sum = 0;
  let m = s.surfacePlace[i]!;
  let metal = metalInTop(s, c, m, s.w[i]!);
  for (; m >= 0 && left > 0; m--) {
    const inside = Math.min(left, metal);
    sum += inside * liquidFraction(heat.table, H[firstCell(layout, stackRod(s, c, m)) + j]!);
    left -= inside;
    metal = long;
  }
  return sum / looked;
}

/** Sets the liquid's bottom: contiguous liquid counted down from the surface, part-molten cells by their share. */
function setBottom(s: State, c: number, j: number): void {
  const { plan, heat } = s;
  const { H, layout } = heat;
  const long = s.plan.long_mm;
  const i = c * plan.ny + j;
  const w = s.w[i]!;
  let m = s.surfacePlace[i]!;
  let metal = metalInTop(s, c, m, w);
  let depth = 0;
  for (; m >= 0; m--) {
    const share = liquidFraction(heat.table, H[firstCell(layout, stackRod(s, c, m)) + j]!);
    depth += share * metal;
    if (share < 0.5) break;
    metal = long;
  }
  const bottom = w - depth;
  const floor = plan.base[c]! + long;
  s.bottom[i] = bottom > floor ? bottom : Math.min(floor, w);
}

/** Updates the liquid set inside slices [from, to): hysteresis, wetted films, stamps, contact lines of changed columns. */
export function updateLiquid(s: State, from: number, to: number): void {
  const { ny, nu } = s.plan;
  const { liquid, surfaceCell, underCell } = s;
  const { H, table } = s.heat;
  let lo = ny;
  let hi = 0;
  for (let c = 0; c < nu; c++) {
    for (let j = from; j < to; j++) {
      const i = c * ny + j;
      // Neither of the two cells below the surface has begun to melt: the column cannot be liquid.
      if (!liquid[i] && H[surfaceCell[i]!]! <= table.solidus_JPG && H[underCell[i]!]! <= table.solidus_JPG) continue;
      updateColumn(s, i, c, j);
      if (!liquid[i]) continue;
      if (j < lo) lo = j;
      if (j >= hi) hi = j + 1;
    }
  }
  s.liquidSlices.from = lo < hi ? lo : 0;
  s.liquidSlices.to = lo < hi ? hi : 0;
}

function updateColumn(s: State, i: number, c: number, j: number): void {
  const was = s.liquid[i]!;
  const film = !Number.isNaN(s.wetLevel[i]!) && s.w[i]! - s.wetLevel[i]! < s.cal.filmShare * s.plan.long_mm;
  const share = topShare(s, c, j);
  const { liquidOn, liquidOff } = s.cal;
  let now = was ? share > liquidOff : share > liquidOn;
  if (was && film && s.tick <= s.wetUntil[i]!) now = true;
  if (now && !was) melt(s, i);
  else if (!now && was) freeze(s, i);
  if (!now) return;
  if (share > liquidOn) s.wetLevel[i] = Number.NaN;
  if (film && share <= liquidOff) s.bottom[i] = s.w[i]!;
  else setBottom(s, c, j);
}

function melt(s: State, i: number): void {
  s.liquid[i] = 1;
  s.wEq[i] = s.w[i]!;
  s.response[i] = 0;
  if (s.wetTick[i]! < 0) s.wetTick[i] = s.tick;
  for (let face = 0; face < 4; face++) {
    const q = s.near[4 * i + face]!;
    s.edge[4 * i + face] = q >= 0 && s.wetTick[q]! >= 0 ? EDGE_FROZEN : EDGE_FRESH;
  }
}

/** A column reached by its neighbour's contact line: wet, with a film to gather. */
export function wet(s: State, i: number): void {
  const j = i - s.columnOf[i]! * s.plan.ny;
  melt(s, i);
  s.wetLevel[i] = s.w[i]!;
  s.wetUntil[i] = s.tick + Math.ceil(s.cal.filmLife / s.dt);
  s.bottom[i] = s.w[i]!;
  if (j < s.liquidSlices.from || s.liquidSlices.to === 0) s.liquidSlices.from = j;
  if (j + 1 > s.liquidSlices.to) s.liquidSlices.to = j + 1;
}

function freeze(s: State, i: number): void {
  s.liquid[i] = 0;
  s.wetLevel[i] = Number.NaN;
  s.frozenTick[i] = s.tick;
  s.puddle[i] = -1;
  for (let face = 0; face < 4; face++) {
    const q = s.near[4 * i + face]!;
    if (q >= 0) s.edge[4 * q + (face ^ 1)] = EDGE_FROZEN;
  }
}

/** Labels 4-connected liquid in scan order; returns how many puddles. `queue` needs room for every column. */
export function labelPuddles(s: State, queue: Int32Array): number {
  const { plan, liquid, puddle, near } = s;
  const { ny, nu } = plan;
  const { from, to } = s.liquidSlices;
  for (let c = 0; c < nu; c++) puddle.fill(-1, c * ny + from, c * ny + to);
  let labels = 0;
  for (let c = 0; c < nu; c++) {
    for (let j = from; j < to; j++) {
      const start = c * ny + j;
      if (!liquid[start] || puddle[start]! >= 0) continue;
      let head = 0;
      let tail = 0;
      queue[tail++] = start;
      puddle[start] = labels;
      while (head < tail) {
        const i = queue[head++]!;
        for (let face = 0; face < 4; face++) {
          const q = near[4 * i + face]!;
          if (q >= 0 && liquid[q] && puddle[q]! < 0) {
            puddle[q] = labels;
            queue[tail++] = q;
          }
        }
      }
      labels++;
    }
  }
  return labels;
}
