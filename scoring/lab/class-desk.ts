import { randomUUID } from 'node:crypto';
import { and, asc, desc, eq, ne, type SQL, sql } from 'drizzle-orm';
import type { Result } from '../index.ts';
import { evidenceOf, type Twin } from './evidence.ts';
import type { JudgeCopy, Versions } from './judge.ts';
import { nameKey } from './names.ts';
import type { Db } from './store.ts';
import { assignments, classes, judges, scores, submissions, teaches, trainees } from './tables.ts';

export type ClassRow = typeof classes.$inferSelect;
export type TraineeRow = typeof trainees.$inferSelect;
export type AssignmentRow = typeof assignments.$inferSelect;
export type SubmissionRow = typeof submissions.$inferSelect;

/** An exercise to be handed out. */
export interface NewAssignment {
  title: string;
  judge: JudgeCopy;
  opens: Date;
  closes: Date | null;
  mostAttempts: number | null;
}

/** A submission with whose it is and what it came to, as far as it is scored. */
export interface Handed {
  submission: SubmissionRow;
  trainee: { id: string; name: string };
  assignment: AssignmentRow;
  score: { result: Result | null; hand: string | null; fault: string | null; scored: Date } | null;
}

/**
 * One class and nothing else: every question it answers carries the class in its condition, so that no id from another class finds
 * anything. Routes get their rows here and nowhere else.
 */
export class ClassDesk {
  readonly db: Db;
  readonly class: ClassRow;
  readonly #versions: Versions;

  constructor(db: Db, row: ClassRow, versions: Versions) {
    this.db = db;
    this.class = row;
    this.#versions = versions;
  }

  get id(): string {
    return this.class.id;
  }

  async change(change: Partial<Pick<ClassRow, 'name' | 'code' | 'marks' | 'pins'>>): Promise<void> {
    await this.db.update(classes).set(change).where(eq(classes.id, this.id));
  }

  async addTeacher(instructorId: string): Promise<void> {
    await this.db.insert(teaches).values({ classId: this.id, instructorId }).onConflictDoNothing();
  }

  trainees(): Promise<TraineeRow[]> {
    return this.db.select().from(trainees).where(eq(trainees.classId, this.id)).orderBy(asc(trainees.nameKey));
  }

