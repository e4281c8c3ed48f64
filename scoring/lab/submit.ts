import { and, eq, max } from 'drizzle-orm';
import { type AttemptRecording, readRecording } from '../index.ts';
import { textOf } from '../node/index.ts';
import type { AttemptFiles } from './attempt-files.ts';
import { note } from './audit.ts';
import { digestOf, submissionId } from './digests.ts';
import type { JudgeCopy } from './judge.ts';
import { type Carried, dealtJudge } from './piece.ts';
import type { Receipt } from './receipt.ts';
import { notThere, Refusal } from './refusal.ts';
import type { Who } from './sessions.ts';
import type { Db } from './store.ts';
import { assignments, classes, judges, submissions, trainees } from './tables.ts';

/** An upload. */
export interface Upload {
  who: Extract<Who, { role: 'trainee' }>;
  assignmentId: string;
  /** What the sender says the bytes' digest is. */
  digest: string;
  bytes: Uint8Array;
  now: Date;
}

export interface Submitted {
  id: string;
  number: number;
  late: boolean;
  judge: string;
  /** False where the same upload had come before. */
  fresh: boolean;
}

/**
 * Takes an attempt in. When it returns, the attempt and its receipt are files on the disk and the submission is a row: it may be
 * acknowledged. The same upload again changes nothing and is acknowledged again.
 * @throws InputError when the bytes are no recording; Refusal
 */
export async function submit(db: Db, files: AttemptFiles, u: Upload): Promise<Submitted> {
  const { assignment, judge: asked } = await openAssignment(db, u);
  const carried = carriedBy(readRecording(textOf(u.bytes, 'attempt'), 'attempt'));
  const attempt = digestOf(u.bytes);
  if (attempt !== u.digest) {
    throw new Refusal(400, 'digest', `The content that arrived has the digest ${attempt}: it was changed on the way.`);
  }
  await files.keepAttempt(u.bytes);
  const id = submissionId(attempt, assignment.id, u.who.id);
  return db.transaction(async (tx) => {
    // Two uploads of one trainee at once would take the same number.
    const [trainee] = await tx.select().from(trainees).where(eq(trainees.id, u.who.id)).for('update');
    const [klass] = await tx.select().from(classes).where(eq(classes.id, u.who.classId));
    if (trainee === undefined || klass === undefined) throw notThere('assignmentId');
    const [before] = await tx.select().from(submissions).where(eq(submissions.id, id));
    if (before !== undefined) {
      // The row may have been put back from a receipt whose name had not reached the disk when its process died: acknowledged is what is durable now.
      const { bytes, received, number, late, judge, carried } = before;
      await files.keepReceipt(
        receiptOf({ attempt, bytes, received, number, late, klass, trainee, assignment, judge, carried }),
      );
      return { id, number, late, judge, fresh: false };
    }
    const judge = dealtJudge({ judge: asked, startWord: assignment.startWord, plate: trainee.plate });
    const mine = and(eq(submissions.assignmentId, assignment.id), eq(submissions.traineeId, trainee.id));
    const [last] = await tx
      .select({ number: max(submissions.number) })
      .from(submissions)
      .where(mine);
    const number = (last?.number ?? 0) + 1;
    const late = assignment.closes !== null && u.now > assignment.closes;
    const bytes = u.bytes.length;
    if (judge.digest !== assignment.judge) {
      await files.keepJudge(judge.content);
      await tx.insert(judges).values(judge).onConflictDoNothing();
    }
    const said = { attempt, bytes, received: u.now, number, late, klass, trainee, assignment };
    await files.keepReceipt(receiptOf({ ...said, judge: judge.digest, carried }));
    await tx.insert(submissions).values({
      id,
      classId: klass.id,
      assignmentId: assignment.id,
      traineeId: trainee.id,
      attempt,
      judge: judge.digest,
      carried,
      bytes,
      received: u.now,
      number,
      late,
    });
    await note(tx, u.who, { did: 'attempt handed in', classId: klass.id, detail: { submission: id, number } });
    return { id, number, late, judge: judge.digest, fresh: true };
  });
}

async function openAssignment(
  db: Db,
  { who, assignmentId, now }: Upload,
): Promise<{ assignment: typeof assignments.$inferSelect; judge: JudgeCopy }> {
  const [found] = await db
    .select({ assignment: assignments, judge: judges })
    .from(assignments)
    .innerJoin(judges, eq(judges.digest, assignments.judge))
    .where(and(eq(assignments.id, assignmentId), eq(assignments.classId, who.classId)));
  if (found === undefined) throw notThere('assignmentId');
  const { assignment } = found;
  if (now < assignment.opens) {
    throw new Refusal(409, 'assignmentId', `This exercise opens at ${assignment.opens.toISOString()}.`);
  }
  return found;
}

function carriedBy(recording: AttemptRecording): Carried | null {
  const piece = recording.exercise?.piece;
  return piece === undefined ? null : { number: piece.number, seed: piece.seed };
}

function receiptOf(r: {
  attempt: string;
  bytes: number;
  received: Date;
  number: number;
  late: boolean;
  klass: typeof classes.$inferSelect;
  trainee: typeof trainees.$inferSelect;
  assignment: typeof assignments.$inferSelect;
  judge: string;
  carried: Carried | null;
}): Receipt {
  const { attempt, bytes, number, late, klass, trainee, assignment, judge, carried } = r;
  return {
    format: 'toehold-lab-receipt',
    version: 1,
    attempt,
    bytes,
    received: r.received.toISOString(),
    number,
    late,
    class: { id: klass.id, name: klass.name, code: klass.code },
    trainee: { id: trainee.id, name: trainee.name, sourcedId: trainee.sourcedId, plate: trainee.plate },
    assignment: {
      id: assignment.id,
      title: assignment.title,
      judge: assignment.judge,
      opens: assignment.opens.toISOString(),
      closes: assignment.closes?.toISOString() ?? null,
      mostAttempts: assignment.mostAttempts,
      startWord: assignment.startWord,
    },
    piece: judge === assignment.judge ? null : judge,
    carried,
  };
}
