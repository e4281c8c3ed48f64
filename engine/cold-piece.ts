/** Puts a cold piece together: settings, joint, tables, kernels and every array of the state. */
import { columnsOf, neighbours } from './grid/columns.ts';
import { buildJoint, type JointPlan } from './grid/joint.ts';
import { blocksOf, tilesOf } from './grid/tiles.ts';
import { layCoarse, measureAll, refine } from './heat/coarse-blocks.ts';
import { lossTable } from './heat/losses.ts';
import { layHeat } from './heat/program.ts';
import { copyOptions, requireOptions, type SimulationOptions } from './input/options.ts';
import { POSE_RATE_HZ } from './input/pose.ts';
import type { KernelChoice } from './kernel/layout.ts';
import { surfaceVolume, workEnergy } from './output/balance.ts';
import { type Calibration, calibration } from './physics/calibration.ts';
import { DENSITY_GPMM3, enthalpyAt, type MaterialTable, steelTable } from './physics/steel.ts';
import { dimsOf, makeArrays } from './state/allocate.ts';
import { locateAll } from './state/metal.ts';
import type { Ledger, State } from './state/state.ts';

/** Share of the explicit bound h²/(6 a) a tick may use. */
const BOUND_SHARE = 0.97;

/** How it is computed, for studies; the bits are the same with any kernel, not with other calibrations. */
export interface StateChoices {
  /** Compute the whole joint in fine cells, for studies of what the coarse blocks cost in accuracy. */
  fineEverywhere?: boolean;
  kernel?: KernelChoice;
  calibration?: Partial<Calibration>;
}

/** The joint clamped and cold. @throws EngineError when an option is out of range */
export function layColdPiece(asked: SimulationOptions, choices: StateChoices = {}): State {
  requireOptions(asked);
  const options = copyOptions(asked);
  const cal = calibration(choices.calibration);
  const plan = buildJoint(options.joint, options.cell_mm);
  const table = steelTable(cal.stirring);
  const ticksPerPose = ticksFor(plan, table);
  const dt = 1 / POSE_RATE_HZ / ticksPerPose;
  const startH = Math.fround(enthalpyAt(table, options.joint.startTemp_C));
  const ambientH = enthalpyAt(table, options.joint.ambient_C);
  const losses = lossTable(table, options.joint.ambient_C, cal);
  const heat = layHeat({
    rods: plan.rods,
    ny: plan.ny,
    dy: plan.dy,
    dt,
    table,
    losses,
    gapConductance: cal.gapConductance,
    fill: plan.fill,
    startH,
    tiles: blocksOf(plan.ny) * tilesOf(plan).count,
    kernel: choices.kernel ?? 'auto',
  });
  const surface = makeArrays('surface', dimsOf(plan, heat.layout));
  const s: State = {
    w: surface.w,
    wEq: surface.wEq,
    response: surface.response,
    bottom: surface.bottom,
    edge: surface.edge,
    wetLevel: surface.wetLevel,
    wetUntil: surface.wetUntil,
    pressure: surface.pressure,
    skinPressure: surface.skinPressure,
    flowPotential: surface.flowPotential,
    wetTick: surface.wetTick,
    frozenTick: surface.frozenTick,
    liquid: surface.liquid,
    puddle: surface.puddle,
    surfacePlace: surface.surfacePlace,
    surfaceCell: surface.surfaceCell,
    underCell: surface.underCell,
    options,
    cal,
    plan,
    heat,
    coarse: layCoarse(plan, heat, startH, ambientH),
    lossTable: losses,
    fine: { from: 0, to: 0 },
    fineEverywhere: choices.fineEverywhere ?? false,
    ticksPerPose,
    dt,
    steps: 0,
    tick: 0,
    startH,
    ambientH,
    boiling_JPG: enthalpyAt(table, cal.evaporation_C),
    near: neighbours(plan.nu, plan.ny),
    columnOf: columnsOf(plan.nu, plan.ny),
    liquidSlices: { from: 0, to: 0 },
    current: 0,
    arcOn: false,
    footU: 0,
    footY: 0,
    arcRadius: 1,
    posed: false,
    lastPose: { u_mm: 0, y_mm: 0, tipToWork_mm: 0, workAngle_deg: 0, travelAngle_deg: 0, trigger: false },
    ledger: emptyLedger(),
  };
  for (let c = 0; c < plan.nu; c++) {
    s.w.fill(plan.plate[c]!, c * plan.ny, (c + 1) * plan.ny);
    s.wEq.fill(plan.plate[c]!, c * plan.ny, (c + 1) * plan.ny);
  }
  locateAll(s);
  measureAll(s);
  if (s.fineEverywhere) {
    for (let block = 0; block < s.coarse.blocks; block++) refine(s, block);
    s.fine.to = plan.ny;
  }
  s.ledger.start_J = workEnergy(s);
  s.ledger.start_mm3 = surfaceVolume(s);
  return s;
}

/** Ticks a pose interval is cut into, so that explicit conduction stays stable. */
export function ticksFor(plan: JointPlan, table: MaterialTable): number {
  const short = Math.min(plan.h, plan.dy);
  const bound = (BOUND_SHARE * short * short * DENSITY_GPMM3) / (6 * table.steepest);
  return Math.ceil(1 / POSE_RATE_HZ / bound);
}

function emptyLedger(): Ledger {
  return {
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
  };
}
