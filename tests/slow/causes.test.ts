/** The half of the labelled set that advice was made on, welded whole. The half kept apart is run by `npm run causes` alone. */
import { describe, expect, it } from 'vitest';
import { MADE_ON } from '../studies/causes/made-on.ts';
import { gradeAttempt } from '../studies/causes/study.ts';

/** Aims: named right nine times in ten, named wrong at most one time in fifty. */
const RIGHT = 0.9;
const WRONG = 0.02;

describe('first sentences on the half they were made on', () => {
  it(`name the cause in ${100 * RIGHT} % and another in at most ${100 * WRONG} %`, () => {
    const rows = MADE_ON.map((attempt, k) => gradeAttempt(attempt, 40 + k));
    const missed = rows.filter((r) => !r.grade.startsWith('right')).map((r) => `${r.bench}, ${r.name}: ${r.text}`);
    const wrong = rows.filter((r) => r.grade === 'wrong').length;
    expect(missed.length / rows.length, missed.join('\n')).toBeLessThanOrEqual(1 - RIGHT);
    expect(wrong / rows.length, missed.join('\n')).toBeLessThanOrEqual(WRONG);
  });
});
