/** The longest time step at which explicit conduction stays stable on a mesh. */

import { DENSITY_GPMM3 } from '../physics/steel.ts';
import type { HeatPlan } from '../state/state.ts';
import type { Wall } from './held.ts';
import type { PieceMesh } from './mesh.ts';

/** Share of the bound that is used. */
const SHARE = 0.97;

/**
 * A cell keeps its sign of influence on itself while dt · Σ(face shape) · dΘ/dH / (ρ A) <= 1; the tightest cell rules. For even cubes
 * without held faces this is h² ρ / (6 dΘ/dH), as in an attempt.
 */
export function longestStep(mesh: PieceMesh, walls: readonly Wall[], steepest: number): number {
  const { rods, ny, dy } = mesh.plan;
  const sides = new Float64Array(rods.count);
  for (let r = 0; r < rods.count; r++) for (let s = 0; s < 4; s++) sides[r]! += rods.shape[4 * r + s]!;
  for (const list of rods.lists) for (const shape of list.shapes) sides[list.rod]! += shape;
  for (const gap of rods.gaps) {
    sides[gap.p]! += gap.shape;
    sides[gap.q]! += gap.shape;
  }
  const ends = ny > 1 ? 2 : 0;
  const along = new Float64Array(rods.count).fill(ends / (dy * dy));
  for (const wall of walls) {
    wall.rods.forEach((rod, n) => {
      if (wall.slice < 0) sides[rod]! += wall.shape[n]! / dy;
      else along[rod]! += (ny > 1 ? 1 : 2) / (dy * dy);
    });
  }
  let worst = 0;
  for (let r = 0; r < rods.count; r++)
    if (mesh.fill[r]! > 0) worst = Math.max(worst, sides[r]! / rods.area_mm2[r]! + along[r]!);
  return (SHARE * DENSITY_GPMM3) / (worst * steepest);
}

/**
 * The step an attempt would take with cells as narrow as the narrowest here. A bar one cell across would stay stable at three times that,
 * but would ring from cell to cell where heat is set free at once.
 */
export function stepOfCubes(plan: HeatPlan, steepest: number): number {
  const narrow = Math.min(plan.dy, Math.sqrt(plan.rods.area_mm2.reduce((least, area) => Math.min(least, area))));
  return (SHARE * narrow * narrow * DENSITY_GPMM3) / (6 * steepest);
}
