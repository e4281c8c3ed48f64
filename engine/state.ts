/** Allocates every array of an attempt, once. Field names, units and orders are here and nowhere else. */

import { type Calibration, calibration } from './calibration.ts';
import { allocateCalm, type CalmState, refine } from './calm.ts';
import { buildJoint, type JointPlan } from './joint.ts';
import {
  COEFFICIENT_WORDS,
  type HeatKernel,
  type KernelLayout,
  PAD,
  PROGRAM_WORDS,
  planLayout,
  ROD,
} from './kernel/layout.ts';
import { createReferenceKernel } from './kernel/reference.ts';
import { createSimdKernel } from './kernel/simd.ts';
import { lossTable } from './losses.ts';
import { DENSITY_GPMM3, enthalpyAt, type MaterialTable, steelTable } from './material.ts';
import { requireOptions } from './options.ts';
import type { RodPlan } from './rods.ts';
import type { SimulationOptions } from './types.ts';
import type { FineWindow } from './window.ts';

/** Poses a second; everything recorded is in these steps. */
export const POSE_RATE_HZ = 100;
/** Share of the explicit bound h²/(6 a) a tick may use. */
const BOUND_SHARE = 0.97;

/** Heat fields over rods, f32, views on the kernel's memory; cell j of rod r at r * stride + PAD + j. */
export interface HeatState {
  kernel: HeatKernel;
  layout: KernelLayout;
  table: MaterialTable;
  H: Float32Array;
  residual: Float32Array;
  potential: Float32Array;
  fill: Float32Array;
  peak: Float32Array;
  program: Int32Array;
  /** Cells of the rod that are not full of metal, and cells holding any. */
  notFull: Int32Array;
  holding: Int32Array;
  flagsStale: boolean;
  /** Rods with metal in them, `busyCount` of them. */
  busy: Int32Array;
  busyCount: number;
  dt: number;
}

/** Which kernel runs; 'auto' takes the SIMD twin where the machine has it. Results do not depend on it. */
export type KernelChoice = 'auto' | 'reference' | 'simd';

export function allocateHeat(
  rods: RodPlan,
  ny: number,
  dy: number,
  dt: number,
  table: MaterialTable,
  losses: Float32Array,
  fill: Float64Array,
  startH: number,
  choice: KernelChoice,
): HeatState {
  const lists = rods.lists.reduce((n, l) => n + l.neighbours.length, 0);
  const layout = planLayout(rods.count, ny, Math.max(1, lists));
  const simd = choice === 'reference' ? null : createSimdKernel(layout);
  if (choice === 'simd' && !simd) throw new Error('this machine has no WebAssembly SIMD');
  const kernel = simd ?? createReferenceKernel(layout);
  const m = kernel.memory;
  const field = layout.count * layout.stride;
  const state: HeatState = {
    kernel,
    layout,
    table,
    H: new Float32Array(m, layout.enthalpy, field),
    residual: new Float32Array(m, layout.residual, field),
    potential: new Float32Array(m, layout.potential, field),
    fill: new Float32Array(m, layout.fill, field),
    peak: new Float32Array(m, layout.peak, field),
    program: new Int32Array(m, layout.program, layout.count * PROGRAM_WORDS),
    notFull: new Int32Array(rods.count),
    holding: new Int32Array(rods.count),
    flagsStale: true,
    busy: new Int32Array(rods.count),
    busyCount: 0,
    dt,
  };
  new Float32Array(m, layout.table, table.potential.length).set(table.potential);
  new Float32Array(m, layout.lossTable, losses.length).set(losses);
  writeProgram(state, rods, dy, dt);
  state.H.fill(startH);
  state.peak.fill(startH);
  for (let r = 0; r < rods.count; r++) {
    const base = r * layout.stride + PAD;
    state.fill.fill(fill[r]!, base - 1, base + ny + 1);
    state.notFull[r] = fill[r]! < 1 ? ny : 0;
    state.holding[r] = fill[r]! > 0 ? ny : 0;
  }
  refreshFlags(state);
  return state;
}

