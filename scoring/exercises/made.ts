import { profileNamed, profiles } from '../profiles/ready.ts';
import type { Exercise } from '../schema/exercise.ts';
import { checkExercise } from '../schema/exercise-check.ts';
import { describeFound, InputError } from '../schema/problem.ts';
import { FREE_NAME } from './free.ts';
import { exerciseNamed, exercises } from './ready.ts';
import { judgedOf, targetFor, thirds } from './workshop.ts';

/** Name of a file an exercise is saved in. */
export function exerciseFileName({ name }: Exercise): string {
  return `${name}.exercise.json`;
}

/**
 * A draft to begin with: another exercise under a name that is free.
 * @param taken names that are not free, beside those of the ready exercises
 */
export function draftFrom(exercise: Exercise, taken: readonly string[]): Exercise {
  const used = new Set([...taken, FREE_NAME, ...exercises.map((e) => e.name)]);
  const stem = (exercise.name === FREE_NAME ? 'own' : exercise.name).replace(/-\d+$/, '').slice(0, 50);
  let n = 2;
  while (used.has(`${stem}-${n}`)) n++;
  return { ...exercise, name: `${stem}-${n}` };
}

/** What of an exercise follows from the rest: bands around the weave, what devices hold, how far up the weave goes. */
export function withConsequences(draft: Exercise): Exercise {
  const { start_mm } = draft.demonstration;
  const demonstration = { ...draft.demonstration, length_mm: draft.joint.length_mm - 2 * start_mm };
  const { tipToWork_mm, workAngle_deg, travelAngle_deg } = demonstration;
  return {
    ...draft,
    demonstration,
    target: targetFor(demonstration),
    hold: { tipToWork_mm, workAngle_deg, travelAngle_deg },
  };
}

/** Judged length and cuts as the workshop's own exercises have them on a joint of this length. */
export function usualLengths(length_mm: number): Pick<Exercise, 'judged' | 'cuts_mm'> {
  const judged = judgedOf(length_mm);
  return { judged, cuts_mm: thirds(judged) };
}

/**
 * An exercise made by somebody, checked as a file of it would be; besides, its name must be its own and its profile one that is here.
 * @throws InputError naming every field that does not fit
 */
export function checkMade(draft: unknown, file = 'exercise'): Exercise {
  const exercise = checkExercise(draft, file);
  if (exercise.name === FREE_NAME || exerciseNamed(exercise.name) !== undefined) {
    throw new InputError(file, [
      {
        path: 'name',
        found: describeFound(exercise.name),
        allowed: 'a name of its own; that one belongs to an exercise that comes with Toehold',
      },
    ]);
  }
  const ready = profileNamed(exercise.profile) !== undefined;
  if (exercise.limits === undefined && !ready) {
    throw new InputError(file, [
      {
        path: 'profile',
        found: describeFound(exercise.profile),
        allowed: `${profiles.map((p) => p.name).join(', ')}, or one whose limits the exercise carries`,
      },
    ]);
  }
  if (exercise.limits !== undefined && ready) {
    throw new InputError(file, [
      {
        path: 'limits.name',
        found: describeFound(exercise.limits.name),
        allowed: 'a name of its own; that one belongs to a profile that comes with Toehold',
      },
    ]);
  }
  return exercise;
}
