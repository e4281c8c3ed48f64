/** Mass and energy: what went in, where it is, and what does not add up. */

import { coarseEnergy } from '../heat/coarse-blocks.ts';
import { firstCell } from '../kernel/layout.ts';
import { DENSITY_GPMM3 } from '../physics/steel.ts';
import type { Heated, State } from '../state/state.ts';

/** Where the metal and energy of an attempt are: metal in g, energy in J, and how far each fails to close. */
export interface Accounts {
  /** Metal fed as wire, and where it is. fed = deposited + spatter + dripped (+ wire that never melted, not counted as fed). */
  fed_g: number;
  deposited_g: number;
  spatter_g: number;
  dripped_g: number;
  /** |fed - deposited - spatter - dripped| / fed. */
  massError: number;
  arc_J: number;
  wire_J: number;
  stored_J: number;
  lost_J: number;
  sink_J: number;
  evaporated_J: number;
  dripped_J: number;
  /** |in - out - stored| / in. */
  energyError: number;
  arcTime_s: number;
  /** Liquid reached the edge of what is computed: metal may have run where no reading sees it. */
  leftTheRoom: boolean;
  /** Means over the time the arc burned; 0 where none did. */
  meanCurrent_A: number;
  meanVolts_V: number;
}

/** Heat in the fine cells above 20 °C, J. */
export function storedEnergy(s: Pick<Heated, 'plan' | 'heat' | 'fine'>): number {
  const { plan, heat } = s;
  const { area_mm2, count } = plan.rods;
  let sum = 0;
  for (let r = 0; r < count; r++) {
    if (heat.holding[r] === 0) continue;
    const base = firstCell(heat.layout, r);
    let rod = 0;
    for (let j = s.fine.from; j < s.fine.to; j++) rod += heat.H[base + j]! * heat.fill[base + j]!;
    sum += rod * area_mm2[r]!;
  }
  return sum * plan.dy * DENSITY_GPMM3;
}

/** Heat in the whole work above 20 °C, J. */
export function workEnergy(s: State): number {
  return storedEnergy(s) + coarseEnergy(s);
}

/** Volume under the height field, mm³ (only differences mean anything). */
export function surfaceVolume(s: State): number {
  let sum = 0;
  for (let i = 0; i < s.w.length; i++) sum += s.w[i]!;
  return sum * s.plan.area_mm2;
}

/** Whether liquid ever stood in the outermost columns: beyond them nothing is computed, so what metal did there is not known. */
function leftTheRoom(s: State): boolean {
  const { nu, ny } = s.plan;
  const last = (nu - 1) * ny;
  for (let j = 0; j < ny; j++) if (s.wetTick[j]! >= 0 || s.wetTick[last + j]! >= 0) return true;
  return false;
}

export function accounts(s: State): Accounts {
  const l = s.ledger;
  const deposited = (surfaceVolume(s) - l.start_mm3) * DENSITY_GPMM3;
  const stored = workEnergy(s) - l.start_J;
  const into = l.arc_J + l.wire_J;
  const out = l.lost_J + l.sink_J + l.evaporated_J + l.dripped_J;
  // Cold wire enters at 20 °C, the zero of enthalpy, so fed metal brings only the heat booked as wire.
  return {
    fed_g: l.fed_g,
    deposited_g: deposited,
    spatter_g: l.spatter_g,
    dripped_g: l.dripped_g,
    massError: l.fed_g > 0 ? Math.abs(l.fed_g - deposited - l.spatter_g - l.dripped_g) / l.fed_g : 0,
    arc_J: l.arc_J,
    wire_J: l.wire_J,
    stored_J: stored,
    lost_J: l.lost_J,
    sink_J: l.sink_J,
    evaporated_J: l.evaporated_J,
    dripped_J: l.dripped_J,
    energyError: into > 0 ? Math.abs(into - out - stored) / into : 0,
    arcTime_s: l.arcTime_s,
    meanCurrent_A: l.arcTime_s > 0 ? l.ampSeconds / l.arcTime_s : 0,
    leftTheRoom: leftTheRoom(s),
    meanVolts_V: l.meanVolts_V,
  };
}
