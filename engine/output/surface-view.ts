/** The surface as it is drawn: one number a column and quantity. */
import { stackRod, topCell } from '../grid/columns.ts';
import { BLOCK } from '../grid/tiles.ts';
import { firstCell } from '../kernel/layout.ts';
import { lookup } from '../physics/steel.ts';
import type { State } from '../state/state.ts';
import { surfaceLiquid } from './trace.ts';

/** Live surface for drawing: arrays over columns, index `k * ny + j` (k across from -u to +u, j up). Do not write. */
export interface SurfaceView {
  nu: number;
  ny: number;
  /** u of column k is `u0_mm + k * du_mm`; y of slice j is `y0_mm + j * dy_mm` (cell centres). */
  u0_mm: number;
  du_mm: number;
  y0_mm: number;
  dy_mm: number;
  /** Surface height w. */
  height_mm: Float32Array;
  /** Height of the joint as cut, before welding. */
  plate_mm: Float32Array;
  temp_C: Float32Array;
  /** 0 solid .. 1 liquid. */
  liquid: Float32Array;
  /** Highest temperature the surface metal has seen (temper colours, heat-affected plate). */
  peak_C: Float32Array;
  /** Time of the last freezing, s; NaN where it never was liquid. */
  frozen_s: Float32Array;
}

export function createView(s: State): SurfaceView {
  const { plan } = s;
  const n = plan.nu * plan.ny;
  const plate = new Float32Array(n);
  for (let c = 0; c < plan.nu; c++) plate.fill(plan.plate[c]!, c * plan.ny, (c + 1) * plan.ny);
  return {
    nu: plan.nu,
    ny: plan.ny,
    u0_mm: -plan.kMax * plan.du,
    du_mm: plan.du,
    y0_mm: plan.y0,
    dy_mm: plan.dy,
    height_mm: new Float32Array(n),
    plate_mm: plate,
    temp_C: new Float32Array(n),
    liquid: new Float32Array(n),
    peak_C: new Float32Array(n),
    frozen_s: new Float32Array(n),
  };
}

/** Enthalpy of a cell, from its tile where the block is coarse. */
function surfaceEnthalpy(s: State, cell: number, j: number): number {
  const block = Math.floor(j / BLOCK);
  if (!s.coarse.isCoarse[block]) return s.heat.H[cell]!;
  const rod = Math.floor(cell / s.heat.layout.stride);
  return s.coarse.H[block * s.coarse.tiles.count + s.coarse.tiles.of[rod]!]!;
}

export function fillView(view: SurfaceView, s: State): void {
  const { plan, heat } = s;
  for (let c = 0; c < plan.nu; c++) {
    for (let j = 0; j < plan.ny; j++) {
      const i = c * plan.ny + j;
      const m = topCell(s, c, s.w[i]!);
      const cell = firstCell(heat.layout, stackRod(s, c, m)) + j;
      view.height_mm[i] = s.w[i]!;
      const h = surfaceEnthalpy(s, cell, j);
      view.temp_C[i] = lookup(heat.table.temperature, h);
      view.peak_C[i] = lookup(heat.table.temperature, heat.peak[cell]!);
      view.liquid[i] = surfaceLiquid(s, i, h);
      view.frozen_s[i] = s.frozenTick[i]! < 0 ? Number.NaN : s.frozenTick[i]! * s.dt;
    }
  }
}
