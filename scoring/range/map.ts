import { type Middle, middleOf } from './middle.ts';
import { pointsOf, type RangePlan, type RangePoint } from './plan.ts';
import { type RangeResult, weldPoint } from './weld-point.ts';

/** What a working range is called wherever it is shown. */
export const RANGE_LABEL = 'working range (study)';
/** What has to stand by every working range. */
export const RANGE_CAUTION =
  'A study aid: where this model ties in and holds the profile. It is no procedure and qualifies nothing; the written procedure, the local code and the inspector decide.';

/** A sweep, welded: every combination with its result, and the middle of what holds. */
export interface RangeMap {
  label: typeof RANGE_LABEL;
  caution: string;
  plan: RangePlan;
  points: RangePoint[];
  /** Same order as the points. */
  results: RangeResult[];
  middle: Middle | null;
}

/** Puts the results of all points together. They may come in any order; the map is the same. */
export function mapOf(plan: RangePlan, results: readonly RangeResult[]): RangeMap {
  const points = pointsOf(plan);
  const sorted = [...results].sort((a, b) => a.index - b.index);
  return {
    label: RANGE_LABEL,
    caution: RANGE_CAUTION,
    plan,
    points,
    results: sorted,
    middle: middleOf(plan, points, sorted),
  };
}

/** The whole sweep in this thread. @throws InputError as `pointsOf` */
export function workingRange(plan: RangePlan): RangeMap {
  return mapOf(
    plan,
    pointsOf(plan).map((point) => weldPoint(plan, point)),
  );
}
