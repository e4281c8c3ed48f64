import { z } from 'zod';
import { ENGINE_VERSION } from '../../engine/index.ts';
import { type Exercise, exerciseSchema, InputError, type Profile, profileOf, profileSchema } from '../index.ts';
import { SCORING_VERSION } from '../version.ts';
import { digestOf } from './digests.ts';

/** What a score depends on besides attempt and judge. */
export interface Versions {
  engine: string;
  scoring: string;
}

/** This program's. */
export const VERSIONS: Versions = { engine: ENGINE_VERSION, scoring: SCORING_VERSION };

const judgeSchema = z.strictObject({ exercise: exerciseSchema, profile: profileSchema });

/** An exercise with its acceptance profile as they stood when the exercise was assigned, and their common digest. */
export interface JudgeCopy {
  digest: string;
  content: string;
}

/**
 * The judge of an exercise.
 * @param profile the school's own; left out: the one the exercise names
 * @throws InputError when the exercise names a profile that does not come with Toehold
 */
export function judgeOf(exercise: Exercise, profile: Profile | undefined = profileOf(exercise)): JudgeCopy {
  if (profile === undefined) {
    throw new InputError(`exercise ${exercise.name}`, [
      {
        path: 'exercise.profile',
        found: JSON.stringify(exercise.profile),
        allowed: 'the name of an acceptance profile that comes with Toehold',
      },
    ]);
  }
  const content = JSON.stringify({ exercise, profile });
  return { digest: digestOf(content), content };
}

/** A kept judge understood. @throws ZodError when it was written by a version whose exercises were others */
export function readJudge(content: string): { exercise: Exercise; profile: Profile } {
  return judgeSchema.parse(JSON.parse(content));
}
