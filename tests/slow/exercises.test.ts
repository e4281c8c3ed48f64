/**
 * What decent and poor hands come to at every ready exercise. The study's figures are held to their aims as far as they were made with these versions;
 * the demonstrations are always welded again, and where there are no figures yet, the first few hands.
 */
import { describe, expect, it } from 'vitest';
import { type Exercise, exercises } from '../../scoring/index.ts';
import { Figures } from '../studies/exercises/figures.ts';
import { decentHand, type Hand, mouseHand, poorHand, shownHand } from '../studies/exercises/hands.ts';
import { tightest } from '../studies/exercises/page.ts';
import { DECENT_WITHIN, FIRST_SEED, POOR_WITHIN, SEEDS } from '../studies/exercises/set.ts';
import { type Came, weldWith } from '../studies/exercises/study.ts';

const figures = Figures.read();
const within = (all: readonly Came[]): number => all.filter((c) => c.verdict === 'within').length / all.length;
const seeds = Array.from({ length: SEEDS }, (_, k) => FIRST_SEED + k);

/** What is known of a kind of hand; where less is known than `least`, the first seeds are welded. */
function known(e: Exercise, handOf: (e: Exercise, seed: number) => Hand, least: number): Came[] {
  const kept = seeds.flatMap((seed) => figures.of(e, handOf(e, seed)) ?? []);
  if (kept.length >= least) return kept;
  return seeds.slice(0, least).map((seed) => weldWith(e, handOf(e, seed)));
}

describe.each(exercises.map((e) => [e.name, e] as const))('%s', (_, e) => {
  it('is shown within for certain, with no lump and a filled crater', () => {
    const shown = weldWith(e, shownHand(e));
    expect(shown.verdict).toBe('within');
    expect(tightest(shown)!.room).toBeGreaterThanOrEqual(1);
    expect(shown.crater_mm).toBeLessThan(1);
    const kept = figures.of(e, shownHand(e));
    if (kept !== null) expect(shown).toEqual(kept);
  });

  it(`is within for ${100 * DECENT_WITHIN} % of decent hands, with a pen and on a mouse`, () => {
    for (const all of [known(e, decentHand, 2), known(e, mouseHand, 0)]) {
      const missed = all.filter((c) => c.verdict !== 'within').map((c) => `${c.seed}: ${tightest(c)?.name}`);
      if (all.length > 0) expect(within(all), missed.join(', ')).toBeGreaterThanOrEqual(DECENT_WITHIN);
    }
  });

  it(`is within for at most ${100 * POOR_WITHIN} % of poor ones`, () => {
    const all = known(e, poorHand, 1);
    const passed = all.filter((c) => c.verdict === 'within').map((c) => `${c.seed}: ${c.habit}`);
    expect(within(all), passed.join(', ')).toBeLessThanOrEqual(POOR_WITHIN);
  });
});
