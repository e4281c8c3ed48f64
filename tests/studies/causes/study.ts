/** Welds a half of the set and grades the first sentence of each attempt. */
import { judgeAttempt, type Verdict } from '../../../scoring/index.ts';
import { type Grade, gradeOf } from './grade.ts';
import type { Labelled } from './set.ts';
import { weldAttempt } from './weld.ts';

/** One attempt of the set and what was said of it first. */
export interface Row extends Grade {
  bench: string;
  name: string;
  truth: readonly string[];
  verdict: Verdict;
  text: string;
}

/** One attempt welded, judged and graded. */
export function gradeAttempt(attempt: Labelled, seed: number): Row {
  const { recording, welded } = weldAttempt(attempt, seed);
  const result = judgeAttempt(recording, welded);
  const { bench, name, truth } = attempt;
  return { bench, name, truth, verdict: result.verdict, text: result.advice[0]?.text ?? '', ...gradeOf(result, truth) };
}
