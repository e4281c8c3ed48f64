/** What the arc and the puddle did during one pose interval. */

import type { ArcTick } from '../arc/arc.ts';
import type { Axis } from '../arc/torch.ts';
import type { TransferRegime } from '../arc/wire.ts';
import { uOf, yOf } from '../grid/columns.ts';
import { POSE_LIMITS, POSE_RATE_HZ, type Pose } from '../input/pose.ts';
import { clamp } from '../numerics/math.ts';
import { liquidFraction } from '../physics/steel.ts';
import type { State } from '../state/state.ts';

/** What one pose interval did; null is "there was none", never 0. */
export interface TraceSample {
  t_s: number;
  trigger: boolean;
  /** An arc burned during this interval. */
  arcOn: boolean;
  regime: TransferRegime;
  aimU_mm: number;
  aimY_mm: number;
  /** Arc foot: weighted mean of the footprint on the surface (aim where the arc is out). */
  footU_mm: number;
  footY_mm: number;
  /** Contact-tip-to-work distance as the arc had it. */
  tipToWork_mm: number;
  workAngle_deg: number;
  travelAngle_deg: number;
  current_A: number;
  /** Arc and wire power reaching the work. */
  power_W: number;
  /** Upper boundary of the liquid at the foot's u (sub-cell); null without a puddle there. */
  frontY_mm: number | null;
  /** Lowest and highest liquid of the puddle under (or nearest) the arc, and its volume above the fusion boundary. */
  puddleBottom_mm: number | null;
  puddleTop_mm: number | null;
  puddleVolume_mm3: number;
  /** Outermost wet position each side within 1.5 mm of the foot's y, as distance out along the plate's face from the root. */
  wetA_mm: number | null;
  wetB_mm: number | null;
  /** Metal standing on each plate 1 mm inside that wet toe, measured square to the plate. */
  fillA_mm: number | null;
  fillB_mm: number | null;
  nozzleTouching: boolean;
  /** Metal dropped out during this interval. */
  dripped_g: number;
  spatter_g: number;
}

const SQRT2 = Math.sqrt(2);
/** Toes are looked for within this distance of the foot along the joint. */
const BESIDE_MM = 1.5;
/** Metal standing on the plate is read this far inside the wet toe. */
const INSIDE_MM = 1;
/** A puddle farther from the foot than this is not the arc's. */
const NEAR_MM = 6;

export function createTrace(): TraceSample {
  return {
    t_s: 0,
    trigger: false,
    arcOn: false,
    regime: 'off',
    aimU_mm: 0,
    aimY_mm: 0,
    footU_mm: 0,
    footY_mm: 0,
    tipToWork_mm: 0,
    workAngle_deg: 45,
    travelAngle_deg: 0,
    current_A: 0,
    power_W: 0,
    frontY_mm: null,
    puddleBottom_mm: null,
    puddleTop_mm: null,
    puddleVolume_mm3: 0,
    wetA_mm: null,
    wetB_mm: null,
    fillA_mm: null,
    fillB_mm: null,
    nozzleTouching: false,
    dripped_g: 0,
    spatter_g: 0,
  };
}

/** Sums of the interval to nothing. */
export function startTrace(trace: TraceSample): void {
  trace.dripped_g = 0;
  trace.spatter_g = 0;
  trace.power_W = 0;
  trace.arcOn = false;
}

/** Adds what one tick of arc did. */
export function addTick(trace: TraceSample, s: State, arc: ArcTick): void {
  trace.dripped_g += arc.dripped_g;
  trace.spatter_g += arc.spatter_g;
  trace.power_W += arc.power_W / s.ticksPerPose;
  if (arc.on) trace.arcOn = true;
}

/** The interval as it ended: torch, arc, and the puddle under it. */
export function endTrace(
  trace: TraceSample,
  s: State,
  arc: ArcTick,
  axis: Axis,
  at: Pose,
  dripped_g: number,
): TraceSample {
  trace.dripped_g += dripped_g;
  trace.t_s = s.steps / POSE_RATE_HZ;
  trace.trigger = s.lastPose.trigger;
  trace.regime = arc.on ? arc.wire.regime : 'off';
  trace.aimU_mm = at.u_mm;
  trace.aimY_mm = at.y_mm;
  trace.footU_mm = arc.on ? s.footU : at.u_mm;
  trace.footY_mm = arc.on ? s.footY : at.y_mm;
  trace.tipToWork_mm = arc.on ? arc.tipToWork : axis.reach;
  trace.workAngle_deg = clamp(at.workAngle_deg, ...POSE_LIMITS.workAngle_deg);
  trace.travelAngle_deg = clamp(at.travelAngle_deg, ...POSE_LIMITS.travelAngle_deg);
  trace.current_A = s.arcOn ? s.current : 0;
  trace.nozzleTouching = axis.nozzleTouching;
  tracePuddle(trace, s, trace.footU_mm, trace.footY_mm);
  return trace;
}