  async trainee(id: string): Promise<TraineeRow | null> {
    const [row] = await this.db.select().from(trainees).where(this.#isTrainee(id));
    return row ?? null;
  }

  async traineeNamed(name: string): Promise<TraineeRow | null> {
    const [row] = await this.db
      .select()
      .from(trainees)
      .where(and(eq(trainees.classId, this.id), eq(trainees.nameKey, nameKey(name))));
    return row ?? null;
  }

  /** Adds those who are not on the roster yet; how many were added. */
  async addTrainees(people: readonly { name: string; sourcedId: string | null }[]): Promise<number> {
    if (people.length === 0) return 0;
    const made = new Date();
    const added = await this.db
      .insert(trainees)
      .values(people.map((p) => ({ id: randomUUID(), classId: this.id, ...p, nameKey: nameKey(p.name), made })))
      .onConflictDoNothing()
      .returning({ id: trainees.id });
    return added.length;
  }

  async setPin(traineeId: string, pin: string): Promise<void> {
    await this.db.update(trainees).set({ pin }).where(this.#isTrainee(traineeId));
  }

  assignments(): Promise<AssignmentRow[]> {
    return this.db
      .select()
      .from(assignments)
      .where(eq(assignments.classId, this.id))
      .orderBy(asc(assignments.opens), asc(assignments.id));
  }

  async assignment(id: string): Promise<AssignmentRow | null> {
    const [row] = await this.db.select().from(assignments).where(this.#isAssignment(id));
    return row ?? null;
  }

  async assign(n: NewAssignment): Promise<AssignmentRow> {
    await this.db.insert(judges).values(n.judge).onConflictDoNothing();
    const { title, opens, closes, mostAttempts } = n;
    const row = { id: randomUUID(), classId: this.id, judge: n.judge.digest, title, opens, closes, mostAttempts };
    const [made] = await this.db
      .insert(assignments)
      .values({ ...row, made: new Date() })
      .returning();
    return made!;
  }

  async changeAssignment(
    id: string,
    change: Partial<Pick<AssignmentRow, 'title' | 'opens' | 'closes' | 'mostAttempts'>>,
  ): Promise<void> {
    await this.db.update(assignments).set(change).where(this.#isAssignment(id));
  }

  async judgeContent(assignment: AssignmentRow): Promise<string> {
    const [row] = await this.db.select().from(judges).where(eq(judges.digest, assignment.judge));
    if (row === undefined) throw new Error(`the judge of assignment ${assignment.id} is missing`);
    return row.content;
  }

  async submission(id: string): Promise<SubmissionRow | null> {
    const [row] = await this.db
      .select()
      .from(submissions)
      .where(and(eq(submissions.id, id), eq(submissions.classId, this.id)));
    return row ?? null;
  }

  /** What was handed in, newest first, scored by this program's versions of engine and scoring. */
  async handed(
    filter: { submission?: string; trainee?: string; assignment?: string; most?: number } = {},
  ): Promise<Handed[]> {
    const only: SQL[] = [eq(submissions.classId, this.id)];
    if (filter.submission !== undefined) only.push(eq(submissions.id, filter.submission));
    if (filter.trainee !== undefined) only.push(eq(submissions.traineeId, filter.trainee));
    if (filter.assignment !== undefined) only.push(eq(submissions.assignmentId, filter.assignment));
    const query = this.db
      .select({
        submission: submissions,
        trainee: { id: trainees.id, name: trainees.name },
        assignment: assignments,
        score: { result: scores.result, hand: scores.hand, fault: scores.fault, scored: scores.scored },
      })
      .from(submissions)
      .innerJoin(trainees, eq(trainees.id, submissions.traineeId))
      .innerJoin(assignments, eq(assignments.id, submissions.assignmentId))
      .leftJoin(
        scores,
        and(
          eq(scores.attempt, submissions.attempt),
          eq(scores.judge, assignments.judge),
          eq(scores.engine, this.#versions.engine),
          eq(scores.scoring, this.#versions.scoring),
        ),
      )
      .where(and(...only))
      .orderBy(desc(submissions.received), desc(submissions.id));
    const rows = await (filter.most === undefined ? query : query.limit(filter.most));
    return rows as Handed[];
  }

  /** Other submissions of this class with the same hand. Pose equality; the one place where a search for near twins goes in. */
  async twinsOf(hand: string, submissionIdOfOwn: string): Promise<Twin[]> {
    return this.db
      .selectDistinct({ id: submissions.id, trainee: trainees.name, number: submissions.number })
      .from(scores)
      .innerJoin(submissions, eq(submissions.attempt, scores.attempt))
      .innerJoin(trainees, eq(trainees.id, submissions.traineeId))
      .where(and(eq(scores.hand, hand), eq(submissions.classId, this.id), ne(submissions.id, submissionIdOfOwn)))
      .orderBy(asc(submissions.id));
  }

  /** How many of each hand there are in this class, for those with more than one. */
  async sharedHands(): Promise<Set<string>> {
    const rows = await this.db
      .select({ hand: scores.hand })
      .from(scores)
      .innerJoin(submissions, eq(submissions.attempt, scores.attempt))
      .where(eq(submissions.classId, this.id))
      .groupBy(scores.hand)
      .having(sql`count(distinct ${submissions.id}) > 1`);
    return new Set(rows.map((r) => r.hand).filter((h) => h !== null));
  }

  /** A submission with everything that speaks for or against it. */
  async evidence(h: Handed): Promise<ReturnType<typeof evidenceOf>> {
    const hand = h.score?.hand ?? null;
    return evidenceOf({
      result: h.score?.result ?? null,
      late: h.submission.late,
      number: h.submission.number,
      mostAttempts: h.assignment.mostAttempts,
      twins: hand === null ? [] : await this.twinsOf(hand, h.submission.id),
    });
  }

  #isTrainee(id: string): SQL | undefined {
    return and(eq(trainees.id, id), eq(trainees.classId, this.id));
  }

  #isAssignment(id: string): SQL | undefined {
    return and(eq(assignments.id, id), eq(assignments.classId, this.id));
  }
}
