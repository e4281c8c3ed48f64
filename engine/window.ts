/** Where the joint is computed in fine cells: round the arc and the liquid, and wherever the section has not levelled out yet. */
import { BLOCK, CALM_INTERVAL, coarsen, hottestTile, refine, unrest } from './calm.ts';
import { stepCalm } from './calm-step.ts';
import { enthalpyAt } from './material.ts';
import { clamp } from './math.ts';
import type { State } from './state.ts';

/**
 * Fine cells reach at least this far from the arc and the liquid. Against fine cells everywhere, seven of the eight welds of the mesh study
 * move by at most 0.04 mm in any reading; crossing back in the puddle by 0.05. All far inside what the cell itself moves.
 */
const MARGIN_MM = 4.5;
/** A block may go coarse when no tile spreads by more than this (about 90 K) and nothing is hotter than this: below Ac1, so peaks are safe. */
const CALM_SPREAD_JPG = 60;
const CALM_HOTTEST_C = 690;
/** A coarse block beside the window goes fine again when a tile is hotter than this: a puddle held long reaches far. */
const RESTLESS_C = 705;

/** Fine slices [from, to); empty when from === to. */
export interface FineWindow {
  from: number;
  to: number;
}

/** Before the ticks of a pose: fine cells where the arc is going to burn, as far as it `throws` from its aim, and where metal is liquid. */
export function openWindow(s: State, arcLow: number | null, arcHigh: number | null, throws = 0): void {
  const { plan, fine } = s;
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  if (arcLow !== null && arcHigh !== null) {
    const end = (plan.ny - 1) * plan.dy;
    const margin = Math.max(MARGIN_MM, throws + plan.dy);
    low = (clamp(arcLow - plan.y0, 0, end) - margin) / plan.dy;
    high = (clamp(arcHigh - plan.y0, 0, end) + margin) / plan.dy;
  }
  if (s.window.to > 0) {
    low = Math.min(low, s.window.from - MARGIN_MM / plan.dy);
    high = Math.max(high, s.window.to + MARGIN_MM / plan.dy);
  }
  if (low > high) return;
  const first = Math.max(0, Math.floor(low / BLOCK));
  const last = Math.min(s.calm.blocks - 1, Math.floor(high / BLOCK));
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

/** After a pose: step the coarse blocks when due and let calm ends of the window go coarse. */
export function closeWindow(s: State, arcY: number | null): void {
  if (s.fineEverywhere || s.steps % CALM_INTERVAL !== 0) return;
  stepCalm(s);
  const { plan, fine } = s;
  const near = MARGIN_MM + BLOCK * plan.dy;
  const busy = (from: number, to: number): boolean => {
    const low = plan.y0 + from * plan.dy;
    const high = plan.y0 + to * plan.dy;
    if (arcY !== null && arcY > low - near && arcY < high + near) return true;
    return (
      s.window.to > 0 && s.window.from * plan.dy < to * plan.dy + near && s.window.to * plan.dy > from * plan.dy - near
    );
  };
  const hot = enthalpyAt(s.heat.table, CALM_HOTTEST_C);
  const calmBlock = (block: number): boolean => {
    const from = block * BLOCK;
    if (busy(from, Math.min(plan.ny, from + BLOCK))) return false;
    const { spread, hottest } = unrest(s, block);
    return spread < CALM_SPREAD_JPG && hottest < hot;
  };
  if (fine.from === fine.to) return;
  const restless = enthalpyAt(s.heat.table, RESTLESS_C);
  const below = fine.from / BLOCK - 1;
  if (below >= 0 && hottestTile(s, below) > restless) {
    refine(s, below);
    fine.from = below * BLOCK;
  } else if (calmBlock(fine.from / BLOCK)) {
    coarsen(s, fine.from / BLOCK);
    fine.from = Math.min(fine.to, fine.from + BLOCK);
  }
  if (fine.from === fine.to) return;
  const above = Math.ceil(fine.to / BLOCK);
  if (above < s.calm.blocks && hottestTile(s, above) > restless) {
    refine(s, above);
    fine.to = Math.min(plan.ny, (above + 1) * BLOCK);
  } else if (calmBlock(above - 1)) {
    coarsen(s, above - 1);
    fine.to = (above - 1) * BLOCK;
  }
}
