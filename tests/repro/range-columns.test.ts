import { parse } from 'csv-parse/sync';
import { describe, expect, it } from 'vitest';
import { RANGE_CAUTION, RANGE_LABEL, type RangeMap, type RangePlan, type RangeResult } from '../../scoring/index.ts';
import { rangeCsv } from '../../scoring/range/table.ts';
import { csvText } from '../../scoring/schema/csv.ts';

const at = { feed_mpmin: 4, volts_V: 18, travel_mmps: 2, tipToWork_mm: 12 };
const result: RangeResult = {
  index: 0,
  verdict: 'outside',
  root: 'within',
  rootFusion_mm: 0.5,
  convexity_mm: null,
  size_mm: 4.2,
  laid_mm2: 20,
  current_A: 120,
  regime: 'short-circuit',
  because: 'leg short, length',
  handHolds: null,
};
const map = {
  label: RANGE_LABEL,
  caution: RANGE_CAUTION,
  plan: {} as RangePlan,
  points: [{ index: 0, at, pattern: 'inverted-v', exercise: {} }],
  results: [result],
  middle: null,
} as unknown as RangeMap;

describe('the table of a working range', () => {
  it('keeps its columns when a reason holds a comma', () => {
    const [row] = parse(rangeCsv(map), { columns: true, comment: '#', comment_no_infix: true }) as Record<
      string,
      string
    >[];
    expect(row).toMatchObject({
      because: 'leg short, length',
      handHolds: '',
      middle: 'false',
      regime: 'short-circuit',
    });
  });
});

describe('a table for a spreadsheet', () => {
  it('keeps its rows when a cell holds a line end of either kind', () => {
    const rows = [{ says: 'one\ntwo' }, { says: 'one\rtwo' }, { says: 'one\r\ntwo' }];
    const text = csvText(rows, ['says']);
    expect(text.trimEnd().split('\r\n')).toHaveLength(4);
    // A line end is written out, so that a row is a line for every reader.
    expect(parse(text, { columns: true, bom: true })).toEqual([
      { says: 'one\\u000atwo' },
      { says: 'one\\u000dtwo' },
      { says: 'one\\u000d\\u000atwo' },
    ]);
  });
});
