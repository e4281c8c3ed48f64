/**
 * What decent and poor hands come to at every ready exercise. What the study has welded with these versions is taken from its figures; the rest
 * is welded here, and one of each kind is always welded again.
 */
import { describe, expect, it } from 'vitest';
import { type Exercise, exercises } from '../../scoring/index.ts';
import { Figures } from '../studies/exercises/figures.ts';
import { decentHand, type Hand, poorHand, shownHand } from '../studies/exercises/hands.ts';
import { tightest } from '../studies/exercises/page.ts';
import { DECENT_WITHIN, POOR_WITHIN, SEEDS } from '../studies/exercises/set.ts';
import { type Came, weldWith } from '../studies/exercises/study.ts';

const figures = Figures.read();
const cameTo = (e: Exercise, hand: Hand): Came => figures.of(e, hand) ?? weldWith(e, hand);
const within = (all: readonly Came[]): number => all.filter((c) => c.verdict === 'within').length / all.length;
const seeds = Array.from({ length: SEEDS }, (_, k) => k + 1);

describe.each(exercises.map((e) => [e.name, e] as const))('%s', (_, e) => {
  it('is shown within for certain, with no lump and a filled crater', () => {
    const shown = weldWith(e, shownHand(e));
    expect(shown.verdict).toBe('within');
    expect(tightest(shown)!.room).toBeGreaterThanOrEqual(1);
    expect(shown.crater_mm).toBeLessThan(1);
    const kept = figures.of(e, shownHand(e));
    if (kept !== null) expect(shown).toEqual(kept);
  });

  it(`is within for ${100 * DECENT_WITHIN} % of decent hands`, () => {
    const all = seeds.map((seed) => cameTo(e, decentHand(e, seed)));
    const missed = all.filter((c) => c.verdict !== 'within').map((c) => `${c.seed}: ${tightest(c)?.name}`);
    expect(within(all), missed.join(', ')).toBeGreaterThanOrEqual(DECENT_WITHIN);
  });

  it(`is within for at most ${100 * POOR_WITHIN} % of poor ones`, () => {
    const all = seeds.map((seed) => cameTo(e, poorHand(e, seed)));
    const passed = all.filter((c) => c.verdict === 'within').map((c) => `${c.seed}: ${c.habit}`);
    expect(within(all), passed.join(', ')).toBeLessThanOrEqual(POOR_WITHIN);
  });
});
