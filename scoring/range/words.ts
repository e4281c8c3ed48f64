import { said } from '../words/names.ts';
import type { RangeMap } from './map.ts';
import { type Axis, axes } from './plan.ts';

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
