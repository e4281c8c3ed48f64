import { and, asc, eq, gt, isNull, sql } from 'drizzle-orm';
import type { ClassDesk } from './class-desk.ts';
import type { Db } from './store.ts';
import { scores, submissions, trainees, welding } from './tables.ts';

/** How often a bench says that its arc burns, s; a bench silent for three of them is taken for one that has stopped. */
export const BEAT_S = 6;
const SILENT_MS = 3 * BEAT_S * 1000;

/** A trainee of the class, by the number on the roster's plate too: what is shown to a room has no names. */
interface Present {
  id: string;
  name: string;
  plate: number | null;
}

/** What a class is at just now. */
interface Now {
  welding: Present[];
  /** Whose attempts wait to be scored, who has waited longest first. */
  waiting: (Present & { attempts: number })[];
}

/** A trainee's bench says that it welds, or that it no longer does. */
export async function sayWelding(
  db: Db,
  trainee: { id: string; classId: string },
  is: boolean,
  at: Date,
): Promise<void> {
  if (!is) {
    await db.delete(welding).where(eq(welding.traineeId, trainee.id));
    return;
  }
  await db
    .insert(welding)
    .values({ traineeId: trainee.id, classId: trainee.classId, seen: at })
    .onConflictDoUpdate({ target: welding.traineeId, set: { seen: at } });
}

export async function nowIn(desk: ClassDesk, at: Date): Promise<Now> {
  const who = { id: trainees.id, name: trainees.name, plate: trainees.plate };
  const [atIt, waiting] = await Promise.all([
    desk.db
      .select(who)
      .from(welding)
      .innerJoin(trainees, eq(trainees.id, welding.traineeId))
      .where(and(eq(welding.classId, desk.id), gt(welding.seen, new Date(at.getTime() - SILENT_MS))))
      .orderBy(asc(trainees.nameKey)),
    desk.db
      .select({ ...who, attempts: sql<number>`count(*)::int` })
      .from(submissions)
      .innerJoin(trainees, eq(trainees.id, submissions.traineeId))
      .leftJoin(scores, desk.scoreOf())
      .where(and(eq(submissions.classId, desk.id), isNull(scores.attempt)))
      .groupBy(trainees.id, trainees.name, trainees.plate)
      .orderBy(sql`min(${submissions.received})`),
  ]);
  return { welding: atIt, waiting };
}
