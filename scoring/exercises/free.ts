import { type Exercise, exerciseSchema } from '../schema/exercise.ts';
import { parseWith } from '../schema/problem.ts';
import { lap } from './weaves.ts';
import { exercise, targetFor, vee } from './workshop.ts';

/** Name of an exercise made up on the spot. */
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
    aids: { pacer: true },
  });
  // The bands are the taught ones, not the chosen weave's own: a weave without pauses is still told about them.
  const { pauseA_s, pauseB_s, tipToWork_mm, workAngle_deg } = made.joint.kind === 'lap' ? lap.demonstration : vee;
  const taught = { pauseA_s, pauseB_s, tipToWork_mm, workAngle_deg };
  const target = targetFor({ ...made.demonstration, ...taught });
  return parseWith(exerciseSchema, { ...made, target }, 'own exercise');
}
