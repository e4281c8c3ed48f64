import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js';
import { z } from 'zod';
import { EngineError } from '../../engine/index.ts';
import { traineeSchema } from '../schema/bench.ts';
import { textOf } from '../schema/bytes.ts';
import type { Exercise } from '../schema/exercise.ts';
import { InputError } from '../schema/problem.ts';
import type { Profile } from '../schema/profile.ts';
import { readRecording } from '../schema/read.ts';
import type { AttemptRecording } from '../schema/recording.ts';
import { type Result, resultSchema } from '../schema/result.ts';
import { scoreAttempt } from '../score.ts';
import { type AttemptName, readAttemptName, wordsInName } from './file-name.ts';

/** One file scored. The result is kept without its long lists (stations, crossings, pauses): welding again brings them back. */
export const scoredSchema = z.strictObject({
  file: z.string(),
  /** SHA-256 of the file's bytes. */
  sha256: z.string().length(64),
  /** SHA-256 of the pose columns alone: two files of the same hand have the same, whatever else was changed. */
  hand: z.string().length(64),
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
 * @throws InputError, EngineError
 */
export function scoreBytes(bytes: Uint8Array, file: string, judge: Judge): Scored {
  const recording = readRecording(textOf(bytes, file), file);
  const result = scoreAttempt(recording, {
    ...(judge.exercise === null ? {} : { exercise: judge.exercise }),
    ...(judge.profile === null ? {} : { profile: judge.profile }),
  });
  return {
    file,
    sha256: digest(bytes),
    hand: handDigest(recording),
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
export function answerFor(bytes: Uint8Array, file: string, judge: Judge): Answer {
  try {
    return { ok: true, scored: scoreBytes(bytes, file, judge) };
  } catch (error) {
    if (error instanceof InputError) return { ok: false, reason: error.message };
    if (error instanceof EngineError) return { ok: false, reason: `${file}: ${error.message}` };
    const why = error instanceof Error ? `${error.name}: ${error.message}` : String(error);
    return { ok: false, reason: `${file}: scoring broke off (${why})` };
  }
}

/** In the order of file names by code unit, the same everywhere. */
export function byFile(a: { file: string }, b: { file: string }): number {
  return a.file < b.file ? -1 : a.file > b.file ? 1 : 0;
}
