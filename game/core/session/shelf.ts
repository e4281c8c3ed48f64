import { z } from 'zod';
import type { Recording } from '../../../engine/index.ts';
import {
  type Coupon,
  checkRecording,
  type Exercise,
  InputError,
  parseWith,
  type Result,
  verdicts,
} from '../../../scoring/index.ts';
import { isTestExercise, type PastAttempt } from './level.ts';
import { messageOf } from './problem.ts';

/** Ids of attempts opened from a file begin with this. */
export const FILE_ID = 'file-';

/** A day that there is: what lies outside, no calendar can write (ECMAScript, time values). ms since the epoch. */
export const timeSchema = z.number().min(0).max(8.64e15);

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

/** A line of a result as the logbook draws it; of several on one measure the one nearest to its limit, or furthest past it. */
const readingSchema = z.object({
  measure: z.string(),
  unit: z.string(),
  reading: z.number(),
  plusMinus: z.number(),
  limit: z.number(),
  sense: z.enum(['at most', 'at least']),
});

export type LoggedReading = z.infer<typeof readingSchema>;

/** A result was made by an earlier version, or comes out of a file: what of it cannot be drawn is left out, and the attempt is kept all the same. */
const linesSchema = z.array(readingSchema).catch([]);
const scoreSchema = z.number().min(0).max(100).nullable().catch(null);

const HELP = ['robot', 'test', 'with guides', 'without guides'] as const;

/**
 * What the shelf shows of an attempt, and what the level of its exercise is told from. Kept beside the attempts themselves, so that
 * listing reads no recording; made anew from the attempt where it is missing or spoilt.
 */
const entrySchema = z.object({
  id: z.string(),
  made_ms: timeSchema,
  title: z.string().nullable(),
  exercise: z.string().nullable(),
  verdict: z.enum(verdicts).nullable(),
  own: z.boolean(),
  /** Who welded it; null or left out where nobody said. */
  trainee: z.string().nullable().optional(),
  /** Of 100, for the user's own line over attempts; null or left out where there is none. */
  score: z.number().nullable().optional(),
  helped: z.enum(HELP),
  /** For the logbook; left out in entries of before there was one. */
  readings: z.array(readingSchema).optional(),
  /** What is wrong with the record, or null. Such a record is kept and can be saved as it is. */
  damaged: z.string().nullable(),
});

export type AttemptEntry = z.infer<typeof entrySchema> & PastAttempt;

/** A kept entry, or null where it has to be made anew. */
export function readEntry(kept: unknown): AttemptEntry | null {
  const found = entrySchema.safeParse(kept);
  return found.success ? found.data : null;
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
    score: scoreSchema.parse(result?.score),
    own: hand && !id.startsWith(FILE_ID),
    trainee: recording.trainee?.name ?? null,
    helped: helpOf(recording, exercise),
    readings: loggedReadings(linesSchema.parse(result?.lines)),
    damaged: null,
  };
}

/** One reading a measure, the worst of its lines. */
function loggedReadings(lines: readonly LoggedReading[]): LoggedReading[] {
  const worst = new Map<string, LoggedReading>();
  for (const { measure, unit, reading, plusMinus, limit, sense } of lines) {
    const here = { measure, unit, reading, plusMinus, limit, sense };
    const known = worst.get(measure);
    if (!known || room(here) < room(known)) worst.set(measure, here);
  }
  return [...worst.values()];
}

/** How far a reading is on the right side of its limit; below 0 past it. */
function room({ sense, reading, limit }: LoggedReading): number {
  return sense === 'at most' ? limit - reading : reading - limit;
}

/** The entry of a record from which nothing, or nothing to be relied on, can be read. */
export function damagedEntry(id: string, kept: unknown, why: string): AttemptEntry {
  const { made_ms, title } = (typeof kept === 'object' && kept !== null ? kept : {}) as Partial<StoredAttempt>;
  return {
    id,
    made_ms: timeSchema.catch(0).parse(made_ms),
    title: typeof title === 'string' ? title : null,
    exercise: null,
    verdict: null,
    own: false,
    helped: 'without guides',
    damaged: why,
  };
}

const frame = z.object({
  id: z.string(),
  made_ms: timeSchema,
  // Records of before titles were left out for attempts without an exercise.
  title: z.string().nullable(),
  result: z.looseObject({ verdict: z.enum(verdicts) }).nullable(),
});

/**
 * An attempt out of whatever the store holds under its id; recordings of an older format are brought up to the present one.
 * @throws InputError naming what is wrong
 */
export function readAttempt(id: string, kept: unknown): StoredAttempt {
  parseWith(frame, kept, id);
  const { recording } = kept as StoredAttempt;
  return { ...(kept as StoredAttempt), recording: checkRecording(recording, id) as Recording };
}

/** The entry of a record, checked as far as the list needs it; a record that does not bear it gets a damaged one. */
export function entryFrom(id: string, kept: unknown): AttemptEntry {
  try {
    return entryOf(readAttempt(id, kept));
  } catch (error) {
    return damagedEntry(id, kept, whyDamaged(error));
  }
}

/** The first thing wrong, without the id in front of it. */
export function whyDamaged(error: unknown): string {
  if (!(error instanceof InputError)) return messageOf(error);
  const [{ path, found }] = error.problems;
  return path === '' ? found : `${path}: ${found}`;
}

/** What help an attempt was welded with, from what is written in it. */
export function helpOf(
  { origin, aids }: Pick<Recording, 'origin' | 'aids'>,
  exercise: Pick<Exercise, 'aids'> | null,
): AttemptEntry['helped'] {
  if (origin.kind === 'robot') return 'robot';
  if (aids.pacer || aids.beat || aids.toeMarks) return 'with guides';
  return exercise && isTestExercise(exercise) ? 'test' : 'without guides';
}
