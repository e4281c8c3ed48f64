import type { AttemptRecording, Exercise } from '../../../scoring/index.ts';
import { exerciseDigest, InputError, type Result } from '../../../scoring/index.ts';
import { classSheet, type Scored, scoreBytes } from '../../../scoring/node/index.ts';

/** What came of a file that was handed in. */
export interface HandedIn {
  /** Null where the file was refused. */
  result: Result | null;
  counted: boolean;
  /** What stands against it on the sheet, each a sentence's part; of a refused file the refusal. */
  evidence: readonly string[];
}

export interface File {
  who: string;
  recording: AttemptRecording;
}

/** Hands files in as a class does, and says what came of the last of them. @param asked the exercise that counts, as the instructor has it */
export function handIn(files: readonly File[], asked: Exercise): HandedIn {
  const scored: Scored[] = [];
  for (const [n, { who, recording }] of files.entries()) {
    try {
      scored.push(scoreBytes(new TextEncoder().encode(JSON.stringify(recording)), nameOf(who, n), JUDGE));
    } catch (error) {
      if (!(error instanceof InputError)) throw error;
      if (n === files.length - 1) return { result: null, counted: false, evidence: [error.message] };
    }
  }
  const last = nameOf(files[files.length - 1]!.who, files.length - 1);
  const sheet = classSheet({ scored, bad: [] }, new Set([exerciseDigest(asked)!]));
  const entry = sheet.notCounted.find((e) => e.file === last);
  return {
    result: scored.find((s) => s.file === last)!.result,
    counted: entry === undefined,
    evidence: entry?.notCounted ?? [],
  };
}

const JUDGE = { exercise: null, profile: null };

function nameOf(who: string, n: number): string {
  return `2026-03-14_b${n + 1}_${who}_free_01.json`;
}
