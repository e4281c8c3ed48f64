import { and, eq, inArray, notInArray } from 'drizzle-orm';
import type { AttemptFiles } from './attempt-files.ts';
import { note } from './audit.ts';
import type { ClassDesk } from './class-desk.ts';
import type { Who } from './sessions.ts';
import type { Db } from './store.ts';
import { scores, submissions, trainees } from './tables.ts';

/** A submission as far as erasing goes. */
type Erased = Pick<typeof submissions.$inferSelect, 'id' | 'attempt'>;

/**
 * Takes receipts away, and attempts that nobody else handed in; digests of those. Files go before rows: should it be interrupted, nothing that is left could
 * bring anything back, and asking again finishes it.
 */
export async function dropAttempts(db: Db, files: AttemptFiles, mine: readonly Erased[]): Promise<string[]> {
  for (const { id } of mine) await files.dropReceipt(id);
  const gone: string[] = [];
  for (const digest of new Set(mine.map((s) => s.attempt))) {
    const [other] = await db
      .select({ id: submissions.id })
      .from(submissions)
      .where(
        and(
          eq(submissions.attempt, digest),
          notInArray(
            submissions.id,
            mine.map((s) => s.id),
          ),
        ),
      )
      .limit(1);
    if (other !== undefined) continue;
    await files.dropAttempt(digest);
    gone.push(digest);
  }
  return gone;
}

/** The rows of what `dropAttempts` took. */
export async function eraseRows(tx: Db, mine: readonly Erased[], gone: readonly string[]): Promise<void> {
  if (gone.length > 0) await tx.delete(scores).where(inArray(scores.attempt, gone as string[]));
  if (mine.length === 0) return;
  await tx.delete(submissions).where(
    inArray(
      submissions.id,
      mine.map((s) => s.id),
    ),
  );
}

/** Erases a trainee: receipts, attempts nobody else handed in, rows, scores. The audit trail keeps an id that nothing else knows any more. */
export async function eraseTrainee(desk: ClassDesk, files: AttemptFiles, traineeId: string, who: Who): Promise<number> {
  const { db } = desk;
  const mine = (await desk.handed({ trainee: traineeId })).map((h) => h.submission);
  const gone = await dropAttempts(db, files, mine);
  await db.transaction(async (tx) => {
    await eraseRows(tx, mine, gone);
    await tx.delete(trainees).where(eq(trainees.id, traineeId));
    await note(tx, who, {
      did: 'trainee erased',
      classId: desk.id,
      detail: { trainee: traineeId, attempts: mine.length },
    });
  });
  return mine.length;
}
