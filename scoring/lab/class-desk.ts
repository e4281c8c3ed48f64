import { randomUUID } from 'node:crypto';
import { and, asc, count, countDistinct, desc, eq, type SQL } from 'drizzle-orm';
import { alias } from 'drizzle-orm/pg-core';
import { MOST_PLATES, type Result } from '../index.ts';
import { ClassEvidence } from './class-evidence.ts';
import type { Evidence } from './evidence.ts';
import type { AssignmentRow, Handed, OneClass, SubmissionRow, TraineeRow } from './handed.ts';
import { type JudgeCopy, readJudge, type Versions } from './judge.ts';
import { type Mark, type MarkedAttempt, markOf } from './marks.ts';
import { nameKey } from './names.ts';
import { newCode } from './passwords.ts';
import type { Db } from './store.ts';
import { assignments, classes, judges, overrides, scores, submissions, teaches, trainees } from './tables.ts';

export type ClassRow = typeof classes.$inferSelect;

export type OverrideRow = typeof overrides.$inferSelect;

/** One trainee's mark at one assignment. */
export interface MarksRow {
  trainee: { id: string; name: string; sourcedId: string | null };
  attempts: number;
  computed: Mark;
  /** The mark set by hand; null: none stands. */
  set: number | null;
  history: OverrideRow[];
}

/** What a score says in short. */
interface ScoreSummary {
  verdict: string | null;
  score: number | null;
  fault: string | null;
}

/** A submission that two versions judge differently. */
export interface Difference {
  id: string;
  trainee: string;
  assignment: string;
  number: number;
  before: ScoreSummary;
  after: ScoreSummary;
}

/** An exercise to be handed out. */
export interface NewAssignment {
  title: string;
  judge: JudgeCopy;
  opens: Date;
  closes: Date | null;
  mostAttempts: number | null;
}

/**
 * One class and nothing else: every question it answers carries the class in its condition, so that no id from another class finds
 * anything. Routes get their rows here and nowhere else.
 */
export class ClassDesk implements OneClass {
  readonly db: Db;
  readonly class: ClassRow;
  /** The instructor who asks; null: the lab itself, or a trainee. */
  readonly asker: string | null;
  readonly #versions: Versions;

