import { z } from 'zod';
import { EngineError } from '../../engine/index.ts';
import { checkWork, MOST_WORK_S } from '../attempt/work.ts';
import { digest, exerciseDigest } from '../exercises/digest.ts';
import { traineeSchema } from '../schema/bench.ts';
import { textOf } from '../schema/bytes.ts';
import { clean } from '../schema/clean.ts';
import type { Exercise } from '../schema/exercise.ts';
import { OtherKind } from '../schema/kind.ts';
import { InputError } from '../schema/problem.ts';
import type { Profile } from '../schema/profile.ts';
import { readRecording } from '../schema/read.ts';
import type { AttemptRecording } from '../schema/recording.ts';
import { type Result, resultSchema } from '../schema/result.ts';
import type { OwnKind } from '../schema/what-is.ts';
import { scoreAttempt } from '../score.ts';
import { motionPath, pathText } from '../verdict/motion-path.ts';
import { type AttemptName, readAttemptName, wordsInName } from './file-name.ts';

/** One file scored. The result is kept without its long lists (stations, crossings, pauses): welding again brings them back. */
export const scoredSchema = z.strictObject({
  file: z.string(),
  /** SHA-256 of the file's bytes. */
  sha256: z.string().length(64),
  /** SHA-256 of the pose columns alone: two files of the same hand have the same, whatever else was changed. */
  hand: z.string().length(64),
  /** The motion as `pathText` writes it, to find near-twins by. */
  motion: z.string().regex(/^([0-9a-f]{8})*$/),
  /** Digest of the exercise it was judged by, by content (`exerciseDigest`); null: none. */
  exercise: z.string().length(64).nullable(),
  joint: z.enum(['tee', 'lap', 'corner']),
  /** Who the file itself says welded it; null where it does not say. */
  trainee: traineeSchema.nullable(),
  /** When the file says it was begun, ISO 8601; null where it does not say. */
  started: z.string().max(40).nullable(),
  result: resultSchema,
});

/** One file scored. */
export type Scored = z.infer<typeof scoredSchema>;

/** What a folder is judged by, where it is not the exercise and profile each recording carries. */
export interface Judge {
  exercise: Exercise | null;
  profile: Profile | null;
}

/**
 * Scores the bytes of one file.
 * @param file its name, for messages
 * @param mostWork_s a file that would take longer to weld is refused, s of a core of today
 * @throws InputError, EngineError
 */
export function scoreBytes(bytes: Uint8Array, file: string, judge: Judge, mostWork_s: number = MOST_WORK_S): Scored {
  const recording = readRecording(textOf(bytes, file), file);
  checkWork(recording, file, mostWork_s);
  const result = scoreAttempt(recording, {
    ...(judge.exercise === null ? {} : { exercise: judge.exercise }),
    ...(judge.profile === null ? {} : { profile: judge.profile }),
  });
  return {
    file,
    sha256: digest(bytes),
    hand: handDigest(recording),
    motion: pathText(motionPath(recording.poses)),
    exercise: exerciseDigest(judge.exercise ?? recording.exercise),
    joint: recording.simulation.joint.kind,
    trainee: recording.trainee,
    started: recording.started,
    result: withoutLists(result),
  };
}

/** Who, where and which attempt, from the file's name; day, trainee and bench, where the name does not give them, from the file itself. */
export function nameOf({ file, trainee, started }: Pick<Scored, 'file' | 'trainee' | 'started'>): AttemptName {
  const name = readAttemptName(file);
  const date = name.date ?? (started === null ? null : dayOf(started));
  if (trainee === null) return { ...name, date };
  return {
    ...name,
    date,
    trainee: name.trainee ?? wordsInName(trainee.name),
    bench: name.bench ?? wordsInName(trainee.bench),
  };
}

/** The day of a moment as written, in the time it is written in. */
function dayOf(iso: string): string | null {
  return /^\d{4}-\d{2}-\d{2}(?=T)/.exec(iso)?.[0] ?? null;
}

function handDigest(recording: AttemptRecording): string {
  const { u, y, tip, work, travel, trigger } = recording.poses;
  return digest(JSON.stringify([u, y, tip, work, travel, trigger]));
}

function withoutLists(r: Result): Result {
  return {
    ...r,
    motion: { ...r.motion, crossings: [], toes: [] },
    bead: { ...r.bead, stations: [] },
  };
}

/** A file that could not be scored, and the sentence why. */
export interface BadFile {
  file: string;
  reason: string;
}

/** A whole file of ours among a class's that is no attempt: an exercise, a logbook. Nothing is wrong with it. */
export interface OtherFile {
  file: string;
  kind: OwnKind;
}

/** What scoring a file came to. `kind`: it is whole, and of this other kind. */
export type Answer = { ok: true; scored: Scored } | { ok: false; reason: string; kind?: OwnKind };

/** Scores a file; whatever goes wrong comes back as a sentence naming it, so that the next file is scored all the same. */
export function answerFor(bytes: Uint8Array, file: string, judge: Judge, mostWork_s: number = MOST_WORK_S): Answer {
  try {
    return { ok: true, scored: scoreBytes(bytes, file, judge, mostWork_s) };
  } catch (error) {
    if (error instanceof OtherKind) return { ok: false, reason: error.message, kind: error.kind };
    if (error instanceof InputError) return { ok: false, reason: error.message };
    if (error instanceof EngineError) return { ok: false, reason: clean(`${file}: ${error.message}`) };
    const why = error instanceof Error ? `${error.name}: ${error.message}` : String(error);
    return { ok: false, reason: clean(`${file}: scoring broke off (${why})`) };
  }
}

/** In the order of file names by code unit, the same everywhere. */
export function byFile(a: { file: string }, b: { file: string }): number {
  return a.file < b.file ? -1 : a.file > b.file ? 1 : 0;
}
