import type { Recording } from '../../../engine/index.ts';
import type { Coupon, Exercise, Result } from '../../../scoring/index.ts';
import { isTestExercise, type PastAttempt } from './level.ts';

/** Ids of attempts opened from a file begin with this. */
export const FILE_ID = 'file-';

/** An attempt as this browser keeps it. */
export interface StoredAttempt {
  id: string;
  /** ms since the epoch. */
  made_ms: number;
  /** Title of its exercise; null for an attempt without one. */
  title: string | null;
  recording: Recording;
  result: Result | null;
}

/** What the shelf shows of an attempt, and what the level of its exercise is told from. */
export interface AttemptEntry extends PastAttempt {
  id: string;
  title: string | null;
  helped: 'robot' | 'test' | 'with guides' | 'without guides';
}

/** A real coupon kept beside an attempt. */
export interface StoredCoupon {
  id: string;
  /** Id of the attempt it belongs to. */
  attempt: string;
  made_ms: number;
  coupon: Coupon;
  /** The photograph; null when only its marks were opened. */
  picture: Blob | null;
}

export function entryOf({ id, made_ms, title, recording, result }: StoredAttempt): AttemptEntry {
  const exercise = recording.exercise as Exercise | null;
  const hand = recording.origin.kind === 'hand';
  return {
    id,
    made_ms,
    title,
    exercise: exercise?.name ?? null,
    verdict: result?.verdict ?? null,
    own: hand && !id.startsWith(FILE_ID),
    helped: helpOf(recording, exercise),
  };
}

/** What help an attempt was welded with, from what is written in it. */
export function helpOf(
  { origin, aids }: Pick<Recording, 'origin' | 'aids'>,
  exercise: Pick<Exercise, 'aids'> | null,
): AttemptEntry['helped'] {
  if (origin.kind === 'robot') return 'robot';
  if (aids.ghost || aids.beat || aids.toeMarks) return 'with guides';
  return exercise && isTestExercise(exercise) ? 'test' : 'without guides';
}
