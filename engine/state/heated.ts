/** What heat needs to know of the metal it runs through: a weld's whole `State`, or a piece with heat alone (solvers/). */

import type { JointPlan } from '../grid/joint.ts';
import type { FineWindow } from '../heat/active-region.ts';
import type { JointOptions } from '../input/options.ts';
import type { HeatState } from './heat-fields.ts';
import type { Ledger } from './state.ts';

/** Rods, and the columns of a welded face over them (none: `nu` 0). */
export type HeatPlan = Pick<JointPlan, 'rods' | 'ny' | 'dy' | 'nu' | 'du' | 'base' | 'stackStart' | 'stack'>;

export interface Heated {
  plan: HeatPlan;
  heat: HeatState;
  /** Heat flux off a face over enthalpy (losses.ts). */
  lossTable: Float32Array;
  /** Slices computed in fine cells, [from, to). */
  fine: FineWindow;
  /** Length of a tick, s, and ticks done. */
  dt: number;
  tick: number;
  /** Height of the welded face over columns, mm. */
  w: Float64Array;
  ledger: Pick<Ledger, 'lost_J' | 'sink_J'>;
  options: { joint: Pick<JointOptions, 'ambient_C' | 'sink_WpmmK'> };
}
