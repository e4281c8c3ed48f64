import { and, asc, eq, inArray, sql } from 'drizzle-orm';
import { type Evidence, evidenceOf, type Twin } from './evidence.ts';
import type { Handed, OneClass } from './handed.ts';
import { readJudge } from './judge.ts';
import { against, type Moved, type NearTwin, NearTwins, type Place } from './near-twins.ts';
import { type Plate, pieceFault } from './piece.ts';
import { assignments, classes, judges, scores, submissions, teaches, trainees } from './tables.ts';

/** What this process knows of which hand is nearly which. */
const nearTwins = new NearTwins();

/** Scored attempts at one exercise up to which a list compares every motion with every other; of more it is done for each as it is opened. */
const MOST_COMPARED = 300;

/**
 * What speaks for or against attempts of one class. Twins are looked for in every class that shares an instructor with it; whose they are is told for those
 * only that the person asking teaches.
 */
export class ClassEvidence {
  readonly #desk: OneClass;
  readonly #scope: readonly string[];
  readonly #taught: ReadonlySet<string>;
  #twins = new Map<string, { id: string; place: Place }[]>();
  #moved = new Map<string, Moved[]>();
  #exercises = new Map<string, ReturnType<typeof readJudge>['exercise']>();
  #plates: readonly Plate[] = [];

  private constructor(desk: OneClass, scope: readonly string[], taught: ReadonlySet<string>) {
    this.#desk = desk;
    this.#scope = scope;
    this.#taught = taught;
  }

  /** Reads what is needed to speak about the attempts given. */
  static async about(desk: OneClass, handed: readonly Handed[]): Promise<ClassEvidence> {
    const { db } = desk;
    const mine = db.select({ id: teaches.instructorId }).from(teaches).where(eq(teaches.classId, desk.id));
    const rows = await db
      .select({ classId: teaches.classId, instructorId: teaches.instructorId })
      .from(teaches)
      .where(inArray(teaches.instructorId, mine));
    const scope = [...new Set([desk.id, ...rows.map((r) => r.classId)])];
    const taught = new Set([desk.id, ...rows.flatMap((r) => (r.instructorId === desk.asker ? [r.classId] : []))]);
    const evidence = new ClassEvidence(desk, scope, taught);
    await evidence.#read(handed);
    return evidence;
  }

