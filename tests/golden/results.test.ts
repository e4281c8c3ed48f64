import { describe, expect, it } from 'vitest';
import { WHOLE } from '../support/share.ts';
import { type GoldenResults, resultsNow, resultsQuarrel, storedResults } from './results.ts';

describe('golden results', () => {
  it(`are what this scoring version makes of ${WHOLE ? 'the golden attempts' : 'one of the golden attempts'}`, async () => {
    expect(resultsQuarrel(storedResults(), await resultsNow(WHOLE), !WHOLE)).toBeNull();
  }, 600_000);

  const stored = storedResults();
  const name = Object.keys(stored.files).find((key) => key.endsWith('result'))!;
  const changed = (change: (g: GoldenResults) => void): GoldenResults => {
    const copy = structuredClone(stored);
    change(copy);
    return copy;
  };

  it('name a digit that moves without the version', () => {
    const now = changed((g) => ((g.files[name] as { score: number }).score += 1));
    expect(resultsQuarrel(stored, now)).toMatch(/SCORING_VERSION stayed.*score: \d+ is now \d+/);
  });

  it('name a version that moves without results', () => {
    expect(
      resultsQuarrel(
        stored,
        changed((g) => (g.scoring = '99.0.0')),
      ),
    ).toMatch(/no result moved/);
  });
});
