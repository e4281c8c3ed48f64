import { noFaults, weaveHand } from '../../../engine/index.ts';
import { spanBetween, traceOfHand } from '../../attempt/trace.ts';
import type { Exercise } from '../../schema/exercise.ts';
import { curveOf, type HandCurve } from './curve.ts';

/**
 * What an exercise's demonstration reads as, over its judged length: the hand that was asked for, read as any other hand is.
 * @param shake_mm the demonstration done by a hand that shakes so: what shaking alone does to every reading
 */
export function shownCurve({ demonstration, judged }: Exercise, shake_mm = 0): HandCurve {
  const trace = traceOfHand(weaveHand(demonstration, { ...noFaults(), tremor_mm: shake_mm }));
  const whole = spanBetween(trace, Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY);
  const span = spanBetween(trace, judged.from_mm, judged.to_mm) ?? whole ?? { from: 0, to: 0 };
  return curveOf(trace, span, { breaks: [], upperOnly: demonstration.pattern === 'triangle' });
}
