/** What the ready exercises are held to, and how an exercise is set before it is welded. */
import { type Exercise, exerciseNamed } from '../../../scoring/index.ts';

/** Hands of each kind an exercise is welded with. */
export const SEEDS = 30;
/** Share of decent hands that are within, at least; of poor ones, at most. */
export const DECENT_WITHIN = 0.8;
export const POOR_WITHIN = 0.05;

/** Whose settings a trainee with a good ear ends at, where the exercise leaves the machine to the trainee. */
const BY_EAR = 'tee-inverted-v';

/** The machine as it is set: where that is left to the trainee, a decent hand has set it. */
export function machineFor(exercise: Exercise): Exercise['process'] {
  const set = exerciseNamed(BY_EAR);
  if (set === undefined) throw new Error(`no ready exercise ${BY_EAR}`);
  return exercise.settings === 'own process' ? set.process : exercise.process;
}
