/** Cuts square to the joint, and the opened root: what a saw, an acid and a hammer would show. */
import { uOf, yOf } from '../grid/columns.ts';
import { gapInCells } from '../grid/plates.ts';
import { PART } from '../grid/rods.ts';
import type { JointOptions } from '../input/options.ts';
import { firstCell } from '../kernel/layout.ts';
import { AC1_C, lookup, SOLIDUS_C } from '../physics/steel.ts';
import type { State } from '../state/state.ts';

/** A cut square to the joint at one height, linear between the slices either side. */
export interface Section {
  y_mm: number;
  cell_mm: number;
  joint: JointOptions;
  solidus_C: number;
  ac1_C: number;
  start_C: number;
  /** Columns of the height field, from plate B's side (u < 0) to plate A's. */
  u_mm: Float64Array;
  /** Metal surface as it stands. */
  w_mm: Float64Array;
  /** Joint surface as cut (exact, from stored geometry). */
  plate_mm: Float64Array;
  /** First wetting and last freezing of the column; NaN: never. */
  wet_s: Float64Array;
  frozen_s: Float64Array;
  /**
   * Toe index per column, -p z / γ: capillary pressure p the column froze with (now, where it is liquid), over what would hold a face that
   * meets both plates as a tangent, γ / z; z is the column's distance from the root along its plate. Read it at a toe, in the
   * outermost column that has a number: 0 or less is safe, at 1 the liquid pulls so hard that a groove must form. NaN where nothing was liquid.
   */
  toeIndex: Float64Array;
  /** Regular grid of square cells, index `ib * na + ia`; the centre of cell (ia, ib) is a0_mm + ia*cell, b0_mm + ib*cell. */
  na: number;
  nb: number;
  a0_mm: number;
  b0_mm: number;
  part: Uint8Array;
  /** Share of the cell that is metal. */
  fill: Float32Array;
  /** Highest temperature reached by the metal in the cell; NaN in the void. */
  peak_C: Float32Array;
}

/** The opened root: one entry per slice of the joint proper. */
export interface RootStrip {
  y_mm: Float64Array;
  /** How far fusion reaches past the root line into each plate, square to its face; negative: short of it. */
  depthA_mm: Float64Array;
  depthB_mm: Float64Array;
  fused: Uint8Array;
}

/** Peaks interpolate in s = (T - T0)^-1/2, nearly linear in distance round a weld (fast line source: T - T0 ~ r^-2). */
function mixPeak(low: number, high: number, f: number, start: number): number {
  if (f <= 0 || low === high) return low;
  if (f >= 1) return high;
  const a = 1 / Math.sqrt(Math.max(1, low - start));
  const b = 1 / Math.sqrt(Math.max(1, high - start));
  const m = a + (b - a) * f;
  return start + 1 / (m * m);
}

/** @param y_mm height of the cut; the ends of the joint are the nearest cuts there are. */
export function cutSection(s: State, y_mm: number): Section {
  const { plan, heat } = s;
  const { ny, nu, na, nb } = plan;
  const x = Math.max(0, Math.min(ny - 1, (y_mm - plan.y0) / plan.dy));
  const j = Math.min(ny - 2, Math.floor(x));
  const f = x - j;
  const near = f < 0.5 ? j : j + 1;
  const start = s.options.joint.startTemp_C;
  const section: Section = {
    y_mm,
    cell_mm: plan.h,
    joint: s.options.joint,
    solidus_C: SOLIDUS_C,
    ac1_C: AC1_C,
    start_C: start,
    u_mm: new Float64Array(nu),
    w_mm: new Float64Array(nu),
    plate_mm: plan.plate.slice(),
    wet_s: new Float64Array(nu),
    frozen_s: new Float64Array(nu),
    toeIndex: new Float64Array(nu),
    na,
    nb,
    a0_mm: (plan.iMin + 0.5) * plan.h,
    b0_mm: (plan.jMin + 0.5) * plan.h,
    part: new Uint8Array(na * nb),
    fill: new Float32Array(na * nb),
    peak_C: new Float32Array(na * nb).fill(Number.NaN),
  };
  for (let c = 0; c < nu; c++) {
    const i = c * ny + j;
    section.u_mm[c] = uOf(plan, c);
    section.w_mm[c] = s.w[i]! + (s.w[i + 1]! - s.w[i]!) * f;
    section.wet_s[c] = stamp(s, s.wetTick[c * ny + near]!);
    section.frozen_s[c] = stamp(s, s.frozenTick[c * ny + near]!);
    section.toeIndex[c] = toeIndex(s, c, s.skinPressure[c * ny + near]!);
  }
  for (let g = 0; g < na * nb; g++) {
    const rod = plan.rodAt[g]!;
    if (rod < 0) continue;
    const cell = firstCell(heat.layout, rod) + j;
    const low = heat.fill[cell]!;
    const high = heat.fill[cell + 1]!;
    const fill = low + (high - low) * f;
    const part = plan.rods.part[rod]!;
    section.fill[g] = fill;
    section.part[g] = part === PART.WELD && fill < 1e-6 ? PART.VOID : part;
    if (fill < 1e-6 && part === PART.WELD) continue;
    const pLow = lookup(heat.table.temperature, heat.peak[low > 1e-6 || part !== PART.WELD ? cell : cell + 1]!);
    const pHigh = lookup(heat.table.temperature, heat.peak[high > 1e-6 || part !== PART.WELD ? cell + 1 : cell]!);
    section.peak_C[g] = mixPeak(pLow, pHigh, f, start);
  }
  return section;
}

