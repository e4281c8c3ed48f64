import type { Pose } from '../../../engine/index.ts';
import { traceOfHand } from '../../attempt/trace.ts';
import type { Exercise } from '../../schema/exercise.ts';
import type { Band } from '../../schema/leeway.ts';
import { median, quantile } from '../statistics.ts';
import { curveOf, type Reading } from './curve.ts';

/** What is read of a hand that welds nothing. */
export const handMeasures = ['beat', 'width', 'pause A', 'pause B', 'climb', 'symmetry', 'evenness'] as const;
/** One of them. */
export type HandMeasure = (typeof handMeasures)[number];

/** One thing the hand did, against the band asked for. */
export interface HandReading {
  measure: HandMeasure;
  unit: '/s' | 'mm' | 's' | 'mm/s' | '%';
  is: number;
  /** Null: nothing is asked of it. */
  asked: Band | null;
  /** Inside the band; null where nothing is asked. */
  inside: boolean | null;
}

/** A weave's middle may lie so far from the root, mm; its cycles may spread by so much, per cent. Common practice, no source. */
const ASIDE_MM = 0.8;
const UNEVEN_PERCENT = 15;

/**
 * A hand without metal: read from its poses as the hand of an attempt is, by the same curve, and held against the exercise's bands. Only what is there to
 * read: a hand that has not woven yet has no beat.
 * @param widen 1: the bands as they are; more: as much wider about their middles
 */
export function handAlone(poses: Iterable<Pose>, exercise: Exercise, widen = 1): HandReading[] {
  const trace = traceOfHand(poses);
  const upperOnly = exercise.demonstration.pattern === 'triangle';
  const curve = curveOf(trace, { from: 0, to: trace.length }, { breaks: [], upperOnly });
  const { target } = exercise;
  const out: HandReading[] = [];
  const read = (measure: HandMeasure, unit: HandReading['unit'], is: number | null, asked: Band | null): void => {
    if (is === null) return;
    const band = asked && wider(asked, widen);
    out.push({ measure, unit, is, asked, inside: band && is >= band.from && is <= band.to });
  };
  const of = (readings: readonly Reading[]): number | null => median(readings.map((r) => r.value));
  const weave = target.width_mm !== null;
  const period_s = of(curve.period_s);
  read('beat', '/s', period_s === null ? null : 1 / period_s, target.cyclesPerSecond);
  read('width', 'mm', of(curve.width_mm), target.width_mm);
  read('pause A', 's', of(curve.pauseA_s), target.pauseA_s);
  read('pause B', 's', of(curve.pauseB_s), target.pauseB_s);
  read('climb', 'mm/s', of(curve.travel_mmps), target.travel_mmps);
  read('symmetry', 'mm', of(curve.centre_mm), { from: -ASIDE_MM, to: ASIDE_MM });
  if (weave) read('evenness', '%', spread(curve.period_s), { from: 0, to: UNEVEN_PERCENT });
  return out;
}

function wider({ from, to }: Band, times: number): Band {
  const [middle, half] = [(from + to) / 2, (times * (to - from)) / 2];
  return { from: middle - half, to: middle + half };
}

/** Half the middle two thirds of the cycles over their median, per cent, as the hand of an attempt is read. */
function spread(periods: readonly Reading[]): number | null {
  const values = periods.map((r) => r.value);
  const middle = median(values);
  if (middle === null || middle <= 0 || values.length < 4) return null;
  return (50 * (quantile(values, 0.84) - quantile(values, 0.16))) / middle;
}
