import { minTipToWork_mm, type ProcessOptions } from '../../engine/index.ts';
import type { Band, Exercise } from '../schema/exercise.ts';
import type { Change, Result } from '../schema/result.ts';
import { inSteps, type Knob, steps } from './steps.ts';

/** Knobs of the hand that an exercise gives a band. */
export const handKnobs = [
  'tipToWork_mm',
  'width_mm',
  'pauseA_s',
  'pauseB_s',
  'lead_mm',
  'travel_mmps',
  'workAngle_deg',
  'travelAngle_deg',
] as const;

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

/** What the hand says of a knob and the band the exercise gives it; null where either is missing. */
export function asked(what: Knob, { motion }: Result, { target }: Exercise): { reading: number; band: Band } | null {
  const knob = handKnobs.find((k) => k === what);
  if (knob === undefined) return null;
  const reading = motion[knob];
  const band = target[knob];
  return reading === null || band === null ? null : { reading, band };
}

function howFarOff({ what }: Change, result: Result, exercise: Exercise): number | null {
  const found = asked(what, result, exercise);
  if (found === null) return null;
  const { reading, band } = found;
  if (what === 'lead_mm') return reading >= band.from ? null : -reading / FOOT_PER_AIM;
  return (band.from + band.to) / 2 - reading;
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
