import type { Exercise } from '../schema/exercise.ts';
import type { Profile } from '../schema/profile.ts';
import { profileNamed } from './ready.ts';

/** The acceptance profile an exercise or a coupon is judged by: the one it carries, else the ready one it names; undefined when there is neither. */
export function profileOf(exercise: Pick<Exercise, 'limits' | 'profile'>): Profile | undefined {
  return exercise.limits ?? profileNamed(exercise.profile);
}
