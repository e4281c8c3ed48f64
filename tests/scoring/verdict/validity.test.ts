import { describe, expect, it } from 'vitest';
import { cheats } from '../../studies/validity/cheats.ts';
import { HANDS } from '../../studies/validity/faults.ts';
import { ownHand } from '../../studies/validity/hands.ts';
import type { Answer } from '../../studies/validity/jobs.ts';
import { table, withTable } from '../../studies/validity/readme.ts';
import { auc, icc1, icc2, kendallW, ranks, spearman } from '../../studies/validity/statistics.ts';
import { passed, spearmanOf, summarise, type Validity } from '../../studies/validity/summary.ts';
import { exerciseOf, settingNames } from '../../studies/validity/weld.ts';
import { share } from '../../support/share.ts';

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

describe('the settings', () => {
  it.each(settingNames)('ask for what they show: %s', (setting) => {
    const { demonstration: w, target, asked, joint } = exerciseOf({ setting });
    for (const knob of [
      'pauseA_s',
      'pauseB_s',
      'width_mm',
      'travel_mmps',
      'cyclesPerSecond',
      'workAngle_deg',
    ] as const) {
      expect(w[knob], knob).toBeGreaterThanOrEqual(target[knob]!.from);
      expect(w[knob], knob).toBeLessThanOrEqual(target[knob]!.to);
    }
    if (joint.kind === 'lap') expect(joint.plateB_mm).toBeGreaterThanOrEqual(asked.size_mm + 1);
  });
});

describe('the hands', () => {
  it('are the same person whatever the seed, and nobody else', () => {
    const { seed: _one, ...first } = ownHand(7, 1, 1);
    const { seed: _two, ...again } = ownHand(7, 1, 2);
    const { seed: _three, ...other } = ownHand(8, 1, 1);
    expect(again).toEqual(first);
    expect(other).not.toEqual(first);
    expect(ownHand(7, 0, 1)).toMatchObject({ tremor_mm: 0, timing: 0, pauseSpreadA: 0 });
  });

  it('of a beginner are worse than those of a skilled one in every fault', () => {
    for (let hand = 0; hand < 20; hand++) {
      const skilled = ownHand(hand, 0.3, 1);
      const novice = ownHand(100 + hand, 0.9, 1);
      expect(novice.tremor_mm).toBeGreaterThanOrEqual(skilled.tremor_mm);
      expect(Math.abs(novice.driftU_mm)).toBeGreaterThanOrEqual(Math.abs(skilled.driftU_mm));
    }
  });
});

describe('the summary', () => {
  const cheat = { kind: 'cheat', name: 'x', verdict: 'within', counted: true, why: '', books: 1e-7 } as const;

  it('counts a cheat that came out within and counted, and welds whose accounts are open', () => {
    const v = summarise([cheat, { ...cheat, counted: false, books: 2 }, { ...cheat, verdict: 'outside' }]);
    expect(v).toMatchObject({ cheats: 3, cheatsPassed: 1, runs: 3, books: { largest: 2, open: 1 }, adviceHelps: null });
  });

  it('counts a file that gives itself away and was counted, whatever its weld; one that no file gives away is said apart', () => {
    const file = {
      kind: 'file',
      name: 'x',
      shows: 'itself',
      verdict: 'outside',
      counted: true,
      evidence: [],
      books: 0,
    } as const;
    const v = summarise([
      file,
      { ...file, counted: false },
      { ...file, shows: 'nothing' },
      { ...file, shows: 'nothing', counted: false },
      { ...file, shows: 'honest', counted: false },
    ]);
    expect(v).toMatchObject({ cheats: 2, cheatsPassed: 1, notCaught: { of: 2, counted: 1 }, honestCounts: false });
    expect(summarise([{ ...file, shows: 'honest' }]).honestCounts).toBe(true);
    expect(summarise([file]).honestCounts).toBe(false);
  });

  it('ranks single hands: one out of place among twelve is seen', () => {
    const hand = (n: number, quantity: number): Answer => ({
      kind: 'fault',
      task: { kind: 'fault', fault: 0, hand: n, setting: 'tee' },
      quantity,
      verdict: 'within',
      books: 0,
    });
    const rising = Array.from({ length: HANDS }, (_, n) => hand(n, n));
    expect(spearmanOf(rising, 0, 'tee')).toBeCloseTo(1);
    const spoilt = rising.map((a, n) => (n === 0 ? hand(0, 20) : a));
    expect(spearmanOf(spoilt, 0, 'tee')).toBeLessThan(0.6);
  });

  it('shares out what advice did over all fresh goes', () => {
    const trial = {
      setting: 'tee',
      name: 'x',
      outside: ['leg'],
      asked: true,
      shown: { change: { what: 'travel_mmps', by: -0.2 }, measure: 'leg' },
      unshown: null,
      tried: 1,
      fresh: 4,
      mended: 3,
      spoiled: 1,
      books: 0,
      runs: 10,
    } as const;
    const of = (t: object): Answer => ({ kind: 'advice', trial: { ...trial, outside: ['leg'], ...t }, books: 0 });
    const v = summarise([
      of({}),
      of({ shown: null, fresh: 0, mended: 0, spoiled: 0 }),
      of({ asked: false, shown: null, fresh: 0, mended: 0, spoiled: 0 }),
    ]);
    expect(v.adviceHelps).toBe(0.75);
    expect(v.advice).toEqual({ hands: 3, asked: 2, shown: 1, noSingleChange: 1 });
    expect(v.freshSeeds).toEqual({ fresh: 4, mended: 3, spoiled: 1 });
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
    const v: Validity = {
      spearman: { tremor: 0.89 },
      auc: 0.5,
      icc: 0.95,
      adviceHelps: null,
      cheatsPassed: 1,
      notCaught: { of: 0, counted: 0 },
      honestCounts: true,
      runs: 1,
      aucBySetting: {},
      iccBySetting: {},
      advice: { hands: 1, asked: 1, shown: 0, noSingleChange: 1 },
      freshSeeds: { fresh: 0, mended: 0, spoiled: 0 },
      cheats: 2,
      books: { largest: 0.5, open: 1 },
    };
    const run = { minutes: 1, threads: 2 };
    const text = table(v, [], run);
    expect(text).toMatch(/AUC.*0\.500.*missed/);
    expect(text).toMatch(/ICC.*0\.950.*met/);
    expect(text).toMatch(/nothing shown.*missed/);
    expect(text).toMatch(/Spearman.*0\.890.*missed/);
    expect(text).toMatch(/given-away files.*1 of 2.*missed/);
    expect(text).toMatch(/not to be believed/);
    const closed = table({ ...v, books: { largest: 1e-6, open: 0 } }, [], run);
    expect(closed).not.toMatch(/not to be believed/);
  });
});

describe('a cheat', () => {
  it.each(share(['welding only the easy middle', 'downhill'], 1))(
    'is caught: %s',
    (name) => {
      const cheat = cheats.find((c) => c.name === name)!;
      const { result, counted } = cheat.tried();
      expect(passed({ kind: 'cheat', name, verdict: result.verdict, counted, why: '', books: 0 })).toBe(false);
      expect(result.verdict).toBe('no verdict');
    },
    60_000,
  );
});
