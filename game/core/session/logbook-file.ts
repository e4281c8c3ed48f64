import { z } from 'zod';
import { parseWith } from '../../../scoring/index.ts';
import { type PracticeRecord, readPractice } from '../practice/record.ts';
import type { StoredAttempt } from './shelf.ts';

const FORMAT = 'toehold-logbook';

const logbookSchema = z.object({
  format: z.literal(FORMAT),
  version: z.literal(1),
  attempts: z.array(z.unknown()),
  /** Own judgements, drills, tests after a while, faults named; left out in files of before there were any. */
  practice: z.array(z.unknown()).optional(),
});

/** What came of taking a logbook file onto the shelf. */
export interface TakenLogbook {
  added: number;
  /** Already on the shelf, left as they were. */
  known: number;
  /** What could not be read, each with its place in the file. */
  bad: string[];
}

/** The whole shelf as one file, to be taken onto another one. */
export function logbookOf(attempts: readonly StoredAttempt[], practice: readonly PracticeRecord[]): object {
  return { format: FORMAT, version: 1, attempts, practice };
}

/** @param day as people write it, year first */
export function logbookName(day: string): string {
  return `${day}_logbook.json`;
}

/** The records of a logbook, each still unread. @throws InputError naming what is wrong */
export function attemptsIn(content: unknown, name: string): unknown[] {
  return parseWith(logbookSchema, content, name).attempts;
}

/** What was practised beside them; what is not such a record is left out. */
export function practiceIn(content: unknown, name: string): PracticeRecord[] {
  return (parseWith(logbookSchema, content, name).practice ?? []).flatMap((kept) => readPractice(kept) ?? []);
}
