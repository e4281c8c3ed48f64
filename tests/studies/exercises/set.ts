/** What the ready exercises are held to, and how an exercise is set before it is welded. */
import { type Exercise, exerciseNamed } from '../../../scoring/index.ts';

/** Seeds of the hands the figures are made of. Seeds 1 to 30 were looked at while the exercises were set, and count for nothing. */
export const FIRST_SEED = 101;
/** Decent and poor hands an exercise is welded with, and hands on a mouse. */
export const SEEDS = 30;
export const MOUSE_SEEDS = 10;
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
