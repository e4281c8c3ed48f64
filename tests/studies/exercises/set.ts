/** What the ready exercises are held to, and how an exercise is set before it is welded. */
import { type Exercise, exerciseNamed } from '../../../scoring/index.ts';

/** Hands of each kind an exercise is welded with. */
export const SEEDS = 30;
/** Share of decent hands that are within, at least; of poor ones, at most. */
export const DECENT_WITHIN = 0.8;
export const POOR_WITHIN = 0.05;

/** Whose settings a trainee with a good ear ends at, where the exercise leaves the machine to the trainee. */
const BY_EAR = 'tee-inverted-v';

/** The exercise as it is welded: where the machine is the trainee's to set, a decent hand has set it. */
export function setByHand(exercise: Exercise): Exercise {
  const set = exerciseNamed(BY_EAR);
  if (set === undefined) throw new Error(`no ready exercise ${BY_EAR}`);
  return exercise.settings === 'own process' ? { ...exercise, process: set.process } : exercise;
}
