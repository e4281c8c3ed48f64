/** Allocates every array of an attempt, once. Field names, units and orders are here and nowhere else. */

import { type Calibration, calibration } from './calibration.ts';
import { allocateCalm, type CalmState, refine } from './calm.ts';
import { allocateHeat, type HeatState, type KernelChoice } from './heat-state.ts';
import { buildJoint, type JointPlan } from './joint.ts';
import { COEFFICIENT_WORDS } from './kernel/layout.ts';
import { lossTable } from './losses.ts';
import { DENSITY_GPMM3, enthalpyAt, steelTable } from './material.ts';
import { locateAll } from './metal.ts';
import { requireOptions } from './options.ts';
import type { SimulationOptions } from './types.ts';
import type { FineWindow } from './window.ts';

/** Poses a second; everything recorded is in these steps. */
export const POSE_RATE_HZ = 100;
/** Share of the explicit bound h²/(6 a) a tick may use. */
const BOUND_SHARE = 0.97;

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
  /** Heat cell that holds each column's surface, and the one under it (itself where it is the lowest): follow from the height. */
  surfaceCell: Int32Array;
  underCell: Int32Array;
  /** Height field over columns, index c * ny + j; mm. */
  w: Float64Array;
  wEq: Float64Array;
  /** Response of w to the puddle's pressure, mm/Pa. */
  response: Float64Array;
  /** Bottom of the liquid. */
  bottom: Float64Array;
  /** Pressure in the liquid under the surface, Pa, as last settled: what it froze with where it is solid, NaN where it never was liquid. */
  skinPressure: Float64Array;
  /** Potential of the flow that last moved the metal, mm² (flow.ts): where the next one starts from. */
  flowPotential: Float64Array;
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
  /** Running mean over the arc time. */
  meanVolts_V: number;
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
  const heat = allocateHeat({
    rods: plan.rods,
    ny: plan.ny,
    dy: plan.dy,
    dt,
    table,
    losses,
    gapConductance: cal.gapConductance,
    fill: plan.fill,
    startH,
    kernel: choices.kernel ?? 'auto',
  });
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
    surfaceCell: new Int32Array(columns),
    underCell: new Int32Array(columns),
    w: new Float64Array(columns),
    wEq: new Float64Array(columns),
    response: new Float64Array(columns),
    bottom: new Float64Array(columns),
    skinPressure: new Float64Array(columns).fill(Number.NaN),
    flowPotential: new Float64Array(columns),
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
      meanVolts_V: 0,
      start_J: 0,
      start_mm3: 0,
    },
  };
  for (let c = 0; c < plan.nu; c++) {
    state.w.fill(plan.plate[c]!, c * plan.ny, (c + 1) * plan.ny);
    state.wEq.fill(plan.plate[c]!, c * plan.ny, (c + 1) * plan.ny);
  }
  locateAll(state);
  state.calm = allocateCalm(state);
  if (choices.fineEverywhere) {
    for (let block = 0; block < state.calm.blocks; block++) refine(state, block);
    state.fine = { from: 0, to: plan.ny };
    state.fineEverywhere = true;
  }
  return state;
}
