/** A few attempts of the labelled set welded and judged: causes that only the weld shows. The whole half is in the slow suite. */
import { describe, expect, it } from 'vitest';
import { MADE_ON } from '../../studies/causes/made-on.ts';
import { gradeAttempt } from '../../studies/causes/study.ts';

const FEW = ['3 V and 1.2 m/min lower', 'arc out 1.2 s at 50', 'restart on the cold crater', 'gives up at 60'];
const few = FEW.map((name) => MADE_ON.find((a) => a.name === name && a.bench === 'tee')!);

describe('the first sentence of a welded attempt', () => {
  it.each(few.map((a) => [a.name, a] as const))('%s: names what was done', (_, attempt) => {
    const row = gradeAttempt(attempt, 5);
    expect(row.grade, row.text).toBe('right');
  });
});
