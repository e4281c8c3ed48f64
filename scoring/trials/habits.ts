import type { Exercise } from '../schema/exercise.ts';
import type { Change, Result } from '../schema/result.ts';
import { asked, handKnobs, sized } from './sized.ts';
import { inSteps } from './steps.ts';

/** Most of them tried for one fault: the ones farthest out. */
const MOST = 2;
/** Legs this far apart on the whole are a weave off the middle, mm; on a lap the edge's own thickness keeps that leg short. */
const UNEVEN_LEGS_MM = { even: 0.6, lap: 2 } as const;

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
  const least = mean.edgeMeltedBack_mm === null ? UNEVEN_LEGS_MM.even : UNEVEN_LEGS_MM.lap;
  if (Math.abs(apart) < least) return null;
  // A shift across the view moves both legs by root two of it, one up and one down; a step is half a millimetre.
  return inSteps('centre_mm', (apart > 0 ? -1 : 1) * Math.max(1, Math.round(Math.abs(apart) / Math.SQRT2)));
}
