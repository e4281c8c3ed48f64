import { inArray, sql } from 'drizzle-orm';
import type { AttemptFiles, SpoiltFile } from './attempt-files.ts';
import { submissionId } from './digests.ts';
import { nameKey } from './names.ts';
import { isPassing } from './passing.ts';
import type { Receipt } from './receipt.ts';
import type { Db } from './store.ts';
import { assignments, classes, judges, submissions, trainees } from './tables.ts';

/** What came of putting files back into a database. */
export interface Rebuilt {
  /** Receipts on the disk. */
  receipts: number;
  /** Submissions that were not in the database and are now. */
  restored: number;
  spoilt: SpoiltFile[];
}

/** Ids asked for at once. */
const BATCH = 500;

/**
 * Puts every attempt that has a receipt on the disk back into the database, with its class, trainee, assignment and judge where they are
 * missing too. What is there is left as it is; scores come by welding again. Passwords, PINs, marks by hand and the audit trail are in no
 * receipt and come back from a backup only.
 * @throws where disk or database do not answer; what was put back until then stays, and the next try goes on
 */
export async function rebuild(db: Db, files: AttemptFiles): Promise<Rebuilt> {
  const ids = await files.receiptIds();
  const missing: string[] = [];
  for (let i = 0; i < ids.length; i += BATCH) {
    const some = ids.slice(i, i + BATCH);
    const known = await db.select({ id: submissions.id }).from(submissions).where(inArray(submissions.id, some));
    const there = new Set(known.map((k) => k.id));
    missing.push(...some.filter((id) => !there.has(id)));
  }
  const spoilt: SpoiltFile[] = [];
  const receipts: Receipt[] = [];
  for (const id of missing) {
    const receipt = await files.readReceipt(id);
    if ('why' in receipt) spoilt.push(receipt);
    else receipts.push(receipt);
  }
  receipts.sort((a, b) => a.number - b.number || (a.received < b.received ? -1 : 1));
  let restored = 0;
  for (const receipt of receipts) {
    // What stands in its way stays in the database as it is; the file stays too, and is named.
    const why = await putBack(db, files, receipt).catch((cause: Error) => {
      // A disk or database that fails for a moment says nothing of the receipt: taken for spoilt, it would stay away until the next start.
      if (isPassing(cause)) throw cause;
      return `it does not fit what is there (${causeOf(cause)})`;
    });
    if (why === null) restored++;
    else spoilt.push({ file: `receipt of attempt ${receipt.attempt}`, why });
  }
  return { receipts: ids.length, restored, spoilt };
}

function causeOf(error: Error): string {
  return error.cause instanceof Error ? error.cause.message : error.message;
}

async function putBack(db: Db, files: AttemptFiles, r: Receipt): Promise<string | null> {
  if ((await files.readAttempt(r.attempt)) === null) return 'its attempt is missing or spoilt';
  const judge = await files.readJudge(r.assignment.judge);
  if (judge === null) return 'its judge is missing or spoilt';
  const piece = r.piece === null ? null : await files.readJudge(r.piece);
  if (r.piece !== null && piece === null) return 'the judge of its piece is missing or spoilt';
  const made = new Date(r.received);
  await db.transaction(async (tx) => {
    await tx
      .insert(classes)
      .values({ ...r.class, marks: { rule: 'median of last', attempts: 3 }, pins: false, made })
      .onConflictDoNothing();
    await tx
      .insert(trainees)
      .values({ ...r.trainee, classId: r.class.id, nameKey: nameKey(r.trainee.name), made })
      .onConflictDoNothing();
    await tx.insert(judges).values({ digest: r.assignment.judge, content: judge }).onConflictDoNothing();
    if (r.piece !== null && piece !== null)
      await tx.insert(judges).values({ digest: r.piece, content: piece }).onConflictDoNothing();
    const { opens, closes, ...assignment } = r.assignment;
    await tx
      .insert(assignments)
      .values({
        ...assignment,
        classId: r.class.id,
        opens: new Date(opens),
        closes: closes === null ? null : new Date(closes),
        made,
      })
      .onConflictDoNothing();
    await tx.insert(submissions).values({
      id: submissionId(r.attempt, r.assignment.id, r.trainee.id),
      classId: r.class.id,
      assignmentId: r.assignment.id,
      traineeId: r.trainee.id,
      attempt: r.attempt,
      judge: r.piece ?? r.assignment.judge,
      carried: r.carried,
      bytes: r.bytes,
      received: new Date(r.received),
      // A number given twice is one that was never acknowledged: it gets the next free one.
      number: sql<number>`coalesce((select case when bool_or(s.number = ${r.number}) then max(s.number) + 1 else ${r.number} end
        from submissions s where s.assignment_id = ${r.assignment.id} and s.trainee_id = ${r.trainee.id}), ${r.number})`,
      late: r.late,
    });
  });
  return null;
}
