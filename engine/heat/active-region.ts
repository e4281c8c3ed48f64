/** Where the joint is computed in fine cells: round the arc and the liquid, and wherever the section has not levelled out yet. */

import { yOf } from '../grid/columns.ts';
import { BLOCK, blockEnd, blockStart } from '../grid/tiles.ts';
import type { Pose } from '../input/pose.ts';
import { clamp } from '../numerics/math.ts';
import { enthalpyAt } from '../physics/steel.ts';
import type { State } from '../state/state.ts';
import { COARSE_INTERVAL, coarsen, hottestTile, isLevel, refine } from './coarse-blocks.ts';
import { stepCoarse } from './coarse-step.ts';

/**
 * Fine cells reach at least this far from the arc and the liquid. Against fine cells everywhere, seven of the eight welds of the mesh study
 * move by at most 0.04 mm in any reading; crossing back in the puddle by 0.05. All far inside what the cell itself moves.
 */
export const MARGIN_MM = 4.5;
/** A block may go coarse when no tile spreads by more than this (about 90 K) and nothing is hotter than this: below Ac1, so peaks are safe. */
const LEVEL_SPREAD_JPG = 60;
const LEVEL_HOTTEST_C = 690;
/** A coarse block beside the fine region goes fine again when a tile is hotter than this: a puddle held long reaches far. */
const REFINE_C = 705;

/** Before the ticks of a pose: fine cells where the arc is going to burn, as far as it `throws` from its aim (mm), and where metal is liquid. */
export function openFineRegion(s: State, before: Pose, now: Pose, throws: number): void {
  const { plan, fine } = s;
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  if (now.trigger) {
    // A jump passes over everything between: all of it has to be fine while it does.
    const arcLow = Math.min(before.y_mm, now.y_mm);
    const arcHigh = Math.max(before.y_mm, now.y_mm);
    const end = (plan.ny - 1) * plan.dy;
    const margin = Math.max(MARGIN_MM, throws + plan.dy);
    low = (clamp(arcLow - plan.y0, 0, end) - margin) / plan.dy;
    high = (clamp(arcHigh - plan.y0, 0, end) + margin) / plan.dy;
  }
  if (s.liquidSlices.to > 0) {
    low = Math.min(low, s.liquidSlices.from - MARGIN_MM / plan.dy);
    high = Math.max(high, s.liquidSlices.to + MARGIN_MM / plan.dy);
  }
  if (low > high) return;
  const first = Math.max(0, Math.floor(low / BLOCK));
  const last = Math.min(s.coarse.blocks - 1, Math.floor(high / BLOCK));
  if (fine.from === fine.to) {
    for (let block = first; block <= last; block++) refine(s, block);
    fine.from = first * BLOCK;
    fine.to = Math.min(plan.ny, (last + 1) * BLOCK);
    return;
  }
  while (first * BLOCK < fine.from) {
    fine.from -= BLOCK;
    refine(s, fine.from / BLOCK);
  }
  while (Math.min(plan.ny, (last + 1) * BLOCK) > fine.to) {
    refine(s, fine.to / BLOCK);
    fine.to = Math.min(plan.ny, fine.to + BLOCK);
  }
}

/** After a pose: step the coarse blocks when due and let level ends of the fine region go coarse. */
export function closeFineRegion(s: State, pose: Pose): void {
  if (s.fineEverywhere || s.steps % COARSE_INTERVAL !== 0) return;
  stepCoarse(s);
  const { plan, fine } = s;
  if (fine.from === fine.to) return;
  const refineAt = enthalpyAt(s.heat.table, REFINE_C);
  const below = fine.from / BLOCK - 1;
  if (below >= 0 && hottestTile(s, below) > refineAt) {
    refine(s, below);
    fine.from = below * BLOCK;
  } else if (mayGoCoarse(s, fine.from / BLOCK, pose)) {
    coarsen(s, fine.from / BLOCK);
    fine.from = Math.min(fine.to, fine.from + BLOCK);
  }
  if (fine.from === fine.to) return;
  const above = Math.ceil(fine.to / BLOCK);
  if (above < s.coarse.blocks && hottestTile(s, above) > refineAt) {
    refine(s, above);
    fine.to = Math.min(plan.ny, (above + 1) * BLOCK);
  } else if (mayGoCoarse(s, above - 1, pose)) {
    coarsen(s, above - 1);
    fine.to = (above - 1) * BLOCK;
  }
}

/** Nothing burns or flows near the block, and its sections have levelled out. */
function mayGoCoarse(s: State, block: number, pose: Pose): boolean {
  if (isNearArc(s, block, pose) || isNearLiquid(s, block)) return false;
  return isLevel(s, block, LEVEL_SPREAD_JPG, enthalpyAt(s.heat.table, LEVEL_HOTTEST_C));
}

function isNearArc({ plan }: State, block: number, pose: Pose): boolean {
  if (!pose.trigger) return false;
  const near = MARGIN_MM + BLOCK * plan.dy;
  const low = yOf(plan, blockStart(block));
  const high = yOf(plan, blockEnd(block, plan.ny));
  return pose.y_mm > low - near && pose.y_mm < high + near;
}

function isNearLiquid({ plan, liquidSlices }: State, block: number): boolean {
  const near = MARGIN_MM + BLOCK * plan.dy;
  const from = blockStart(block);
  const to = blockEnd(block, plan.ny);
  return (
    liquidSlices.to > 0 &&
    liquidSlices.from * plan.dy < to * plan.dy + near &&
    liquidSlices.to * plan.dy > from * plan.dy - near
  );
}
