import { describe, expect, it } from 'vitest';
import { attemptOf, judgeAttempt } from '../../../scoring/index.ts';
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
    expect(judged(accounts).verdict).toBe('no verdict');
  });
});