  constructor(db: Db, row: ClassRow, versions: Versions, asker: string | null = null) {
    this.db = db;
    this.class = row;
    this.asker = asker;
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
    return this.db.transaction(async (tx) => {
      // Two who add at once would give the same plates.
      await tx.select({ id: classes.id }).from(classes).where(eq(classes.id, this.id)).for('update');
      const known = await tx
        .select({ key: trainees.nameKey, plate: trainees.plate })
        .from(trainees)
        .where(eq(trainees.classId, this.id));
      const there = new Set(known.map((k) => k.key));
      let last = Math.max(0, ...known.map((k) => k.plate ?? 0));
      const fresh = people.filter((p) => !there.has(nameKey(p.name)));
      if (fresh.length === 0) return 0;
      await tx.insert(trainees).values(
        fresh.map(({ name, sourcedId }) => ({
          ...{ id: randomUUID(), classId: this.id, name, sourcedId, nameKey: nameKey(name), made },
          plate: ++last <= MOST_PLATES ? last : null,
        })),
      );
      return fresh.length;
    });
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
    const startWord = readJudge(n.judge.content).exercise.vary === undefined ? null : newCode();
    const judge = n.judge.digest;
    const row = { id: randomUUID(), classId: this.id, judge, title, opens, closes, mostAttempts, startWord };
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
        plate: trainees.plate,
        assignment: assignments,
        score: {
          // First, since drizzle takes a joined row whose first field is null for none; of what could not be scored the result is.
          scored: scores.scored,
          result: scores.result,
          hand: scores.hand,
          motion: scores.motion,
          fault: scores.fault,
        },
      })
      .from(submissions)
      .innerJoin(trainees, eq(trainees.id, submissions.traineeId))
      .innerJoin(assignments, eq(assignments.id, submissions.assignmentId))
      .leftJoin(scores, this.scoreOf())
      .where(and(...only))
      .orderBy(desc(submissions.received), desc(submissions.id));
    const rows = await (filter.most === undefined ? query : query.limit(filter.most));
    return rows as Handed[];
  }

  /** How much is handed in, and how much of it has a score by this program's versions. */
  async progress(): Promise<{ handed: number; scored: number }> {
    const [row] = await this.db
      .select({ handed: count(submissions.id), scored: count(scores.attempt) })
      .from(submissions)
      .innerJoin(assignments, eq(assignments.id, submissions.assignmentId))
      .leftJoin(scores, this.scoreOf())
      .where(eq(submissions.classId, this.id));
    return row ?? { handed: 0, scored: 0 };
  }

  /** Everything that speaks for or against a submission. */
  async evidence(h: Handed): Promise<Evidence[]> {
    return (await ClassEvidence.about(this, [h])).of(h, true);
  }

  /** Marks of an assignment: for everybody on the roster the computed one and what was set beside it. */
  async marks(assignment: AssignmentRow): Promise<MarksRow[]> {
    const [people, handed, overridden] = await Promise.all([
      this.trainees(),
      this.handed({ assignment: assignment.id }),
      this.overrides(assignment.id),
    ]);
    const evidenceOf = await ClassEvidence.about(this, handed);
    const attempts = new Map<string, MarkedAttempt[]>();
    for (const h of handed) {
      const evidence = await evidenceOf.of(h, true);
      const mine = attempts.get(h.trainee.id) ?? [];
      mine.push({ number: h.submission.number, score: h.score?.result?.score ?? null, evidence });
      attempts.set(h.trainee.id, mine);
    }
    return people.map(({ id, name, sourcedId }) => {
      const mine = attempts.get(id) ?? [];
      const history = overridden.filter((o) => o.traineeId === id);
      return {
        trainee: { id, name, sourcedId },
        attempts: mine.length,
        computed: markOf(this.class.marks, mine),
        set: history.at(-1)?.mark ?? null,
        history,
      };
    });
  }

  /** Marks set by hand for an assignment, in the order they were set. */
  overrides(assignmentId: string): Promise<OverrideRow[]> {
    return this.db
      .select()
      .from(overrides)
      .where(and(eq(overrides.assignmentId, assignmentId), eq(overrides.classId, this.id)))
      .orderBy(asc(overrides.id));
  }

  /** Sets a mark beside the computed one or takes the one set back; nothing that was set before is changed. */
  async setMark(o: {
    assignmentId: string;
    traineeId: string;
    mark: number | null;
    reason: string;
    by: string;
  }): Promise<void> {
    await this.db.insert(overrides).values({ classId: this.id, ...o, at: new Date() });
  }

  /** Versions of engine and scoring that scores of this class were made with, and how many. */
  async versions(): Promise<{ engine: string; scoring: string; scores: number }[]> {
    return this.db
      .select({ engine: scores.engine, scoring: scores.scoring, scores: countDistinct(submissions.id) })
      .from(submissions)
      .innerJoin(assignments, eq(assignments.id, submissions.assignmentId))
      .innerJoin(scores, and(eq(scores.attempt, submissions.attempt), eq(scores.judge, submissions.judge)))
      .where(eq(submissions.classId, this.id))
      .groupBy(scores.engine, scores.scoring)
      .orderBy(asc(scores.engine), asc(scores.scoring));
  }

  /** Submissions scored by both versions whose verdict or number differs between them. */
  async differences(old: Versions, now: Versions): Promise<{ compared: number; differing: Difference[] }> {
    const a = alias(scores, 'a');
    const b = alias(scores, 'b');
    const by = (t: typeof a | typeof b, v: Versions) =>
      and(
        eq(t.attempt, submissions.attempt),
        eq(t.judge, submissions.judge),
        eq(t.engine, v.engine),
        eq(t.scoring, v.scoring),
      );
    const rows = await this.db
      .select({
        id: submissions.id,
        trainee: trainees.name,
        assignment: assignments.title,
        number: submissions.number,
        old: a.result,
        oldFault: a.fault,
        now: b.result,
        nowFault: b.fault,
      })
      .from(submissions)
      .innerJoin(trainees, eq(trainees.id, submissions.traineeId))
      .innerJoin(assignments, eq(assignments.id, submissions.assignmentId))
      .innerJoin(a, by(a, old))
      .innerJoin(b, by(b, now))
      .where(eq(submissions.classId, this.id))
      .orderBy(asc(assignments.opens), asc(trainees.nameKey), asc(submissions.number));
    const differing = rows.flatMap(({ old, oldFault, now, nowFault, ...which }) => {
      const before = summary(old as Result | null, oldFault);
      const after = summary(now as Result | null, nowFault);
      return JSON.stringify(before) === JSON.stringify(after) ? [] : [{ ...which, before, after }];
    });
    return { compared: rows.length, differing };
  }

  /** The score of a submission by this program's versions. */
  scoreOf(): SQL | undefined {
    return and(
      eq(scores.attempt, submissions.attempt),
      eq(scores.judge, submissions.judge),
      eq(scores.engine, this.#versions.engine),
      eq(scores.scoring, this.#versions.scoring),
    );
  }

  #isTrainee(id: string): SQL | undefined {
    return and(eq(trainees.id, id), eq(trainees.classId, this.id));
  }

  #isAssignment(id: string): SQL | undefined {
    return and(eq(assignments.id, id), eq(assignments.classId, this.id));
  }
}

function summary(result: Result | null, fault: string | null): ScoreSummary {
  return { verdict: result?.verdict ?? null, score: result?.score ?? null, fault };
}
