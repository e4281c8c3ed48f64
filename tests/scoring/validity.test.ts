import { describe, expect, it } from 'vitest';
import { cheats } from '../validity/cheats.ts';
import { table, withTable } from '../validity/readme.ts';
import { auc, icc1, icc2, kendallW, ranks, spearman } from '../validity/statistics.ts';
import { passed } from '../validity/summary.ts';

/** The numbers validity rests on, against hand-worked and published examples. */
describe('statistics', () => {
  it('rank with ties shared', () => {
    expect(ranks([10, 30, 20, 20])).toEqual([1, 4, 2.5, 2.5]);
    expect(spearman([1, 2, 3, 4], [1, 4, 9, 16])).toBeCloseTo(1);
    expect(spearman([1, 2, 3, 4], [1, 2, 4, 3])).toBeCloseTo(0.8);
  });

  it('tell groups apart', () => {
    expect(auc([3, 4], [1, 2])).toBe(1);
    expect(auc([1, 2], [1, 2])).toBe(0.5);
  });

  it('agree with the example of Shrout and Fleiss (1979): six targets, four judges', () => {
    const judged = [
      [9, 2, 5, 8],
      [6, 1, 3, 2],
      [8, 4, 6, 8],
      [7, 1, 2, 6],
      [10, 5, 6, 9],
      [6, 2, 4, 7],
    ];
    expect(icc1(judged)).toBeCloseTo(0.17, 2);
    expect(icc2(judged)).toBeCloseTo(0.29, 2);
  });

  it('give one order a W of 1, and opposite orders 0', () => {
    const same = [
      [1, 1, 1],
      [2, 2, 2],
      [3, 3, 3],
      [4, 4, 4],
    ];
    expect(kendallW(same)).toBeCloseTo(1);
    expect(
      kendallW([
        [1, 3],
        [2, 2],
        [3, 1],
      ]),
    ).toBeCloseTo(0);
  });
});

describe('the generated table', () => {
  it('replaces what stood between its marks and nothing else', () => {
    const text = 'a\n<!-- table: written by npm run validity -->\nold\n<!-- end of table -->\nb\n';
    const once = withTable(text, 'new');
    expect(once).toContain('\nnew\n');
    expect(once).not.toContain('old');
    expect(withTable(once, 'new')).toBe(once);
    expect(() => withTable('no marks', 'x')).toThrow(/marks/);
  });

  it('says where a target is missed', () => {
    const v = { spearman: {}, auc: 0.5, icc: 0.95, adviceHelps: null, cheatsPassed: 0, runs: 1 };
    const text = table(v, []);
    expect(text).toMatch(/AUC.*0\.500.*missed/);
    expect(text).toMatch(/ICC.*0\.950.*met/);
    expect(text).toMatch(/nothing shown.*missed/);
  });
});

describe('a cheat', () => {
  it.each(['welding only the easy middle', 'downhill'])(
    'is caught: %s',
    (name) => {
      const cheat = cheats.find((c) => c.name === name)!;
      const { result, counted } = cheat.tried();
      expect(passed({ kind: 'cheat', name, verdict: result.verdict, counted, why: '' })).toBe(false);
      expect(result.verdict).toBe('no verdict');
    },
    60_000,
  );
});
