import { beforeAll, describe, expect, it } from 'vitest';
import { exerciseDigest } from '../../../scoring/exercises/digest.ts';
import { type AdviceCode, adviceCodes, exerciseNamed, type Result } from '../../../scoring/index.ts';
import {
  type ClassSheet,
  classSheet,
  faultName,
  type Scored,
  scoreBytes,
  sheetCsv,
  sheetText,
} from '../../../scoring/node/index.ts';
import { MOUSE, weld } from '../welds.ts';

// Tern Dock workshop and everybody in it are invented. One real attempt, its verdict, number and first fix set as each case needs.
let base: Scored;
beforeAll(() => {
  const recording = weld({ joint: { length_mm: 30 }, device: MOUSE, weave: { length_mm: 3, shelf_s: 0 } });
  base = scoreBytes(new TextEncoder().encode(JSON.stringify(recording)), 'a.json', { exercise: null, profile: null });
});

let hand = 0;
function attempt(file: string, change: Partial<Result> = {}, code: AdviceCode = 'keep-it', own = true): Scored {
  const advice: Result['advice'] = [
    { code, text: `${faultName(code)}, said.`, y_mm: 12, t_s: 3, cycle: 2, side: null, change: null },
  ];
  return {
    ...base,
    file: `${file}.json`,
    hand: own ? String(hand++).padStart(64, '0') : base.hand,
    result: { ...base.result, reasons: [], notes: [], verdict: 'outside', score: 50, advice, ...change },
  };
}

const name = (who: string, n: number, day = 10): string => `2026-03-${day}_b1_${who}_lap_0${n}`;
/** The class was asked for the exercise of `base`, a free one: only what is asked for counts. */
const asked = (): ReadonlySet<string> => new Set([base.exercise!]);
const sheetOf = (...scored: Scored[]): ClassSheet => classSheet({ scored, bad: [] }, asked());

describe('a trainee’s row', () => {
  it('has the first attempt, and the median and spread of the last five in the order of day and number', () => {
    const scores = [90, 10, 20, 60, 30, null, 40];
    const made = scores.map((score, i) =>
      attempt(name('wren-hollis', i + 1), { score, verdict: score === null ? 'no verdict' : 'outside' }, 'cold-root'),
    );
    const [row] = sheetOf(...made.reverse()).rows;
    expect(row).toMatchObject({ trainee: 'Wren Hollis', median: 35, spread: { from: 20, to: 60 }, withoutVerdict: 1 });
    expect(row!.first.scored.result.score).toBe(90);
    expect(row!.latest.scored.result.score).toBe(40);
    expect(row!.commonFault).toBe('cold-root');
  });

  it('is one for each device, in the order of names, ranked by nothing', () => {
    const touch = { device: { ...base.result.device, kind: 'touch' as const } };
    const sheet = sheetOf(
      attempt(name('pia-lindqvist', 1), { score: 95, verdict: 'within' }),
      attempt(name('dov-arkady', 1), { score: 5 }),
      attempt(name('dov-arkady', 2), { ...touch, score: 99 }),
    );
    expect(sheet.rows.map((r) => [r.trainee, r.device, r.attempts.length])).toEqual([
      ['Dov Arkady', 'mouse', 1],
      ['Dov Arkady', 'touch', 1],
      ['Pia Lindqvist', 'mouse', 1],
    ]);
    expect(sheet.notes.join()).toMatch(/mouse and touch: numbers of different devices are not compared/);
  });
});

describe('a trainee named inside the file', () => {
  const inside = { name: 'Ines Calder', bench: 'B 2' };
  it('is taken from there where the name of the file gives none', () => {
    const sheet = sheetOf({ ...attempt('attempt (3)'), trainee: inside }, attempt(name('ines-calder', 1)));
    expect(sheet.rows.map((r) => [r.trainee, r.attempts.length])).toEqual([['Ines Calder', 2]]);
    expect(sheet.mismatched).toEqual([]);
  });
  it('is said beside another name of the file, which counts', () => {
    const sheet = sheetOf({ ...attempt(name('pia-lindqvist', 1)), trainee: inside });
    expect(sheet.rows.map((r) => r.trainee)).toEqual(['Pia Lindqvist']);
    expect(sheet.mismatched[0]!.mismatches).toContain('named pia-lindqvist, the file says ines-calder');
  });
});

