import { minTipToWork_mm, type ProcessOptions } from '../../engine/index.ts';
import { UNEVEN_LEGS_MM } from '../advice/habits.ts';
import type { Exercise } from '../schema/exercise.ts';
import type { Band } from '../schema/leeway.ts';
import type { Change, Result } from '../schema/result.ts';
import { inSteps, type Knob, steps } from './steps.ts';

/** Knobs of the hand that an exercise gives a band. */
const handKnobs = [
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
function asked(what: Knob, { motion }: Result, { target }: Exercise): { reading: number; band: Band } | null {
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

/** Most of them tried for one fault: the ones farthest out. */
const MOST = 2;
/** Legs this far apart on the whole are a weave off the middle, mm; on a lap the edge's own thickness keeps that leg short. */
const ONE_SIDED_MM = { even: UNEVEN_LEGS_MM, lap: 2 } as const;

/** Back to what was asked, wherever the hand was measured outside its band: farthest out first, reckoned in half bands. */
export function outOfBand(result: Result, exercise: Exercise): Change[] {
  const out: { change: Change; far: number }[] = [];
  for (const what of handKnobs) {
    const found = asked(what, result, exercise);
    if (found === null) continue;
    const { reading: x, band } = found;
    const past = x < band.from ? band.from - x : x - band.to;
    // An arc ahead of the front is no fault of the root.
    if (past <= 0 || (what === 'lead_mm' && x > band.to)) continue;
    const change = sized(inSteps(what, x < band.from ? 1 : -1), result, exercise);
    out.push({ change, far: past / Math.max(1e-9, (band.to - band.from) / 2) });
  }
  return out
    .sort((a, b) => b.far - a.far)
    .slice(0, MOST)
    .map((o) => o.change);
}

/** A weave that lies to one side by its legs: over to the shorter one. Null where it lies in the middle. */
export function backToMiddle(result: Result): Change | null {
  const { mean } = result.bead;
  if (mean === null) return null;
  const apart = mean.legA_mm - mean.legB_mm;
  const least = mean.edgeMeltedBack_mm === null ? ONE_SIDED_MM.even : ONE_SIDED_MM.lap;
  if (Math.abs(apart) < least) return null;
  // A shift across the view moves both legs by root two of it, one up and one down; a step is half a millimetre.
  return inSteps('centre_mm', (apart > 0 ? -1 : 1) * Math.max(1, Math.round(Math.abs(apart) / Math.SQRT2)));
}
