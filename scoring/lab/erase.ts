import { eq, inArray } from 'drizzle-orm';
import type { AttemptFiles } from './attempt-files.ts';
import { note } from './audit.ts';
import type { ClassDesk } from './class-desk.ts';
import type { Who } from './sessions.ts';
import { scores, submissions, trainees } from './tables.ts';

/**
 * Erases a trainee: receipts, attempts nobody else handed in, rows, scores. Files go first: should it be interrupted, nothing that is left could bring
 * the person back, and asking again finishes it. The audit trail keeps an id that nothing else knows any more.
 */
export async function eraseTrainee(desk: ClassDesk, files: AttemptFiles, traineeId: string, who: Who): Promise<number> {
  const { db } = desk;
  const mine = (await desk.handed({ trainee: traineeId })).map((h) => h.submission);
  for (const { id } of mine) await files.dropReceipt(id);
  const digests = [...new Set(mine.map((s) => s.attempt))];
  const gone: string[] = [];
  for (const digest of digests) {
    const others = await db
      .select({ trainee: submissions.traineeId })
      .from(submissions)
      .where(eq(submissions.attempt, digest));
    if (others.every((o) => o.trainee === traineeId)) {
      await files.dropAttempt(digest);
      gone.push(digest);
    }
  }
  await db.transaction(async (tx) => {
    if (gone.length > 0) await tx.delete(scores).where(inArray(scores.attempt, gone));
    await tx.delete(trainees).where(eq(trainees.id, traineeId));
    await note(tx, who, {
      did: 'trainee erased',
      classId: desk.id,
      detail: { trainee: traineeId, attempts: mine.length },
    });
  });
  return mine.length;
}
