/** One settling of the liquid: set, equilibrium of every puddle, metal moved part of the way, contact lines, drops. */

import { uOf, yOf } from '../grid/columns.ts';
import type { KernelChoice } from '../kernel/layout.ts';
import type { Nodes, SurfaceConstants, SurfaceKernel } from '../kernel/surface-layout.ts';
import { clamp, exp, PI } from '../numerics/math.ts';
import { DENSITY_GPMM3 } from '../physics/steel.ts';
import { dimsOf, makeArrays } from '../state/allocate.ts';
import type { Arrays } from '../state/fields.ts';
import { createMove, type Move, removeMetal } from '../state/metal.ts';
import type { State } from '../state/state.ts';
import { advanceContactLines, toeHeight } from './contact-line.ts';
import { carryMetal } from './flow.ts';
import { labelPuddles, updateLiquid } from './liquid.ts';
import { createSurface, linkNode, linkToe, linkWall, orderNodes } from './surface.ts';

const GRAVITY_MMPS2 = 9810;

export interface PoolWork extends Arrays<'pool'> {
  surface: SurfaceKernel;
  nodes: Nodes;
  move: Move;
  dripped_g: number;
}

export function createPoolWork(s: State, choice: KernelChoice = 'auto'): PoolWork {
  const surface = createSurface(s.w.length, choice);
  const arrays = makeArrays('pool', dimsOf(s.plan, s.heat.layout));
  const { column, nodeOf, queue, inflow, inheat, order, spare, runs } = arrays;
  return {
    column,
    nodeOf,
    queue,
    inflow,
    inheat,
    order,
    spare,
    runs,
    surface,
    nodes: surface.nodes,
    move: createMove(),
    dripped_g: 0,
  };
}

/**
 * Settles the liquid for `time` seconds with the arc, or the aim where there is none, at height `y`. Metal melts within the arc's reach or
 * beside liquid: only there new liquid is looked for.
 */
export function settleNear(s: State, work: PoolWork, y: number, time: number): void {
  const { y0, dy, ny } = s.plan;
  const reach = s.cal.recentReach;
  const from = Math.floor((y - reach - y0) / dy);
  const to = Math.ceil((y + reach - y0) / dy);
  settle(s, work, clamp(from, 0, ny), clamp(to, 0, ny), time);
}

/** Settles the liquid for `time` seconds; `from`/`to` bound the slices where metal may newly have melted. */
export function settle(s: State, work: PoolWork, from: number, to: number, time: number): void {
  work.dripped_g = 0;
  const { liquidSlices } = s;
  const lo = liquidSlices.to > 0 ? Math.min(from, liquidSlices.from) : from;
  const hi = Math.max(to, liquidSlices.to);
  if (hi <= lo) return;
  updateLiquid(s, Math.max(0, lo - 1), Math.min(s.plan.ny, hi + 1));
  if (liquidSlices.to === 0) return;
  const count = labelPuddles(s, work.queue);
  for (let p = 0; p < count; p++) settlePuddle(s, work, p, time);
  advanceContactLines(s, time, work.queue);
}

function settlePuddle(s: State, work: PoolWork, label: number, time: number): void {
  const { nodes } = work;
  collect(s, work, label);
  let volume = 0;
  let pressure = 0;
  let load = 0;
  for (let n = 0; n < nodes.count; n++) {
    volume += s.w[work.column[n]!]!;
    pressure += s.pressure[work.column[n]!]!;
    load += nodes.load[n]!;
  }
  load /= nodes.count;
  const constants: SurfaceConstants = { du: s.plan.du, dy: s.plan.dy, tension: s.cal.surfaceTension * 1000 };
  const lambda = work.surface.relax(constants, volume, load + pressure / nodes.count, s.cal.surfaceSweeps);
  for (let n = 0; n < nodes.count; n++) {
    const i = work.column[n]!;
    s.wEq[i] = nodes.pair[2 * n]!;
    s.response[i] = nodes.pair[2 * n + 1]!;
    s.pressure[i] = lambda - load;
    s.skinPressure[i] = lambda - nodes.load[n]!;
  }
  const { move } = work;
  carryMetal(s, work, work.surface, time / (time + s.cal.relaxation), move);
  if (move.moved > 0) drop(s, work, move.moved, move.heat / move.moved);
  if (s.plan.joint.kind !== 'plate') release(s, work);
}

