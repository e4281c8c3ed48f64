import { z } from 'zod';
import { parseWith } from '../../../scoring/index.ts';
import type { StoredAttempt } from './shelf.ts';

const FORMAT = 'toehold-logbook';

const logbookSchema = z.object({
  format: z.literal(FORMAT),
  version: z.literal(1),
  attempts: z.array(z.unknown()),
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
export function logbookOf(attempts: readonly StoredAttempt[]): object {
  return { format: FORMAT, version: 1, attempts };
}

/** @param day as people write it, year first */
export function logbookName(day: string): string {
  return `${day}_logbook.json`;
}

/** The records of a logbook, each still unread. @throws InputError naming what is wrong */
export function attemptsIn(content: unknown, name: string): unknown[] {
  return parseWith(logbookSchema, content, name).attempts;
}
