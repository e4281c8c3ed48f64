import { minTipToWork_mm, type ProcessOptions } from '../../engine/index.ts';
import type { Band, Change, Exercise, Result } from '../schema/index.ts';
import { inSteps, steps } from './steps.ts';

/** The arc's foot follows half a shift of the aim at the root crossings: the front of the puddle moves along (robot welds, 0 to 3 mm back). */
const FOOT_PER_AIM = 0.5;

/**
 * A change in as many steps as the hand was measured to be off: a pause 0.2 s under what was asked starts at two steps. One step where
 * nothing was measured, or where the hand was where it should be.
 */
export function sized(change: Change, result: Result, exercise: Exercise): Change {
  const off = howFarOff(change, result, exercise);
  if (off === null || off * change.by <= 0) return change;
  const count = Math.round(Math.abs(off) / steps[change.what].step);
  const longer = inSteps(change.what, change.by < 0 ? -Math.max(1, count) : Math.max(1, count));
  return Math.abs(longer.by) > Math.abs(change.by) ? longer : change;
}

function howFarOff({ what }: Change, { motion }: Result, { target }: Exercise): number | null {
  switch (what) {
    case 'pauseA_s':
      return toMiddle(motion.pauseA_s, target.pauseA_s);
    case 'pauseB_s':
      return toMiddle(motion.pauseB_s, target.pauseB_s);
    case 'width_mm':
      return toMiddle(motion.width_mm, target.width_mm);
    case 'travel_mmps':
      return toMiddle(motion.travel_mmps, target.travel_mmps);
    case 'tipToWork_mm':
      return toMiddle(motion.tipToWork_mm, target.tipToWork_mm);
    case 'lead_mm':
      return motion.lead_mm === null || motion.lead_mm >= target.lead_mm.from ? null : -motion.lead_mm / FOOT_PER_AIM;
    default:
      return null;
  }
}

function toMiddle(x: number | null, band: Band | null): number | null {
  return x === null || band === null ? null : (band.from + band.to) / 2 - x;
}

/** A change no instructor would ask for: the tip inside what the nozzle allows, angles outside what is taught. */
export function sensible(
  { what, by }: Change,
  { motion }: Result,
  exercise: Exercise,
  process: ProcessOptions,
): boolean {
  const { target } = exercise;
  const within = (x: number | null, band: Band): boolean =>
    x === null || (by > 0 ? x + by <= band.to : x + by >= band.from);
  switch (what) {
    case 'tipToWork_mm': {
      const least = Math.max(target.tipToWork_mm.from, minTipToWork_mm(process));
      return within(motion.tipToWork_mm, { from: least, to: target.tipToWork_mm.to });
    }
    case 'workAngle_deg':
      return within(motion.workAngle_deg, target.workAngle_deg);
    case 'travelAngle_deg':
      return within(motion.travelAngle_deg, target.travelAngle_deg);
    default:
      return true;
  }
}
