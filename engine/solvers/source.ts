/** Gaussian heat on flat faces, shared out by the exact integral over every cell's patch of face. */

import { firstCell } from '../kernel/layout.ts';
import { exp } from '../numerics/math.ts';
import { DENSITY_GPMM3 } from '../physics/steel.ts';
import type { HeatState } from '../state/state.ts';
import { gaussianShare } from './erf.ts';
import type { PieceMesh } from './mesh.ts';
import type { Place, SurfaceSource } from './types.ts';

/** Beyond this many standard deviations nothing is left (6e-7). */
const REACH = 5;
/** A point's reach: it heats only the cell it is in. */
const POINT_MM = 1e-6;

export interface SourceWork {
  rod: Int32Array;
  weight: Float64Array;
  slice: Float64Array;
}

export function createSourceWork(mesh: PieceMesh): SourceWork {
  return {
    rod: new Int32Array(2 * mesh.plan.rods.count),
    weight: new Float64Array(2 * mesh.plan.rods.count),
    slice: new Float64Array(mesh.plan.ny),
  };
}

/** Puts `joules` into the first cells behind the source's faces. Returns what went in: all, or 0 where no face is in reach. */
export function heatFaces(
  mesh: PieceMesh,
  heat: HeatState,
  work: SourceWork,
  source: SurfaceSource,
  at: Place,
  joules: number,
): number {
  const { plan } = mesh;
  const sigma = source.radius_mm;
  const reach = sigma > 0 ? REACH * sigma : POINT_MM;
  const inJoint = mesh.faces.has('A');
  let count = 0;
  let sum = 0;
  for (const face of source.faces) {
    const alongA = face === 'A' || face === 'b-' || face === 'b+';
    const centre = alongA ? at.a_mm : at.b_mm;
    const off = (alongA ? at.b_mm : at.a_mm) - mesh.level.get(face)!;
    const fade = inJoint && sigma > 0 ? exp((-off * off) / (2 * sigma * sigma)) : 1;
    for (const patch of mesh.faces.get(face)!) {
      if (patch.to_mm < centre - reach || patch.from_mm > centre + reach) continue;
      const weight = fade * gaussianShare(patch.from_mm, patch.to_mm, centre, sigma);
      if (weight <= 0) continue;
      work.rod[count] = patch.rod;
      work.weight[count++] = weight;
      sum += weight;
    }
  }
  const { dy, ny } = plan;
  const low = mesh.y0_mm - dy / 2;
  const j0 = Math.max(0, Math.floor((at.y_mm - reach - low) / dy));
  const j1 = Math.min(ny - 1, Math.floor((at.y_mm + reach - low) / dy));
  let along = 0;
  for (let j = j0; j <= j1; j++) {
    work.slice[j] = gaussianShare(low + j * dy, low + (j + 1) * dy, at.y_mm, sigma);
    along += work.slice[j]!;
  }
  if (!(sum * along > 1e-12)) return 0;
  for (let n = 0; n < count; n++) {
    const rod = work.rod[n]!;
    const base = firstCell(heat.layout, rod);
    const perGram = (joules * work.weight[n]!) / (sum * along * plan.rods.area_mm2[rod]! * dy * DENSITY_GPMM3);
    for (let j = j0; j <= j1; j++) {
      const cell = base + j;
      heat.H[cell]! += (perGram * work.slice[j]!) / heat.fill[cell]!;
    }
  }
  return joules;
}