/** Gathers the puddle's columns as nodes, in scan order, with their neighbours, toes and loads. */
function collect(s: State, work: PoolWork, label: number): void {
  const { nodes, column, nodeOf } = work;
  const { plan, puddle } = s;
  const { ny, nu } = plan;
  const { from, to } = s.liquidSlices;
  let count = 0;
  for (let c = 0; c < nu; c++)
    for (let j = from; j < to; j++)
      if (puddle[c * ny + j] === label) {
        column[count] = c * ny + j;
        nodeOf[c * ny + j] = count++;
      }
  nodes.count = count;
  const head = s.cal.liquidDensity * GRAVITY_MMPS2;
  const flat = plan.joint.kind === 'plate';
  // Force of the arc: 0.1 I_rms² µN, spread as the arc's heat.
  const rms = s.cal.rmsCurrent * s.current;
  const spread = 1 / (2 * s.arcRadius * s.arcRadius);
  const push = s.arcOn ? (0.1 * rms * rms * spread) / PI : 0;
  for (let n = 0; n < count; n++) {
    const i = column[n]!;
    const c = s.columnOf[i]!;
    const j = i - c * ny;
    const y = yOf(plan, j);
    const u = uOf(plan, c);
    const d2 = (u - s.footU) * (u - s.footU) + (y - s.footY) * (y - s.footY);
    nodes.pair[2 * n] = s.wEq[i]!;
    nodes.pair[2 * n + 1] = s.response[i]!;
    nodes.bottom[n] = Math.min(s.bottom[i]!, s.w[i]!);
    // Beyond e^-7 the arc pushes with less than half a pascal; a millimetre of head is 69.
    // On a plate lying flat a column's weight goes by its own height, as it stood at the last settling.
    const rise = flat ? s.w[i]! : y;
    nodes.load[n] = head * rise + (push > 0 && d2 * spread < 7 ? push * exp(-d2 * spread) : 0);
    for (let side = 0; side < 4; side++) {
      const q = s.near[4 * i + side]!;
      const d = side < 2 ? plan.du : plan.dy;
      if (q < 0) linkWall(nodes, n, side);
      else if (puddle[q] === label) linkNode(nodes, n, side, nodeOf[q]!, d);
      else linkToe(nodes, n, side, s.edge[4 * i + side]! * d, toeHeight(s, i, q, side));
    }
  }
  orderNodes(nodes, (n) => {
    const c = s.columnOf[column[n]!]!;
    return (c + column[n]! - c * ny) & 1;
  });
}

function drop(s: State, work: PoolWork, volume: number, enthalpy: number): void {
  if (volume <= 0) return;
  const grams = volume * DENSITY_GPMM3;
  work.dripped_g += grams;
  s.ledger.dripped_g += grams;
  s.ledger.dripped_J += grams * enthalpy;
}

/**
 * Weight against retention (Furmidge, from memory): a puddle whose weight ρ g V passes γ · girth · span lets a drop go from its
 * lowest part. Girth is the wetted width across both plates.
 */
function release(s: State, work: PoolWork): void {
  const { nodes, column } = work;
  const { ny, du, y0, dy } = s.plan;
  const area = s.plan.area_mm2;
  let volume = 0;
  let cLow = Number.POSITIVE_INFINITY;
  let cHigh = -1;
  let yLow = Number.POSITIVE_INFINITY;
  let yHigh = Number.NEGATIVE_INFINITY;
  for (let n = 0; n < nodes.count; n++) {
    const i = column[n]!;
    const c = s.columnOf[i]!;
    const y = y0 + (i - c * ny) * dy;
    volume += Math.max(0, s.w[i]! - s.bottom[i]!) * area;
    if (c < cLow) cLow = c;
    if (c > cHigh) cHigh = c;
    if (y < yLow) yLow = y;
    if (y > yHigh) yHigh = y;
  }
  const girth = (cHigh - cLow + 1) * du * Math.sqrt(2);
  const holds = (s.cal.surfaceTension * 1000 * girth * s.cal.releaseSpan) / (s.cal.liquidDensity * GRAVITY_MMPS2);
  if (volume <= holds) return;
  const excess = volume - s.cal.afterDrop * holds;
  const limit = yLow + s.cal.dropPart * (yHigh - yLow);
  let depth = 0;
  for (let n = 0; n < nodes.count; n++) {
    const i = column[n]!;
    if (y0 + (i % ny) * dy <= limit) depth += Math.max(0, s.w[i]! - s.bottom[i]!) * area;
  }
  if (depth <= 0) return;
  const share = Math.min(0.9, excess / depth);
  const { move } = work;
  move.heat = 0;
  let taken = 0;
  for (let n = 0; n < nodes.count; n++) {
    const i = column[n]!;
    const j = i % ny;
    if (y0 + j * dy > limit) continue;
    const liquid = Math.max(0, s.w[i]! - s.bottom[i]!) * area;
    move.volume = share * liquid;
    removeMetal(s, s.columnOf[i]!, j, move);
    taken += move.moved;
  }
  if (taken > 0) drop(s, work, taken, move.heat / taken);
}