function writeProgram(state: HeatState, rods: RodPlan, dy: number, dt: number): void {
  const { layout } = state;
  const coefficient = new Float32Array(state.kernel.memory, layout.coefficient, layout.count * COEFFICIENT_WORDS);
  const listRod = new Int32Array(state.kernel.memory, layout.listRod, layout.listLength);
  const listC = new Float32Array(state.kernel.memory, layout.listCoefficient, layout.listLength);
  const first = (r: number): number => r * layout.stride + PAD;
  for (let r = 0; r < rods.count; r++) {
    const scale = dt / (DENSITY_GPMM3 * rods.area_mm2[r]!);
    for (let s = 0; s < 4; s++) {
      const n = rods.slot[4 * r + s]!;
      state.program[r * PROGRAM_WORDS + 1 + s] = first(n < 0 ? r : n);
      coefficient[r * COEFFICIENT_WORDS + s] = n < 0 ? 0 : scale * rods.shape[4 * r + s]!;
    }
    coefficient[r * COEFFICIENT_WORDS + 4] = dt / (DENSITY_GPMM3 * dy * dy);
    coefficient[r * COEFFICIENT_WORDS + 5] = rods.exposed_mm[r]! / (DENSITY_GPMM3 * rods.area_mm2[r]!);
  }
  let at = 0;
  for (const list of rods.lists) {
    const w = list.rod * PROGRAM_WORDS;
    state.program[w + 5] = at;
    state.program[w + 6] = list.neighbours.length;
    list.neighbours.forEach((n, k) => {
      listRod[at] = first(n);
      listC[at] = (dt / (DENSITY_GPMM3 * rods.area_mm2[list.rod]!)) * list.shapes[k]!;
      at++;
    });
  }
}

/** Chooses each rod's path in the kernel: empty, full with full neighbours, or with fills. Changes speed, never bits. */
export function refreshFlags(state: HeatState): void {
  const { program, notFull, holding, layout, busy } = state;
  let count = 0;
  for (let r = 0; r < layout.count; r++) {
    const w = r * PROGRAM_WORDS;
    let flag: number = ROD.FULL;
    if (holding[r] === 0) flag = ROD.SKIP;
    else if (program[w + 6]! > 0) flag = ROD.LIST;
    else {
      let partial = notFull[r]! > 0;
      for (let s = 1; s <= 4 && !partial; s++) {
        const n = (program[w + s]! - PAD) / layout.stride;
        partial = notFull[n]! > 0;
      }
      if (partial) flag = ROD.PARTIAL;
    }
    program[w] = flag;
    if (flag !== ROD.SKIP) busy[count++] = r;
  }
  state.busyCount = count;
  state.flagsStale = false;
}

export interface State {
  options: SimulationOptions;
  cal: Calibration;
  plan: JointPlan;
  heat: HeatState;
  /** Heat flux off a face over enthalpy. */
  lossTable: Float32Array;
  /** f32 kernel coefficients, for the window's ends. */
  coefficients: Float32Array;
  calm: CalmState;
  fine: FineWindow;
  fineEverywhere: boolean;
  /** Ticks per pose and their length. */
  ticksPerPose: number;
  dt: number;
  /** Poses stepped and ticks done. */
  steps: number;
  tick: number;
  startH: number;
  /** Enthalpy of metal as cold as the room. */
  ambientH: number;
  /** Enthalpy above which metal leaves as vapour. */
  boiling_JPG: number;
  /** Neighbour columns in face order u-, u+, y-, y+ at 4 i + face, -1 beyond the grid; and which u each column stands at. */
  near: Int32Array;
  columnOf: Int32Array;
  /** Height field over columns, index c * ny + j; mm. */
  w: Float64Array;
  wEq: Float64Array;
  /** Response of w to the puddle's pressure, mm/Pa. */
  response: Float64Array;
  /** Bottom of the liquid. */
  bottom: Float64Array;
  liquid: Uint8Array;
  /** Toe distance from the column's centre towards u-, u+, y-, y+ in column spacings. */
  edge: Float64Array;
  /** Height at which a wetted column was dry, NaN otherwise; and the tick until which a thin film lives. */
  wetLevel: Float64Array;
  wetUntil: Int32Array;
  /** Ticks of first wetting and last freezing, -1 never. */
  wetTick: Int32Array;
  frozenTick: Int32Array;
  puddle: Int32Array;
  /** Scan window that holds every liquid column: slices [from, to). */
  window: { from: number; to: number };
  /** Smoothed current (follows tip-to-work with about 10 ms). */
  current: number;
  arcOn: boolean;
  /** Arc foot of the last tick, for the load on the puddle. */
  footU: number;
  footY: number;
  arcRadius: number;
  ledger: Ledger;
}

