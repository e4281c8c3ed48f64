import { type Exercise, FREE_NAME, type Verdict } from '../../../scoring/index.ts';

/** What the level of an exercise is told from: kept attempts, whoever made them. */
export interface PastAttempt {
  made_ms: number;
  /** Name of its exercise; null for none. */
  exercise: string | null;
  /** Null while it has not been judged. */
  verdict: Verdict | null;
  /** Welded in this browser by hand; robots and opened files say nothing about the trainee. */
  own: boolean;
  /** Who welded it; null or left out where nobody said. */
  trainee?: string | null | undefined;
}

/** How much an exercise is helped along. */
export type Level =
  /** An exercise that allows no guide. */
  | { kind: 'test' }
  /** The user's own joint and settings: guides as set. */
  | { kind: 'free' }
  /** `good`: good attempts in a row so far. */
  | { kind: 'with guides'; good: number }
  /** `bad`: bad attempts in a row so far. */
  | { kind: 'without guides'; bad: number };

/** Good attempts in a row that take the guides away, and bad ones in a row that bring them back. */
export const GOOD_IN_A_ROW = 3;
export const BAD_IN_A_ROW = 2;

/** A test is welded on one's own: an exercise that allows no guide. */
export function isTestExercise({ aids }: Pick<Exercise, 'aids'>): boolean {
  return !aids.pacer && !aids.beat && !aids.toeMarks;
}

/** Attempts of a trainee at an exercise that allows so many; null where it allows any number. Robots and opened files use none up. */
export function attemptsUsed(
  attempts: readonly PastAttempt[],
  { name, attempts: allowed }: Pick<Exercise, 'name' | 'attempts'>,
  trainee: string | null,
): { used: number; allowed: number } | null {
  if (allowed === undefined) return null;
  const used = attempts.filter((a) => a.own && a.exercise === name && (a.trainee ?? null) === trainee).length;
  return { used, allowed };
}

/**
 * The level of an exercise after what was welded so far. Within is good, outside is bad; too close to call and no verdict count neither
 * way and break no row. Several may share a browser: each has a level of their own. The same attempts give the same level in whatever order they are handed over.
 */
export function levelOf(
  attempts: readonly PastAttempt[],
  exercise: Pick<Exercise, 'name' | 'aids'>,
  trainee: string | null = null,
): Level {
  if (isTestExercise(exercise)) return { kind: 'test' };
  if (exercise.name === FREE_NAME) return { kind: 'free' };
  let level: Level = { kind: 'with guides', good: 0 };
  const own = attempts.filter(
    (attempt) => attempt.own && attempt.exercise === exercise.name && (attempt.trainee ?? null) === trainee,
  );
  for (const { verdict } of [...own].sort((a, b) => a.made_ms - b.made_ms)) level = after(level, verdict);
  return level;
}

function after(level: Level, verdict: Verdict | null): Level {
  if (verdict !== 'within' && verdict !== 'outside') return level;
  if (level.kind === 'with guides') {
    if (verdict === 'outside') return { kind: 'with guides', good: 0 };
    return level.good + 1 >= GOOD_IN_A_ROW
      ? { kind: 'without guides', bad: 0 }
      : { kind: 'with guides', good: level.good + 1 };
  }
  if (level.kind === 'without guides') {
    if (verdict === 'within') return { kind: 'without guides', bad: 0 };
    return level.bad + 1 >= BAD_IN_A_ROW
      ? { kind: 'with guides', good: 0 }
      : { kind: 'without guides', bad: level.bad + 1 };
  }
  return level;
}
