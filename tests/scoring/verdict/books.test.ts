import { describe, expect, it } from 'vitest';
import { attemptOf, judgeAttempt, resultSchema } from '../../../scoring/index.ts';
import { reportLines } from '../../../scoring/words/result.ts';
import { weld } from '../welds.ts';

describe('accounts that do not close', () => {
  const recording = weld({ joint: { length_mm: 30 } });
  const attempt = attemptOf(recording);
  const judged = (accounts: Partial<typeof attempt.accounts>) =>
    judgeAttempt(recording, { ...attempt, accounts: { ...attempt.accounts, ...accounts } });
  const codes = (accounts: Partial<typeof attempt.accounts>) => judged(accounts).reasons.map((r) => r.code);

  it('of a real weld close, and nothing is said', () => {
    expect(attempt.accounts.energyError).toBeLessThan(1e-4);
    expect(codes({})).not.toContain('books-open');
  });

  it.each([
    ['heat', { energyError: 0.002 }],
    ['metal', { massError: 2e-6 }],
    ['no number at all', { energyError: Number.NaN }],
  ])('give no verdict: %s', (_name, accounts) => {
    expect(codes(accounts)).toContain('books-open');
    const result = judged(accounts);
    expect(result.verdict).toBe('no verdict');
    // Nothing is read off such a weld, advised about it or printed of it, and what is written still fits its own format.
    expect([result.lines, result.advice, result.bead.stations, result.bead.mean]).toEqual([[], [], [], null]);
    expect(Object.values(result.motion).filter((value) => typeof value === 'number' && value !== 0)).toEqual([]);
    const printed = reportLines(result, 'tee').join('\n');
    expect(printed).toContain('cannot account for its heat or metal');
    expect(printed).not.toMatch(/First:|legs|Hand:|Machine:|Metal:|no bead/i);
    expect(resultSchema.safeParse(JSON.parse(JSON.stringify(result))).error).toBeUndefined();
  });
});