/** Running sums; grams and joules. */
export interface Ledger {
  fed_g: number;
  spatter_g: number;
  dripped_g: number;
  arc_J: number;
  wire_J: number;
  lost_J: number;
  sink_J: number;
  evaporated_J: number;
  dripped_J: number;
  ampSeconds: number;
  arcTime_s: number;
  start_J: number;
  start_mm3: number;
}

/** How it is computed, for studies; the bits are the same with any kernel, not with other calibrations. */
export interface StateChoices {
  /** Compute the whole joint in fine cells, for studies of what the coarse blocks cost in accuracy. */
  fineEverywhere?: boolean;
  kernel?: KernelChoice;
  calibration?: Partial<Calibration>;
}

function neighbours(nu: number, ny: number): Int32Array {
  const near = new Int32Array(4 * nu * ny);
  for (let c = 0; c < nu; c++)
    for (let j = 0; j < ny; j++) {
      const i = c * ny + j;
      near.set([c > 0 ? i - ny : -1, c < nu - 1 ? i + ny : -1, j > 0 ? i - 1 : -1, j < ny - 1 ? i + 1 : -1], 4 * i);
    }
  return near;
}

/** @throws EngineError when an option is out of range. */
export function allocate(options: SimulationOptions, choices: StateChoices = {}): State {
  requireOptions(options);
  const cal = calibration(choices.calibration);
  const plan = buildJoint(options.joint, options.cell_mm);
  const table = steelTable(cal.stirring);
  const short = Math.min(plan.h, plan.dy);
  const bound = (BOUND_SHARE * short * short * DENSITY_GPMM3) / (6 * table.steepest);
  const ticksPerPose = Math.ceil(1 / POSE_RATE_HZ / bound);
  const dt = 1 / POSE_RATE_HZ / ticksPerPose;
  const startH = Math.fround(enthalpyAt(table, options.joint.startTemp_C));
  const losses = lossTable(table, options.joint.ambient_C, cal);
  const kernel = choices.kernel ?? 'auto';
  const heat = allocateHeat(plan.rods, plan.ny, plan.dy, dt, table, losses, plan.fill, startH, kernel);
  const columns = plan.nu * plan.ny;
  const state: State = {
    options,
    cal,
    plan,
    heat,
    lossTable: losses,
    coefficients: new Float32Array(heat.kernel.memory, heat.layout.coefficient, heat.layout.count * COEFFICIENT_WORDS),
    calm: undefined as unknown as CalmState,
    fine: { from: 0, to: 0 },
    fineEverywhere: false,
    ticksPerPose,
    dt,
    steps: 0,
    tick: 0,
    startH,
    ambientH: enthalpyAt(table, options.joint.ambient_C),
    boiling_JPG: enthalpyAt(table, cal.evaporation_C),
    near: neighbours(plan.nu, plan.ny),
    columnOf: Int32Array.from({ length: columns }, (_, i) => Math.floor(i / plan.ny)),
    w: new Float64Array(columns),
    wEq: new Float64Array(columns),
    response: new Float64Array(columns),
    bottom: new Float64Array(columns),
    liquid: new Uint8Array(columns),
    edge: new Float64Array(4 * columns).fill(0.5),
    wetLevel: new Float64Array(columns).fill(Number.NaN),
    wetUntil: new Int32Array(columns).fill(-1),
    wetTick: new Int32Array(columns).fill(-1),
    frozenTick: new Int32Array(columns).fill(-1),
    puddle: new Int32Array(columns).fill(-1),
    window: { from: 0, to: 0 },
    current: 0,
    arcOn: false,
    footU: 0,
    footY: 0,
    arcRadius: 1,
    ledger: {
      fed_g: 0,
      spatter_g: 0,
      dripped_g: 0,
      arc_J: 0,
      wire_J: 0,
      lost_J: 0,
      sink_J: 0,
      evaporated_J: 0,
      dripped_J: 0,
      ampSeconds: 0,
      arcTime_s: 0,
      start_J: 0,
      start_mm3: 0,
    },
  };
  for (let c = 0; c < plan.nu; c++) {
    state.w.fill(plan.plate[c]!, c * plan.ny, (c + 1) * plan.ny);
    state.wEq.fill(plan.plate[c]!, c * plan.ny, (c + 1) * plan.ny);
  }
  state.calm = allocateCalm(state);
  if (choices.fineEverywhere) {
    for (let block = 0; block < state.calm.blocks; block++) refine(state, block);
    state.fine = { from: 0, to: plan.ny };
    state.fineEverywhere = true;
  }
  return state;
}
