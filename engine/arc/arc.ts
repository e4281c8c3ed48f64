/** One tick of arc: current, heat into the surface, metal into the puddle. */

import { metalInTop, stackRod, uOf, yOf } from '../grid/columns.ts';
import { firstCell } from '../kernel/layout.ts';
import { DENSITY_GPMM3 } from '../physics/steel.ts';
import { addMetal, createMove, type Move } from '../state/metal.ts';
import type { State } from '../state/state.ts';
import { type Footprint, findFootprint } from './footprint.ts';
import type { Axis } from './torch.ts';
import { createWire, fillWire, type WireState, workVolts } from './wire.ts';

export interface ArcTick {
  on: boolean;
  /** Of the last tick that burned. */
  wire: WireState;
  tipToWork: number;
  power_W: number;
  spatter_g: number;
  dripped_g: number;
  /** Metal on its way into the columns. */
  laying: Move;
}

export function createArcTick(): ArcTick {
  return { on: false, wire: createWire(), tipToWork: 0, power_W: 0, spatter_g: 0, dripped_g: 0, laying: createMove() };
}

/** Burns the arc for one tick. The wire melts only where it finds the joint. */
export function burn(out: ArcTick, s: State, foot: Footprint, axis: Axis, u: number, y: number): void {
  out.spatter_g = 0;
  out.dripped_g = 0;
  findFootprint(foot, s, axis, u, y, s.arcRadius);
  if (!foot.onJoint) {
    out.on = false;
    out.power_W = 0;
    s.arcOn = false;
    return;
  }
  const tip = Math.max(s.cal.shortestTip, foot.tipToWork);
  const { wire } = out;
  fillWire(wire, s.options.process, tip, s.cal);
  out.on = true;
  out.tipToWork = foot.tipToWork;
  s.current = s.arcOn ? s.current + (s.dt / (s.dt + s.cal.currentLag)) * (wire.current_A - s.current) : wire.current_A;
  s.arcOn = true;
  s.arcRadius = wire.arcRadius_mm;
  s.footU = foot.footU;
  s.footY = foot.footY;
  const power = workVolts(s.options.process, s.cal) * s.current;
  out.power_W = power;
  const fed = wire.metal_gps * s.dt;
  const spatter = fed * wire.spatterShare;
  const laid = fed - spatter;
  const metalEnthalpy = Math.min(s.cal.wireEnthalpy, (0.9 * power) / wire.metal_gps);
  const { ledger } = s;
  ledger.fed_g += fed;
  ledger.spatter_g += spatter;
  ledger.ampSeconds += s.current * s.dt;
  ledger.arcTime_s += s.dt;
  // A running mean, not a sum to divide: volts that never change come out to the last bit.
  ledger.meanVolts_V += (s.options.process.volts_V - ledger.meanVolts_V) * (s.dt / ledger.arcTime_s);
  out.spatter_g = spatter;

  layMetal(out, s, foot, laid, Math.fround(metalEnthalpy));
  const wireHeat = laid * metalEnthalpy;
  // Heat that leaves with the spatter never reaches the work.
  const arcHeat = power * s.dt - fed * metalEnthalpy;
  ledger.wire_J += wireHeat;
  ledger.arc_J += arcHeat;
  for (let n = 0; n < foot.count; n++) heatColumn(s, foot.column[n]!, arcHeat * foot.weight[n]!);
}

/** A tick without the trigger. */
export function quench(out: ArcTick, s: State): void {
  out.on = false;
  out.power_W = 0;
  out.spatter_g = 0;
  out.dripped_g = 0;
  s.arcOn = false;
  s.current = 0;
}

/** Joules into a column's top metal down to one full cell, shared by the depth each cell takes up. */
function heatColumn(s: State, column: number, joules: number): void {
  const { plan, heat } = s;
  const c = s.columnOf[column]!;
  const j = column - c * plan.ny;
  const long = s.plan.long_mm;
  const area = s.plan.area_mm2;
  const depth = Math.max(long, s.cal.heatedDepth);
  const boiling = s.boiling_JPG;
  const perDepth = joules / (depth * area * DENSITY_GPMM3);
  const { H, layout } = heat;
  let left = depth;
  let m = s.surfacePlace[column]!;
  let metal = metalInTop(s, c, m, s.w[column]!);
  for (; m >= 0 && left > 0; m--) {
    const cell = firstCell(layout, stackRod(s, c, m)) + j;
    // The share of this cell inside the heated depth; the lowest cell of the stack takes the rest.
    const inside = m === 0 ? left : Math.min(metal, left);
    left -= inside;
    let h = H[cell]! + (perDepth * inside) / metal;
    if (h > boiling) {
      s.ledger.evaporated_J += (h - boiling) * metal * area * DENSITY_GPMM3;
      h = boiling;
    }
    H[cell] = h;
    metal = long;
  }
}

/** Wire metal goes to liquid columns in the footprint, never onto cold plate; with no liquid there it forms one small lump. */
function layMetal(out: ArcTick, s: State, foot: Footprint, grams: number, enthalpy: number): void {
  const volume = grams / DENSITY_GPMM3;
  const { laying } = out;
  laying.h = enthalpy;
  let wet = 0;
  let all = 0;
  for (let n = 0; n < foot.count; n++) {
    all += foot.deposit[n]!;
    if (s.liquid[foot.column[n]!]) wet += foot.deposit[n]!;
  }
  let spilled = 0;
  if (wet > s.cal.wetShare * all) {
    for (let n = 0; n < foot.count; n++) {
      const i = foot.column[n]!;
      if (foot.deposit[n] === 0 || !s.liquid[i]) continue;
      laying.volume = (volume * foot.deposit[n]!) / wet;
      add(s, i, laying);
      spilled += laying.moved;
    }
  } else {
    spilled = addLump(s, foot, volume, laying);
  }
  if (spilled > 0) {
    const lost = spilled * DENSITY_GPMM3;
    out.dripped_g += lost;
    s.ledger.dripped_g += lost;
    s.ledger.dripped_J += lost * enthalpy;
  }
}

function add(s: State, i: number, laying: Move): void {
  const c = s.columnOf[i]!;
  addMetal(s, c, i - c * s.plan.ny, laying);
}

/** A lump one wire diameter and a bit wide round the foot. Returns what did not fit, mm³. */
function addLump(s: State, foot: Footprint, volume: number, laying: Move): number {
  const { plan } = s;
  const reach = s.options.process.wire_mm / 2 + 0.5;
  let total = 0;
  let nearest = -1;
  let best = Number.POSITIVE_INFINITY;
  const inside = (i: number): number => {
    const c = s.columnOf[i]!;
    const du = uOf(plan, c) - foot.footU;
    const dy = yOf(plan, i - c * plan.ny) - foot.footY;
    return du * du + dy * dy;
  };
  for (let n = 0; n < foot.count; n++) {
    const d2 = inside(foot.column[n]!);
    if (d2 < best) {
      best = d2;
      nearest = foot.column[n]!;
    }
    if (d2 <= reach * reach) total++;
  }
  if (total === 0) {
    if (nearest < 0) return volume;
    laying.volume = volume;
    add(s, nearest, laying);
    return laying.moved;
  }
  let spilled = 0;
  for (let n = 0; n < foot.count; n++) {
    if (inside(foot.column[n]!) > reach * reach) continue;
    laying.volume = volume / total;
    add(s, foot.column[n]!, laying);
    spilled += laying.moved;
  }
  return spilled;
}
