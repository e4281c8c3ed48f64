import type { Exercise } from '../../../scoring/index.ts';
import { GOOD_IN_A_ROW, isTestExercise, levelOf, type PastAttempt } from '../session/level.ts';
import { RETENTION_STEPS, type Retention, type RetentionStep } from './record.ts';

const HOUR_MS = 3_600_000;
const DAY_MS = 24 * HOUR_MS;

/**
 * How long after an exercise had been learnt each test is due: the next day even where that is at an earlier hour, a week, a fortnight. Learning is
 * told by what is left after a while without practice or help, not by how the practice went (Salmoni, Schmidt and Walter, Psychological Bulletin 95,
 * 1984, 355-386; Winstein and Schmidt, J. Exp. Psychol. LMC 16, 1990, 677-691; both from memory).
 */
const AFTER_MS: Record<RetentionStep, number> = { day: 16 * HOUR_MS, week: 7 * DAY_MS, fortnight: 14 * DAY_MS };

/** A test that is due, or when the next one will be. */
export interface Due {
  exercise: Exercise;
  step: RetentionStep;
  base_ms: number;
  due_ms: number;
  now: boolean;
}

/** When an exercise had been learnt first: a test passed, or the guides gone. Null: not yet. */
export function learntAt(
  attempts: readonly PastAttempt[],
  exercise: Pick<Exercise, 'name' | 'aids'>,
  trainee: string | null,
): number | null {
  const own = attempts
    .filter((a) => a.own && a.exercise === exercise.name && (a.trainee ?? null) === trainee)
    .sort((a, b) => a.made_ms - b.made_ms);
  if (isTestExercise(exercise)) return own.find((a) => a.verdict === 'within')?.made_ms ?? null;
  for (let n = GOOD_IN_A_ROW; n <= own.length; n++)
    if (levelOf(own.slice(0, n), exercise, trainee).kind === 'without guides') return own[n - 1].made_ms;
  return null;
}

/** The next test of each exercise that was learnt: the first not yet welded whose time is not past. One missed until the next was due has lapsed. */
export function dueOf(
  attempts: readonly PastAttempt[],
  tests: readonly Retention[],
  exercises: readonly Exercise[],
  trainee: string | null,
  now_ms: number,
): Due[] {
  return exercises.flatMap((exercise) => {
    const base_ms = learntAt(attempts, exercise, trainee);
    if (base_ms === null) return [];
    const done = tests.filter((t) => t.exercise === exercise.name && t.trainee === trainee).map((t) => t.step);
    for (const [k, step] of RETENTION_STEPS.entries()) {
      const next = RETENTION_STEPS[k + 1];
      const lapsed = next !== undefined && now_ms >= base_ms + AFTER_MS[next];
      if (done.includes(step) || lapsed) continue;
      const due_ms = base_ms + AFTER_MS[step];
      return [{ exercise, step, base_ms, due_ms, now: now_ms >= due_ms }];
    }
    return [];
  });
}

/** Attempts that were no tests after a while: those the level, the charts and the best are told from. */
export function practised<A extends { id: string }>(attempts: readonly A[], tests: readonly Retention[]): A[] {
  const apart = new Set(tests.map((t) => t.attempt));
  return attempts.filter((a) => !apart.has(a.id));
}