describe('the class', () => {
  it('has in common what most trainees have, not what one has most often', () => {
    const sheet = sheetOf(
      ...[1, 2, 3, 4].map((n) => attempt(name('ines-calder', n), {}, 'climbed-slowly')),
      attempt(name('pia-lindqvist', 1), {}, 'toe-left-early'),
      attempt(name('dov-arkady', 1), {}, 'toe-left-early'),
    );
    expect(sheet.commonFault).toEqual({ code: 'toe-left-early', trainees: 2, attempts: 2 });
  });

  it('has nothing in common where no two share a fault', () => {
    const sheet = sheetOf(attempt(name('a', 1), {}, 'oversize'), attempt(name('b', 1), {}, 'undersize'));
    expect(sheet.commonFault).toBeNull();
    expect(sheetText(sheet)).toContain('No two trainees share a fault');
  });

  it('shows the three to see first: root before toes before shape, stuck before once, one each, nobody who is well', () => {
    const sheet = sheetOf(
      attempt(name('a', 1), {}, 'too-narrow'),
      attempt(name('b', 1), {}, 'toe-left-early'),
      attempt(name('c', 1), {}, 'cold-root'),
      attempt(name('d', 1), {}, 'arc-back-on-puddle'),
      attempt(name('d', 2), {}, 'arc-back-on-puddle'),
      attempt(name('e', 1), {}, 'cold-root'),
      attempt(name('e', 2), { verdict: 'within', score: 90 }, 'keep-it'),
    );
    expect(sheet.firstThree.map((f) => [f.trainee, f.fault, f.times])).toEqual([
      ['D', faultName('arc-back-on-puddle'), 2],
      ['C', faultName('cold-root'), 1],
      ['B', faultName('toe-left-early'), 1],
    ]);
    expect(sheet.firstThree[0]).toMatchObject({ y_mm: 12, of: 2 });
  });

  it('names robots, mismatches, edits, twins and copies, keeps them and does not count them', () => {
    const robot = { ...base.result.device, kind: 'robot' as const };
    const sheet = sheetOf(
      attempt(name('a', 1), { origin: { kind: 'robot' }, device: robot }),
      attempt(name('a', 2), { device: robot }),
      attempt(name('b', 1), {}, 'cold-root', false),
      attempt(name('c', 1), {}, 'cold-root', false),
      attempt(name('d', 1), { reasons: [{ code: 'recording-edited', text: 'Poses were changed.' }] }),
      attempt(name('e', 1), {}, 'oversize'),
    );
    expect(sheet.notCounted.map((e) => [e.name.trainee, e.notCounted[0]])).toEqual([
      ['a', 'welded by the robot hand'],
      ['a', 'origin says hand, device says robot'],
      ['b', `the same motion as ${name('c', 1)}.json`],
      ['c', `the same motion as ${name('b', 1)}.json`],
      ['d', 'poses were changed'],
    ]);
    expect(sheet).toMatchObject({ counted: 1, files: 6, trainees: 1 });
    expect(sheet.notes).toContain('Nothing that counts from A, B, C, D.');
    const copies = sheetOf(attempt(name('b', 1), {}, 'cold-root', false), attempt('copy', {}, 'cold-root', false));
    expect(copies.notCounted.map((e) => e.notCounted)).toEqual([[`a copy of ${name('b', 1)}.json`]]);
    expect(copies.rows[0]!.attempts).toHaveLength(1);
  });

  it('counts only attempts at the exercises asked for, the ready ones where nothing is said, and lists the rest as practice', () => {
    const ready = { ...attempt(name('b', 1)), exercise: exerciseDigest(exerciseNamed('tee-inverted-v')!) };
    const own = attempt(name('a', 1));
    expect(classSheet({ scored: [own, ready], bad: [] }).rows.map((r) => r.trainee)).toEqual(['B']);
    const named = sheetOf(own, ready);
    expect(named.rows.map((r) => r.trainee)).toEqual(['A']);
    expect(sheetText(named)).toContain(`${name('b', 1)}.json: practice: not one of the exercises asked for`);
  });

  it('hides nothing: files without a trainee, unread ones, and an exercise that is not the one named', () => {
    const lapNamed = attempt(name('a', 1), { exercise: { ...base.result.exercise!, name: 'tee-inverted-v' } });
    const turned = attempt('2026-03-10_b1_b_inverted-v-tee_01', {
      exercise: { ...base.result.exercise!, name: 'tee-inverted-v' },
    });
    const sheet = classSheet(
      {
        scored: [{ ...lapNamed, file: lapNamed.file.replace('_lap_', '_tee-crescent_') }, turned, attempt('loose')],
        bad: [{ file: 'half.json', reason: 'half.json: found a file cut off' }],
        folders: ['old'],
      },
      asked(),
    );
    const text = sheetText(sheet);
    expect(sheet.mismatched.map((e) => e.mismatches)).toEqual([['named tee-crescent, judged as tee-inverted-v']]);
    for (const piece of ['half.json: found a file cut off', 'loose.json', 'old/', '1 that could not be read']) {
      expect(text).toContain(piece);
    }
  });

  it('goes into a spreadsheet without formulas', () => {
    const csv = sheetCsv(sheetOf(attempt(name('ines-calder', 1), { score: 61 }, 'oversize')));
    expect(csv.split('\r\n')[1]).toMatch(/^Ines Calder,free-attempt,mouse,1,0,0,outside,61,outside,61,61,,,oversize,/);
  });

  it('has a name for every fault', () => {
    expect(new Set(adviceCodes.map(faultName)).size).toBe(adviceCodes.length);
  });
});
