import { csvWithComments } from '../schema/csv.ts';
import type { RangeMap } from './map.ts';

const HEAD = [
  'pattern',
  'feed_mpmin',
  'volts_V',
  'travel_mmps',
  'tipToWork_mm',
  'verdict',
  'root',
  'rootFusion_mm',
  'convexity_mm',
  'size_mm',
  'laid_mm2',
  'current_A',
  'regime',
  'because',
  'handHolds',
  'middle',
] as const;

/** One combination as a row of the table. */
export type RangeRow = Record<(typeof HEAD)[number], string | number | boolean | null>;

/** One row per combination, in the order of the points. */
export function rangeRows(map: RangeMap): RangeRow[] {
  return map.points.map((p, i) => {
    const { verdict, root, rootFusion_mm, convexity_mm, size_mm, laid_mm2, current_A, regime, because, handHolds } =
      map.results[i]!;
    return {
      pattern: p.pattern,
      ...p.at,
      verdict,
      root,
      rootFusion_mm,
      convexity_mm,
      size_mm,
      laid_mm2,
      current_A,
      regime,
      because,
      handHolds,
      middle: map.middle?.point.index === p.index,
    };
  });
}

/** The table as CSV, label and caution as comment lines at the top. */
export function rangeCsv(map: RangeMap): string {
  return csvWithComments([map.label, map.caution], rangeRows(map), HEAD);
}
