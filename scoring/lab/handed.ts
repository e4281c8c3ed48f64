import type { SQL } from 'drizzle-orm';
import type { Result } from '../index.ts';
import type { Db } from './store.ts';
import type { assignments, submissions, trainees } from './tables.ts';

export type TraineeRow = typeof trainees.$inferSelect;
export type AssignmentRow = typeof assignments.$inferSelect;
export type SubmissionRow = typeof submissions.$inferSelect;

/** A submission with whose it is and what it came to, as far as it is scored. */
export interface Handed {
  submission: SubmissionRow;
  trainee: { id: string; name: string };
  plate: number | null;
  assignment: AssignmentRow;
  score: {
    result: Result | null;
    hand: string | null;
    motion: string | null;
    fault: string | null;
    scored: Date;
  } | null;
}

/** One class as far as its evidence goes. */
export interface OneClass {
  readonly db: Db;
  readonly id: string;
  /** The instructor who asks; null: the lab itself, or a trainee. */
  readonly asker: string | null;
  trainees(): Promise<TraineeRow[]>;
  /** The score of a submission by this program's versions. */
  scoreOf(): SQL | undefined;
}
