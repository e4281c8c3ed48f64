import { and, asc, eq, isNull, lt } from 'drizzle-orm';
import type { Versions } from './judge.ts';
import type { ScoreJob } from './queue.ts';
import type { ScoreOutcome } from './score-one.ts';
import type { Statements } from './statements.ts';
import type { Db } from './store.ts';
import { judges, scores, submissions } from './tables.ts';

/** A finished score on its way into its table. */
export interface NewScore extends ScoreJob {
  outcome: ScoreOutcome;
  took_ms: number;
  worker: string;
}

/** Scores of one version of engine and scoring. */
export class Scores {
  readonly #db: Db;
  readonly #versions: Versions;
  readonly #statements: Statements | null;

  /** @param told what the school's record store is told of each score; null: nothing */
  constructor(db: Db, versions: Versions, told: Statements | null = null) {
    this.#db = db;
    this.#versions = versions;
    this.#statements = told;
  }

  /** Writes a score unless there is one; whether it was written. A score never changes. */
  async write(score: NewScore): Promise<boolean> {
    const told = this.#statements;
    if (told === null) return this.#insert(this.#db, score);
    return this.#db.transaction(async (tx) => {
      const written = await this.#insert(tx, score);
      await told.write(tx, score);
      return written;
    });
  }

  /** What is handed in by one more person after it was scored is told too. */
  async tellAgain(job: ScoreJob): Promise<void> {
    await this.#statements?.write(this.#db, job);
  }

  async #insert(db: Db, { attempt, judge, outcome, took_ms, worker }: NewScore): Promise<boolean> {
    const written = await db
      .insert(scores)
      .values({
        attempt,
        judge,
        ...this.#versions,
        ...outcome,
        scored: new Date(),
        took_ms: Math.round(took_ms),
        worker,
      })
      .onConflictDoNothing()
      .returning({ attempt: scores.attempt });
    return written.length === 1;
  }

  async has({ attempt, judge }: ScoreJob): Promise<boolean> {
    const found = await this.#db
      .select({ attempt: scores.attempt })
      .from(scores)
      .where(
        and(
          eq(scores.attempt, attempt),
          eq(scores.judge, judge),
          eq(scores.engine, this.#versions.engine),
          eq(scores.scoring, this.#versions.scoring),
        ),
      );
    return found.length > 0;
  }

  /** What is handed in and not scored, oldest first. @param before only what was received earlier */
  async missing(before: Date, most: number): Promise<ScoreJob[]> {
    return this.#db
      .selectDistinctOn([submissions.received, submissions.attempt, submissions.judge], {
        attempt: submissions.attempt,
        judge: submissions.judge,
      })
      .from(submissions)
      .leftJoin(
        scores,
        and(
          eq(scores.attempt, submissions.attempt),
          eq(scores.judge, submissions.judge),
          eq(scores.engine, this.#versions.engine),
          eq(scores.scoring, this.#versions.scoring),
        ),
      )
      .where(and(isNull(scores.attempt), lt(submissions.received, before)))
      .orderBy(asc(submissions.received), asc(submissions.attempt), asc(submissions.judge))
      .limit(most);
  }

  async judgeContent(digest: string): Promise<string | null> {
    const [row] = await this.#db.select().from(judges).where(eq(judges.digest, digest));
    return row?.content ?? null;
  }
}
