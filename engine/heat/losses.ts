/** Heat leaving the work: convection and radiation from every free face, conduction into clamps and bench. */

import { perAcross, riseAcross, slopeAlong } from '../grid/columns.ts';
import { firstCell } from '../kernel/layout.ts';
import type { Calibration } from '../physics/calibration.ts';
import { DENSITY_GPMM3, lookup, type MaterialTable } from '../physics/steel.ts';
import type { Heated } from '../state/state.ts';

/** Losses are slow beside conduction: taken every this many ticks, for as many ticks' time. */
export const LOSS_INTERVAL = 16;
const STEFAN_BOLTZMANN_WPMM2K4 = 5.670374e-14;

/**
 * Heat flux off a face [W/mm²] over enthalpy, as [value, slope per step] pairs like the material's tables: convection and radiation at
 * the table's own temperatures. Between steps the error is below 1e-4 of the flux.
 */
export function lossTable(
  table: MaterialTable,
  ambient_C: number,
  cal: Pick<Calibration, 'emissivity' | 'convection'>,
): Float32Array {
  const k0 = ambient_C + 273.15;
  const flux = (t: number): number => {
    const k = t + 273.15;
    return (
      cal.convection * (t - ambient_C) + cal.emissivity * STEFAN_BOLTZMANN_WPMM2K4 * (k * k * k * k - k0 * k0 * k0 * k0)
    );
  };
  const { temperature } = table;
  const pairs = new Float32Array(temperature.length);
  for (let i = 0; i < temperature.length; i += 2) {
    const here = flux(temperature[i]!);
    pairs[i] = here;
    pairs[i + 1] = flux(temperature[i]! + temperature[i + 1]!) - here;
  }
  return pairs;
}

export function applyLosses(s: Heated): void {
  const { plan, heat } = s;
  const { H, fill, layout } = heat;
  const { dy } = plan;
  const { from, to } = s.fine;
  const time = s.dt * LOSS_INTERVAL;
  let lost = 0;
  heat.kernel.cool(from, to, time);
  const { exposed_mm, area_mm2, count, sinks } = plan.rods;
  for (let r = 0; r < count; r++) lost += time * exposed_mm[r]! * dy * heat.kernel.flux[r]!;
  lost += applyFaceLosses(s, time);
  s.ledger.lost_J += lost;

  const { ambient_C, sink_WpmmK } = s.options.joint;
  if (sink_WpmmK === 0) return;
  let taken = 0;
  for (const { rod: r, share } of sinks) {
    const base = firstCell(layout, r);
    const full = area_mm2[r]! * dy * DENSITY_GPMM3;
    for (let cell = base + from; cell < base + to; cell++) {
      if (fill[cell]! <= 0) continue;
      // As with losses: a part-filled cell is held by as much of its edge as it is filled.
      const joules = time * sink_WpmmK * share * dy * (lookup(heat.table.temperature, H[cell]!) - ambient_C);
      H[cell]! -= joules / full;
      taken += joules * fill[cell]!;
    }
  }
  s.ledger.sink_J += taken;
}

/** The welded face loses over its true area du dy sqrt(1 + |∇w|²), not over stair-steps. */
function applyFaceLosses(s: Heated, time: number): number {
  const { plan, w, surfacePlace, surfaceCell, underCell } = s;
  const { H } = s.heat;
  const { nu, ny } = plan;
  const { from, to } = s.fine;
  const area = s.plan.area_mm2;
  const long = s.plan.long_mm;
  const perLong = 1 / long;
  /** Mass of a full cell, g. */
  const fullCell = long * area * DENSITY_GPMM3;
  let lost = 0;
  for (let c = 0; c < nu; c++) {
    const perU = perAcross(s, c);
    const base = plan.base[c]!;
    for (let j = from; j < to; j++) {
      const i = c * ny + j;
      const m = surfacePlace[i]!;
      const share = Math.min(1, (w[i]! - base) * perLong - m);
      const cell = surfaceCell[i]!;
      const wu = riseAcross(s, w, c, j) * perU;
      const wy = slopeAlong(s, w, i, j);
      const joules = time * area * Math.sqrt(1 + wu * wu + wy * wy) * lookup(s.lossTable, H[cell]!);
      lost += joules;
      // A sliver cannot lose more than it holds in one go: it shares the loss with the cell below.
      if (m > 0 && share < 0.5) {
        const dh = joules / ((1 + share) * fullCell);
        H[cell]! -= dh;
        H[underCell[i]!]! -= dh;
      } else H[cell]! -= joules / (share * fullCell);
    }
  }
  return lost;
}
