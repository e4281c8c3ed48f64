import type { Exercise } from '../schema/exercise.ts';
import type { ExerciseInResult } from '../schema/result.ts';
import { exerciseNamed } from './ready.ts';

/** What of an exercise goes into a result. */
export function exerciseInResult(e: Exercise): ExerciseInResult {
  return {
    name: e.name,
    title: e.title,
    ready: exerciseNamed(e.name) !== undefined,
    asked: e.asked,
    judged: e.judged,
    cuts_mm: e.cuts_mm,
  };
}