  /** Whether a list of attempts says of this one whether its motion is nearly another's; else that is said where it is opened. */
  isCompared(h: Handed): boolean {
    return (this.#moved.get(h.assignment.judge)?.length ?? 0) <= MOST_COMPARED;
  }

  /** @param near looks for nearly the same motion, however many there are */
  async of(h: Handed, near: boolean): Promise<Evidence[]> {
    const { submission: s, assignment, score } = h;
    const twins = (this.#twins.get(score?.hand ?? '') ?? []).filter((t) => t.id !== s.id);
    const exercise = this.#exercises.get(assignment.judge);
    const deal = { startWord: assignment.startWord, plate: h.plate };
    return evidenceOf({
      result: score?.result ?? null,
      late: s.late,
      number: s.number,
      mostAttempts: assignment.mostAttempts,
      piece: exercise === undefined ? null : pieceFault(exercise, deal, s.carried, this.#plates),
      twins: twins.map((t): Twin => ({ id: t.id, said: this.#said(t.place, assignment.id) })),
      nearTwins: near ? await this.#near(h) : [],
    });
  }

  async #near(h: Handed): Promise<NearTwin[]> {
    const moved = this.#moved.get(h.assignment.judge) ?? [];
    const one = moved.find((m) => m.id === h.submission.id);
    if (one === undefined) return [];
    const found = against(one, await nearTwins.of(one, moved));
    return found.map(({ of, copy }) => ({ of: { ...of, said: this.#said(of.place, h.assignment.id) }, copy }));
  }

  async #read(handed: readonly Handed[]): Promise<void> {
    const judgesMeant = [...new Set(handed.map((h) => h.assignment.judge))];
    const varied = [...new Set(handed.flatMap((h) => (h.assignment.startWord === null ? [] : [h.assignment.judge])))];
    const [twins, moved, people, contents] = await Promise.all([
      this.#readTwins([...new Set(handed.flatMap((h) => h.score?.hand ?? []))]),
      this.#readMoved(judgesMeant),
      varied.length === 0 ? [] : this.#desk.trainees(),
      varied.length === 0 ? [] : this.#desk.db.select().from(judges).where(inArray(judges.digest, varied)),
    ]);
    this.#twins = twins;
    this.#moved = moved;
    this.#plates = people.flatMap(({ name, plate }) => (plate === null ? [] : [{ name, plate }]));
    for (const { digest, content } of contents) this.#exercises.set(digest, readJudge(content).exercise);
  }

  /** Submissions with the same hand, pose for pose, for those hands that more than one has. */
  async #readTwins(hands: readonly string[]): Promise<Map<string, { id: string; place: Place }[]>> {
    const found = new Map<string, { id: string; place: Place }[]>();
    if (hands.length === 0) return found;
    const { db } = this.#desk;
    const within = inArray(submissions.classId, this.#scope as string[]);
    const shared = db
      .select({ hand: scores.hand })
      .from(scores)
      .innerJoin(submissions, eq(submissions.attempt, scores.attempt))
      .where(and(within, inArray(scores.hand, hands as string[])))
      .groupBy(scores.hand)
      .having(sql`count(distinct ${submissions.id}) > 1`);
    const rows = await db
      .selectDistinct({ hand: scores.hand, id: submissions.id, place: PLACE })
      .from(scores)
      .innerJoin(submissions, eq(submissions.attempt, scores.attempt))
      .innerJoin(trainees, eq(trainees.id, submissions.traineeId))
      .innerJoin(assignments, eq(assignments.id, submissions.assignmentId))
      .innerJoin(classes, eq(classes.id, submissions.classId))
      .where(and(within, inArray(scores.hand, shared)))
      .orderBy(asc(submissions.id));
    for (const { hand, id, place } of rows) {
      if (hand === null) continue;
      const some = found.get(hand) ?? [];
      some.push({ id, place });
      found.set(hand, some);
    }
    return found;
  }

  /** Scored submissions as far as their motion goes, by the exercise they were handed in for, wherever that was handed out. */
  async #readMoved(judgesMeant: readonly string[]): Promise<Map<string, Moved[]>> {
    const found = new Map<string, Moved[]>();
    if (judgesMeant.length === 0) return found;
    const rows = await this.#desk.db
      .select({
        judge: assignments.judge,
        id: submissions.id,
        traineeId: trainees.id,
        received: submissions.received,
        hand: scores.hand,
        motion: scores.motion,
        place: PLACE,
      })
      .from(submissions)
      .innerJoin(assignments, eq(assignments.id, submissions.assignmentId))
      .innerJoin(classes, eq(classes.id, submissions.classId))
      .innerJoin(trainees, eq(trainees.id, submissions.traineeId))
      .innerJoin(scores, this.#desk.scoreOf())
      .where(
        and(inArray(submissions.classId, this.#scope as string[]), inArray(assignments.judge, judgesMeant as string[])),
      )
      .orderBy(asc(submissions.received), asc(submissions.id));
    for (const { judge, hand, motion, traineeId, place, ...row } of rows) {
      if (hand === null || motion === null) continue;
      const some = found.get(judge) ?? [];
      some.push({ ...row, hand, motion, place, trainee: { id: traineeId }, said: '' });
      found.set(judge, some);
    }
    return found;
  }

  /** Another attempt, named as far as the person asking may know it. */
  #said(p: Place, assignmentId: string): string {
    if (!this.#taught.has(p.classId)) return 'an attempt in a class of another instructor';
    const where = [
      ...(p.assignmentId === assignmentId ? [] : [`at ${p.title}`]),
      ...(p.classId === this.#desk.id ? [] : [`in ${p.class}`]),
    ];
    return `${p.trainee} (${[`attempt ${p.number}`, ...where].join(' ')})`;
  }
}

const PLACE = {
  classId: submissions.classId,
  class: classes.name,
  assignmentId: assignments.id,
  title: assignments.title,
  trainee: trainees.name,
  number: submissions.number,
};