/** Label of the puddle under the foot, or of the nearest one within reach; -1 if none. */
function puddleNear(s: State, u: number, y: number): number {
  const { plan, liquid, puddle } = s;
  const under = Math.round(u / plan.du) + plan.kMax;
  const beside = Math.round((y - plan.y0) / plan.dy);
  if (under >= 0 && under < plan.nu && beside >= 0 && beside < plan.ny) {
    const i = under * plan.ny + beside;
    if (liquid[i] && puddle[i]! >= 0) return puddle[i]!;
  }
  let best = NEAR_MM * NEAR_MM;
  let label = -1;
  for (let c = 0; c < plan.nu; c++) {
    const du = uOf(plan, c) - u;
    for (let j = s.liquidSlices.from; j < s.liquidSlices.to; j++) {
      // Columns wetted at the end of the last settling have no puddle yet.
      if (!liquid[c * plan.ny + j] || puddle[c * plan.ny + j]! < 0) continue;
      const dy = yOf(plan, j) - y;
      const d2 = du * du + dy * dy;
      if (d2 < best) {
        best = d2;
        label = puddle[c * plan.ny + j]!;
      }
    }
  }
  return label;
}

/** Upper boundary of the liquid in column c (sub-cell by its contact line), or null. */
function frontOfColumn(s: State, c: number, label: number): number | null {
  const { plan, liquid, puddle } = s;
  for (let j = s.liquidSlices.to - 1; j >= s.liquidSlices.from; j--) {
    const i = c * plan.ny + j;
    if (!liquid[i] || (label >= 0 && puddle[i] !== label)) continue;
    const reach = j === plan.ny - 1 ? 0.5 : s.edge[4 * i + 3]!;
    return yOf(plan, j + Math.min(1, reach));
  }
  return null;
}

/** Front at any u, linear between the columns either side. */
function frontAt(s: State, u: number, label: number): number | null {
  const x = u / s.plan.du + s.plan.kMax;
  const c = Math.max(0, Math.min(s.plan.nu - 2, Math.floor(x)));
  const low = frontOfColumn(s, c, label);
  const high = frontOfColumn(s, c + 1, label);
  if (low === null || high === null) return low ?? high;
  return low + (high - low) * Math.max(0, Math.min(1, x - c));
}

/** Fills the puddle's part of `out` for an arc foot at (u, y). */
function tracePuddle(out: TraceSample, s: State, u: number, y: number): void {
  out.frontY_mm = null;
  out.puddleBottom_mm = null;
  out.puddleTop_mm = null;
  out.puddleVolume_mm3 = 0;
  out.wetA_mm = null;
  out.wetB_mm = null;
  out.fillA_mm = null;
  out.fillB_mm = null;
  if (s.liquidSlices.to === 0) return;
  const label = puddleNear(s, u, y);
  if (label < 0) return;
  const { plan, liquid, puddle } = s;
  const area = s.plan.area_mm2;
  let volume = 0;
  let jLow = plan.ny;
  let jHigh = -1;
  let cLow = plan.nu;
  let cHigh = -1;
  let lowAt = 0;
  let highAt = 0;
  for (let c = 0; c < plan.nu; c++) {
    for (let j = s.liquidSlices.from; j < s.liquidSlices.to; j++) {
      const i = c * plan.ny + j;
      if (!liquid[i] || puddle[i] !== label) continue;
      volume += Math.max(0, s.w[i]! - s.bottom[i]!);
      if (j < jLow) jLow = j;
      if (j > jHigh) jHigh = j;
      if (Math.abs(yOf(plan, j) - y) > BESIDE_MM) continue;
      if (c < cLow) {
        cLow = c;
        lowAt = i;
      }
      if (c > cHigh) {
        cHigh = c;
        highAt = i;
      }
    }
  }
  out.puddleVolume_mm3 = volume * area;
  if (jHigh < 0) return;
  out.frontY_mm = frontAt(s, u, label);
  out.puddleBottom_mm = yOf(plan, jLow - 0.5);
  out.puddleTop_mm = yOf(plan, jHigh + 0.5);
  if (cHigh < 0) return;
  const outA = (cHigh - plan.kMax + Math.min(1, s.edge[4 * highAt + 1]!)) * plan.du;
  const outB = -(cLow - plan.kMax - Math.min(1, s.edge[4 * lowAt]!)) * plan.du;
  out.wetA_mm = outA * SQRT2;
  out.wetB_mm = outB * SQRT2;
  out.fillA_mm = standing(s, outA - INSIDE_MM / SQRT2, highAt % plan.ny);
  out.fillB_mm = standing(s, -(outB - INSIDE_MM / SQRT2), lowAt % plan.ny);
}

/** Metal above the joint's face at u, measured square to the plate. */
function standing(s: State, u: number, j: number): number {
  const { plan } = s;
  const c = Math.max(0, Math.min(plan.nu - 1, Math.round(u / plan.du) + plan.kMax));
  return Math.max(0, s.w[c * plan.ny + j]! - plan.plate[c]!) / SQRT2;
}

/** Liquid share of the surface metal, for drawing. */
export function surfaceLiquid(s: State, i: number, h: number): number {
  const fraction = liquidFraction(s.heat.table, h);
  return s.liquid[i] ? Math.max(0.5, fraction) : Math.min(0.49, fraction);
}