/** -p z / γ with z along the plate, mm; p in Pa and γ in N/m, so mm counts a thousandfold. */
function toeIndex(s: State, c: number, pressure: number): number {
  const { plan } = s;
  const away = Math.abs(c - plan.kMax) * plan.du * Math.SQRT2;
  return (-pressure * away) / (1000 * s.cal.surfaceTension);
}

function stamp(s: State, tick: number): number {
  return tick < 0 ? Number.NaN : tick * s.dt;
}

/**
 * Depth of fusion past the root line into each plate, slice by slice. Found along the plate's own cells under the root (plate A:
 * the column of cells beside a = 0 going down; plate B: the row beside b = 0 going in), never across the weld interface.
 */
export function rootStrip(s: State): RootStrip {
  const { plan } = s;
  const { ny } = plan;
  const first: number[] = [];
  for (let j = 0; j < ny; j++) {
    const y = yOf(plan, j);
    if (y >= 0 && y <= s.options.joint.length_mm) first.push(j);
  }
  const strip: RootStrip = {
    y_mm: new Float64Array(first.length),
    depthA_mm: new Float64Array(first.length),
    depthB_mm: new Float64Array(first.length),
    fused: new Uint8Array(first.length),
  };
  const gapCells = gapInCells(plan.joint, plan.h);
  const into = (i: number, j: number, di: number, dj: number): number[] => {
    const rods: number[] = [];
    for (let n = 0; n < 8; n++) {
      const a = i + n * di - plan.iMin;
      const b = j + n * dj - plan.jMin;
      if (a < 0 || b < 0 || a >= plan.na || b >= plan.nb) break;
      const rod = plan.rodAt[b * plan.na + a]!;
      if (rod < 0 || plan.rods.part[rod] === PART.WELD) break;
      rods.push(rod);
    }
    return rods;
  };
  const downA = into(0, -1, 0, -1);
  const awayA = into(0, -1, 1, 0);
  const inB = into(-1, gapCells, -1, 0);
  const awayB = into(-1, gapCells, 0, 1);
  first.forEach((j, n) => {
    strip.y_mm[n] = yOf(plan, j);
    strip.depthA_mm[n] = signedDepth(s, downA, awayA, j);
    strip.depthB_mm[n] = signedDepth(s, inB, awayB, j);
    strip.fused[n] = strip.depthA_mm[n]! > 0 && strip.depthB_mm[n]! > 0 ? 1 : 0;
  });
  return strip;
}

/** Depth past the face where the peak falls to solidus; negative: how far along the face one must go to find it fused. */
function signedDepth(s: State, inward: number[], along: number[], j: number): number {
  const { plan } = s;
  const face = facePeak(s, inward, j);
  if (face >= SOLIDUS_C) {
    for (let n = 0; n + 1 < inward.length; n++) {
      const here = peakAt(s, inward[n]!, j);
      const next = peakAt(s, inward[n + 1]!, j);
      if (n === 0 && here < SOLIDUS_C) return depthBetween(s, here, next, -0.5) * plan.h;
      if (here >= SOLIDUS_C && next < SOLIDUS_C) return (n + depthBetween(s, here, next, 0.5)) * plan.h;
    }
    return inward.length * plan.h;
  }
  for (let n = 0; n < along.length; n++) {
    const peak = peakAt(s, along[n]!, j);
    if (peak < SOLIDUS_C) continue;
    const before = n === 0 ? face : peakAt(s, along[n - 1]!, j);
    const f = n === 0 ? 1 : depthBetween(s, before, peak, 0);
    return -(n === 0 ? 0.5 : n - 1 + 0.5 + f) * plan.h;
  }
  return -along.length * plan.h;
}

function peakAt(s: State, rod: number, j: number): number {
  return lookup(s.heat.table.temperature, s.heat.peak[firstCell(s.heat.layout, rod) + j]!);
}

const inverse = (peak: number, start: number): number => 1 / Math.sqrt(Math.max(1, peak - start));

/** Peak at the plate's face, half a cell out from the first centre, from the first two centres of the same plate. */
function facePeak(s: State, inward: number[], j: number): number {
  const start = s.options.joint.startTemp_C;
  const a = inverse(peakAt(s, inward[0]!, j), start);
  const b = inverse(peakAt(s, inward[1]!, j), start);
  const m = Math.max(1e-3, a - 0.5 * (b - a));
  return start + 1 / (m * m);
}

/** Where between two centres the peak is solidus, in cells from the first centre, plus `offset`. */
function depthBetween(s: State, here: number, next: number, offset: number): number {
  const start = s.options.joint.startTemp_C;
  const a = inverse(here, start);
  const b = inverse(next, start);
  const target = inverse(SOLIDUS_C, start);
  if (offset < 0) return Math.max(0, 0.5 + (target - a) / (b - a));
  return (b === a ? 0 : (target - a) / (b - a)) + offset;
}
