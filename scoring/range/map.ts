import { said } from '../words/names.ts';
import { type Middle, middleOf } from './middle.ts';
import { type Axis, axes, pointsOf, type RangePlan, type RangePoint } from './plan.ts';
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

export const axisWords: Record<Axis, { name: string; unit: string }> = {
  feed_mpmin: { name: 'wire feed', unit: 'm/min' },
  volts_V: { name: 'volts', unit: 'V' },
  travel_mmps: { name: 'travel', unit: 'mm/s' },
  tipToWork_mm: { name: 'tip-to-work', unit: 'mm' },
};

/** The middle and what it bears, in sentences. */
export function middleSentences(map: RangeMap): string[] {
  const { middle, results } = map;
  const held = results.filter((r) => r.verdict === 'within').length;
  const doubt = results.filter((r) => r.verdict === 'too close to call').length;
  const tied = results.filter((r) => r.root === 'within').length;
  const counts = `${results.length} combinations: ${held} within on every line, ${doubt} too close to call; tied in at the root for sure at ${tied}.`;
  if (middle === null) return [counts, 'Nothing in this sweep is within on every line: there is no middle to name.'];
  const at = axes.map((a) => `${axisWords[a].name} ${said(middle.point.at[a], 2)} ${axisWords[a].unit}`).join(', ');
  const give = axes.flatMap((a) => {
    const g = middle.give[a];
    return g === undefined ? [] : [`${axisWords[a].name} -${said(g.down, 2)} / +${said(g.up, 2)} ${axisWords[a].unit}`];
  });
  const hand =
    middle.handHolds === null || middle.handHolds === 0
      ? `Hand: the steady robot holds; the least imperfect hand tried does not, or none was tried.`
      : `Hand: holds up to an imperfect hand of ${said(middle.handHolds, 2)} (0 steady, 1 a beginner) over ${map.plan.seeds.length} seeds.`;
  return [
    counts,
    `Middle: ${middle.point.pattern.replace('-', ' ')}, ${at}.`,
    give.length === 0
      ? 'Nothing was swept: one combination.'
      : `Give, one setting at a time, as far as swept: ${give.join('; ')}. ${middle.room === 0 ? 'No whole step in every direction at once.' : `Everything within ${middle.room} ${middle.room === 1 ? 'step' : 'steps'} in every direction holds.`}`,
    hand,
  ];
}
