import type { Trace } from '../../attempt/trace.ts';
import type { Restart } from '../../schema/motion.ts';
import { milli } from '../round.ts';
import type { Burn } from './burns.ts';

/** Struck higher than this above the place where the arc went out is above the crater; practice is about 10 mm, no source. */
const LEAST_ABOVE_MM = 3;
/** The arc is back in the crater when it comes down to this close above the place where it went out, mm. */
const BACK_MM = 1;
/** ... within this long of the strike: later it is a pass over the bead. s */
const WITHIN_S = 6;

/**
 * **Restart**: how the arc was taken up again after a stop in mid length. Practice (no source): strike about 10 mm above the crater,
 * drop back into it, fill it, go. `above_mm`: arc foot at the strike over arc foot where the arc went out. `back_mm`: how near above
 * that place (negative: below it) the arc came before it climbed on. `inCrater_s`: arc time at or below it. Read to 1/100 s and to the
 * quanta of the recording; the foot itself is ±0.5 mm, half the arc's own radius (common practice, no source).
 * @param burn the run that went on
 */
export function restartOf(trace: Trace, out_mm: number, burn: Burn): Restart {
  const y = trace.column('footY_mm');
  const t = trace.column('t_s');
  const above = burn.struck_mm - out_mm;
  let lowest = Number.POSITIVE_INFINITY;
  let inCrater = 0;
  for (let i = burn.from; i < burn.to && t[i]! - burn.from_s <= WITHIN_S; i++) {
    if (trace.arcOn[i] === 0) continue;
    lowest = Math.min(lowest, y[i]!);
    if (y[i]! <= out_mm + BACK_MM) inCrater++;
  }
  const back = lowest - out_mm;
  return {
    t_s: milli(burn.from_s),
    y_mm: milli(burn.struck_mm),
    above_mm: milli(above),
    back_mm: milli(back),
    inCrater_s: milli(inCrater / 100),
    way: back > BACK_MM ? 'not back' : above < LEAST_ABOVE_MM ? 'on the crater' : 'above and back',
  };
}

/** First sample after which a restarted run has climbed past the place where the arc had gone out. */
export function pastStop(trace: Trace, out_mm: number, burn: Burn): number {
  const y = trace.column('footY_mm');
  const t = trace.column('t_s');
  let past = burn.from;
  for (let i = burn.from; i < burn.to && t[i]! - burn.from_s <= WITHIN_S; i++)
    if (y[i]! <= out_mm + BACK_MM) past = i + 1;
  return past;
}
