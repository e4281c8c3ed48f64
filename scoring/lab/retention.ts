import { and, eq, lt, sql } from 'drizzle-orm';
import type { AttemptFiles } from './attempt-files.ts';
import { note } from './audit.ts';
import { dropAttempts, eraseRows } from './erase.ts';
import type { Db } from './store.ts';
import { submissions, trainees } from './tables.ts';

const DAY_MS = 86_400_000;

/** What a school's rule would take. */
interface TooOld {
  /** Everything handed in before this is too old. */
  before: Date;
  /** Ids of trainees put on a roster before that, who handed nothing in since: they go with everything of theirs. */
  trainees: { id: string; classId: string }[];
  /** Attempts of others. */
  attempts: { id: string; classId: string; attempt: string }[];
}

/**
 * What is older than a school keeps things; nothing is changed.
 * @param classId one class; left out: all
 */
export async function tooOld(db: Db, keep_days: number, now: Date, classId?: string): Promise<TooOld> {
  const before = new Date(now.getTime() - keep_days * DAY_MS);
  const gone = await db
    .select({ id: trainees.id, classId: trainees.classId })
    .from(trainees)
    .where(
      and(
        lt(trainees.made, before),
        sql`not exists (select 1 from ${submissions} where ${submissions.traineeId} = ${trainees.id} and ${submissions.received} >= ${before.toISOString()})`,
        classId === undefined ? undefined : eq(trainees.classId, classId),
      ),
    )
    .orderBy(trainees.id);
  const whole = new Set(gone.map((g) => g.id));
  const old = await db
    .select({
      id: submissions.id,
      classId: submissions.classId,
      attempt: submissions.attempt,
      trainee: submissions.traineeId,
    })
    .from(submissions)
    .where(and(lt(submissions.received, before), classId === undefined ? undefined : eq(submissions.classId, classId)))
    .orderBy(submissions.id);
  return {
    before,
    trainees: gone,
    attempts: old.flatMap(({ trainee, ...s }) => (whole.has(trainee) ? [] : [s])),
  };
}

/** Erases what is too old, files first; asked again after an interruption it goes on. The audit trail keeps ids that nothing else knows any more. */
export async function eraseTooOld(
  db: Db,
  files: AttemptFiles,
  old: TooOld,
): Promise<{ trainees: number; attempts: number }> {
  const lab = { role: 'nobody' } as const;
  let attempts = 0;
  for (const { id, classId } of old.trainees) {
    const mine = await db
      .select({ id: submissions.id, attempt: submissions.attempt })
      .from(submissions)
      .where(eq(submissions.traineeId, id));
    const gone = await dropAttempts(db, files, mine);
    await db.transaction(async (tx) => {
      await eraseRows(tx, mine, gone);
      await tx.delete(trainees).where(eq(trainees.id, id));
      await note(tx, lab, { did: 'too old: trainee erased', classId, detail: { trainee: id, attempts: mine.length } });
    });
    attempts += mine.length;
  }
  for (const s of old.attempts) {
    const gone = await dropAttempts(db, files, [s]);
    await db.transaction(async (tx) => {
      await eraseRows(tx, [s], gone);
      await note(tx, lab, { did: 'too old: attempt erased', classId: s.classId, detail: { submission: s.id } });
    });
    attempts++;
  }
  return { trainees: old.trainees.length, attempts };
}
