import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js';
import { z } from 'zod';
import { EngineError } from '../../engine/index.ts';
import { checkWork, MOST_WORK_S } from '../attempt/work.ts';
import { traineeSchema } from '../schema/bench.ts';
import { textOf } from '../schema/bytes.ts';
import { clean } from '../schema/clean.ts';
import type { Exercise } from '../schema/exercise.ts';
import { InputError } from '../schema/problem.ts';
import type { Profile } from '../schema/profile.ts';
import { readRecording } from '../schema/read.ts';
import type { AttemptRecording } from '../schema/recording.ts';
import { type Result, resultSchema } from '../schema/result.ts';
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
    result: withoutLists(result),
  };
}

/** Who, where and which attempt, from the file's name; trainee and bench, where the name does not give them, from the file itself. */
export function nameOf({ file, trainee }: Pick<Scored, 'file' | 'trainee'>): AttemptName {
  const name = readAttemptName(file);
  if (trainee === null) return name;
  return {
    ...name,
    trainee: name.trainee ?? wordsInName(trainee.name),
    bench: name.bench ?? wordsInName(trainee.bench),
  };
}

/** SHA-256 as hexadecimal digits; of a text, of its UTF-8. */
export function digest(content: Uint8Array | string): string {
  return bytesToHex(sha256(typeof content === 'string' ? utf8ToBytes(content) : content));
}

/** SHA-256 of what an exercise is, whatever the order of its fields and whatever it is called; null of none. */
export function exerciseDigest(exercise: Exercise | null): string | null {
  if (exercise === null) return null;
  const { name: _name, title: _title, story: _story, teaches: _teaches, ...asked } = exercise;
  return digest(canonical(asked));
}

/** JSON with the fields of every object in order. */
function canonical(value: unknown): string {
  if (typeof value !== 'object' || value === null) return JSON.stringify(value);
  if (Array.isArray(value)) return `[${value.map(canonical).join(',')}]`;
  const fields = Object.entries(value).sort(([a], [b]) => (a < b ? -1 : 1));
  return `{${fields.map(([key, inner]) => `${JSON.stringify(key)}:${canonical(inner)}`).join(',')}}`;
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

/** What scoring a file came to. */
export type Answer = { ok: true; scored: Scored } | { ok: false; reason: string };

/** Scores a file; whatever goes wrong comes back as a sentence naming it, so that the next file is scored all the same. */
export function answerFor(bytes: Uint8Array, file: string, judge: Judge, mostWork_s: number = MOST_WORK_S): Answer {
  try {
    return { ok: true, scored: scoreBytes(bytes, file, judge, mostWork_s) };
  } catch (error) {
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
