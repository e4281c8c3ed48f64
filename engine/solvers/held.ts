/** Faces kept at one temperature: Θ falls from the wall to the first centre over half a cell. */

import { firstCell } from '../kernel/layout.ts';
import { DENSITY_GPMM3, enthalpyAt, lookup, type MaterialTable } from '../physics/steel.ts';
import type { HeatState } from '../state/state.ts';
import type { PieceMesh } from './mesh.ts';
import type { HeldFace } from './types.ts';

export interface Wall {
  potential: number;
  /** Sides: rods and the shape (width over distance) of their wall. Ends: the slice held. */
  rods: Int32Array;
  shape: Float64Array;
  slice: number;
}

export function buildWalls(mesh: PieceMesh, table: MaterialTable, held: readonly HeldFace[]): Wall[] {
  const { plan } = mesh;
  return held.map(({ face, temp_C }) => {
    const potential = lookup(table.potential, enthalpyAt(table, temp_C));
    if (face === 'y-' || face === 'y+') {
      const rods = Int32Array.from({ length: plan.rods.count }, (_, r) => r);
      const shape = plan.rods.area_mm2.map((area) => area / (plan.dy / 2));
      return { potential, rods, shape, slice: face === 'y-' ? 0 : plan.ny - 1 };
    }
    const patches = mesh.faces.get(face)!;
    return {
      potential,
      rods: Int32Array.from(patches, (p) => p.rod),
      shape: Float64Array.from(patches, (p) => ((p.to_mm - p.from_mm) / p.inside_mm) * plan.dy),
      slice: -1,
    };
  });
}

/** One tick of heat through the walls, from the potentials the conduction of this tick used. Returns joules that came in. */
export function conductWalls(mesh: PieceMesh, heat: HeatState, walls: readonly Wall[]): number {
  const { plan } = mesh;
  let joules = 0;
  for (const wall of walls) {
    for (let n = 0; n < wall.rods.length; n++) {
      const rod = wall.rods[n]!;
      const base = firstCell(heat.layout, rod);
      const mass = plan.rods.area_mm2[rod]! * plan.dy * DENSITY_GPMM3;
      const from = Math.max(0, wall.slice);
      const to = wall.slice < 0 ? plan.ny : wall.slice + 1;
      for (let j = from; j < to; j++) {
        const flow = heat.dt * wall.shape[n]! * (wall.potential - heat.potential[base + j]!);
        heat.H[base + j]! += flow / mass;
        joules += flow;
      }
    }
  }
  return joules;
}
