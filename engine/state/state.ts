/** What a weld is, as types. What each array means stands in fields.ts. */
import type { JointPlan } from '../grid/joint.ts';
import type { TilePlan } from '../grid/tiles.ts';
import type { JointOptions, SimulationOptions } from '../input/options.ts';
import type { Pose } from '../input/pose.ts';
import type { HeatKernel, KernelLayout } from '../kernel/layout.ts';
import type { Calibration } from '../physics/calibration.ts';
import type { MaterialTable } from '../physics/steel.ts';
import type { Arrays } from './fields.ts';

/** Heat fields over rods: views on the kernel's memory; cell j of rod r is `firstCell(layout, r) + j`. */
export interface HeatState extends Arrays<'heat'> {
  kernel: HeatKernel;
  layout: KernelLayout;
  table: MaterialTable;
  /** What each rod does in the kernels (layout.ts). */
  program: Int32Array;
  /** Neighbour rods by slot at 4 r + slot, the rod itself where there is none. */
  beside: Int32Array;
  flagsStale: boolean;
  dt: number;
}

/** Lengths of the joint where nothing happens, in tiles. */
export interface CoarseState extends Arrays<'coarse'> {
  tiles: TilePlan;
  blocks: number;
  /** Tiles that touch, two numbers a pair; and those across the faying face. */
  pairs: Int32Array;
  gaps: Int32Array;
  /** Running sums of one coarse step, J. */
  lost_J: number;
  sunk_J: number;
}

/** Slices [from, to); empty when from === to. */
interface SliceSpan {
  from: number;
  to: number;
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

/** Rods, and the columns of a welded face over them (none: `nu` 0). */
export type HeatPlan = Pick<
  JointPlan,
  'rods' | 'ny' | 'dy' | 'nu' | 'du' | 'long_mm' | 'area_mm2' | 'base' | 'stackStart' | 'stack'
>;

/** What heat needs to know of the metal it runs through: a weld's `State`, or a piece with heat only (solvers/). */
export interface Heated {
  plan: HeatPlan;
  heat: HeatState;
  /** Heat flux off a face over enthalpy (losses.ts). */
  lossTable: Float32Array;
  /** Slices computed in fine cells. */
  fine: SliceSpan;
  /** Length of a tick, s, and ticks done. */
  dt: number;
  tick: number;
  /** Height of the welded face over columns, mm, and the cells that hold it (fields.ts). */
  w: Float64Array;
  surfacePlace: Int32Array;
  surfaceCell: Int32Array;
  underCell: Int32Array;
  ledger: Pick<Ledger, 'lost_J' | 'sink_J'>;
  options: { joint: Pick<JointOptions, 'ambient_C' | 'sink_WpmmK'> };
}

/** A whole weld. */
export interface State extends Heated, Arrays<'surface'> {
  options: SimulationOptions;
  cal: Calibration;
  plan: JointPlan;
  coarse: CoarseState;
  /** Study choice: no coarse blocks at all. */
  fineEverywhere: boolean;
  ticksPerPose: number;
  /** Poses stepped. */
  steps: number;
  /** Enthalpy of the metal at the start, and of metal as cold as the room. */
  startH: number;
  ambientH: number;
  /** Enthalpy above which metal leaves as vapour. */
  boiling_JPG: number;
  /** Neighbour columns in face order u-, u+, y-, y+ at 4 i + face, -1 beyond the grid; and which u each column stands at. */
  near: Int32Array;
  columnOf: Int32Array;
  /** Slices that hold every liquid column. */
  liquidSlices: SliceSpan;
  /** Smoothed current (follows tip-to-work with about 10 ms). */
  current: number;
  arcOn: boolean;
  /** Arc foot of the last tick, for the load on the pool. */
  footU: number;
  footY: number;
  arcRadius: number;
  /** The pose stepped last, once there is one. */
  posed: boolean;
  lastPose: Pose;
  ledger: Ledger;
}
