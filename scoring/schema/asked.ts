import type { Exercise } from './exercise.ts';
import { madeOne } from './leeway.ts';

/** Stands for a machine that the trainee sets by ear. */
const BY_EAR: Exercise['process'] = {
  wire_mm: 0.9,
  feed_mpmin: 0,
  volts_V: 0,
  gas: 'M21-ArC-18',
  tip_mm: 0,
  nozzle_mm: 0,
};

/**
 * An exercise as everybody is asked it: what was dealt to one trainee put back (`piece`), what is left to the trainee (`settings`) made one
 * for all. Two attempts were asked for the same where these agree; it is for comparing, not for welding.
 */
export function asAsked(exercise: Exercise): Exercise {
  const base = withoutPiece(exercise);
  const { settings, free, process, hold } = base;
  if (settings === 'own process') return { ...base, process: BY_EAR };
  if (settings === 'fixed' || free === undefined) return base;
  return { ...base, process: madeOne(process, free), hold: madeOne(hold, free) };
}

/** The exercise before a piece was dealt; itself where none was. */
export function withoutPiece(exercise: Exercise): Exercise {
  const { piece, ...rest } = exercise;
  if (piece === undefined) return exercise;
  const { gap_mm, startTemp_C, cuts_mm } = piece.from;
  return { ...rest, joint: { ...rest.joint, gap_mm, startTemp_C }, cuts_mm };
}
