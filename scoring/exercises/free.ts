import { type Exercise, exerciseSchema, parseWith } from '../schema/index.ts';
import { exercise } from './workshop.ts';

export const FREE_NAME = 'free-attempt';

/** What is chosen; anything left out is as in the workshop's exercises. */
export interface FreeChoice {
  joint: Partial<Exercise['joint']>;
  process: Partial<Exercise['process']>;
  weave: Partial<Exercise['demonstration']>;
  leg_mm: number;
  profile: string;
}

/**
 * An exercise made up on the spot: own joint, size and settings. Judged over the whole length but the ends, all aids allowed.
 * @throws InputError when the choice does not make an exercise
 */
export function freeExercise(choice: FreeChoice): Exercise {
  const made = exercise({
    name: FREE_NAME,
    title: 'Own joint and settings',
    story: '',
    teaches: '',
    joint: choice.joint,
    process: choice.process,
    weave: choice.weave,
    settings: 'fixed',
    asked: {
      kind: 'leg',
      size_mm: choice.leg_mm,
      atMost_mm: Math.round(choice.leg_mm * 1.4 * 10) / 10,
      edgeBack_mm: null,
    },
    profile: choice.profile,
    aids: { ghost: true },
  });
  return parseWith(exerciseSchema, made, 'own exercise');
}
