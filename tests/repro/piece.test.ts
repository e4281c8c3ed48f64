/** A piece of another length than its exercise asks for, as it was heard. */
import { describe, expect, it } from 'vitest';
import { exerciseNamed } from '../../scoring/index.ts';
import { judge, weld } from '../scoring/welds.ts';

describe('a piece of 30 mm welded for an exercise of 90', () => {
  const asked = exerciseNamed('tee-inverted-v')!;
  const file = weld({ joint: { length_mm: 30 }, process: asked.process, weave: { travel_mmps: 3, shelf_s: 0.3 } });
  const result = judge(file, { exercise: asked });
  const said = [...result.reasons, ...result.advice, ...result.notes].map((x) => x.text);

  it('was judged over the length of the exercise, 58 mm, and not over its own', () => {
    expect(result.bead.stations.length + result.bead.bare_mm.length).toBe(30 - asked.judged.from_mm + 1);
    const lengths = said.flatMap((text) => [...text.matchAll(/(\d+) mm of it|over (\d+) mm/g)]);
    for (const [, a, b] of lengths) expect(Number(a ?? b)).toBeLessThanOrEqual(30 - asked.judged.from_mm + 1);
    for (const text of said) expect(text).not.toMatch(/to 80 mm/);
  });

  it('was told so by the name of a field', () => {
    expect(said).toContain("The joint is not the exercise's: its length is 30 mm instead of 90 mm.");
    for (const text of said) expect(text).not.toMatch(/[a-z]_(mm|C|V|mpmin|s)\b/);
  });
});
