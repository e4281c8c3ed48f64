/** How the first sentence stands after its proof: it and what was welded never say opposite things. Made-up trials; the welding is in prove.test.ts. */
import { describe, expect, it } from 'vitest';
import type { Advice, Change, ProvedResult } from '../../../scoring/index.ts';
import { standing } from '../../../scoring/trials/first-proof.ts';

type Proved = ProvedResult['advice'][number];
type Trial = Proved['tried'][number];

const climb: Change = { what: 'travel_mmps', by: 0.4 };
const wire: Change = { what: 'feed_mpmin', by: -0.25 };
const first: Advice = {
  code: 'climbed-slowly',
  text: 'You climbed at 1.6 mm/s.',
  y_mm: 40,
  t_s: null,
  cycle: null,
  side: null,
  change: climb,
};
const at = (reading: number) => ({ reading, verdict: 'outside' as const, y_mm: 40 });
const trial = (change: Change, reading: number): Trial => ({
  change,
  after: at(reading),
  mends: false,
  again: null,
  spoils: [],
});
const tried = (more: Partial<Proved>): Proved => ({
  ...first,
  proved: false,
  untried: null,
  fault: { measure: 'convexity', side: null, unit: 'mm', sense: 'at most', limit: 2, plusMinus: 0.25 },
  before: at(3),
  after: null,
  cuts: null,
  tried: [],
  drill: { name: 'straight-run', title: 'Straight run up a tee, with a shelf' },
  unproved: first.text,
  change: null,
  ...more,
});

describe('the first sentence after its proof', () => {
  it('stands where its own change mends, with the readings before and after', () => {
    const s = standing(first, tried({ proved: true, change: { ...climb, by: 0.6 }, after: at(1.6) }), 'tee');
    expect(s).toMatchObject({ standing: 'proved', says: first.text });
    expect(s.note).toContain('climb 0.6 mm/s faster');
    expect(s.note).toContain('from 3 mm to 1.6 mm');
  });

  it('gives way to the change that does mend', () => {
    const s = standing(first, tried({ proved: true, change: wire, after: at(1.6) }), 'tee');
    expect(s.standing).toBe('replaced');
    expect(s.says).not.toContain('climbed');
    expect(s.says).toBe('0.25 m/min less wire.');
    expect(s.note).toContain('Convexity 3 mm at 40 mm; at most 2 mm');
    expect(s.note).toContain('from 3 mm to 1.6 mm');
  });

  it('stands where nothing mends alone but its own change leads there, and says so', () => {
    const s = standing(first, tried({ tried: [trial(climb, 2.4), trial(wire, 2.6)] }), 'tee');
    expect(s).toMatchObject({ standing: 'not mended', says: first.text });
    expect(s.note).toContain('No single change mends it: 2 tried, nearest was climb 0.4 mm/s faster (2.4 mm)');
  });

  it('gives way where its own change made the fault worse', () => {
    const s = standing(first, tried({ tried: [trial(climb, 3.3)] }), 'tee');
    expect(s.standing).toBe('replaced');
    expect(s.says).not.toContain('climbed');
    expect(s.note).toContain('No single change mends it');
  });
});
