import { and, asc, eq, isNull } from 'drizzle-orm';
import type { Result } from '../index.ts';
import type { Versions } from './judge.ts';
import type { ScoreJob } from './queue.ts';
import { statementOf } from './statement.ts';
import type { Db } from './store.ts';
import { assignments, scores, statements, submissions } from './tables.ts';

/** The school's record store. */
export interface RecordStore {
  /** Address under which `statements` is. */
  url: string;
  /** Name and password of the store, joined by a colon; null: it asks for none. */
  login: string | null;
  /** Address that stands for the lab in statements. */
  home: string;
}

/** Statements on their way: written with the score, sent when they can be, marked when the store has them. */
export class Statements {
  readonly #db: Db;
  readonly #store: RecordStore;
  readonly #versions: Versions;
  readonly #ask: typeof fetch;

  /** @param ask how the store is asked */
  constructor(db: Db, store: RecordStore, versions: Versions, ask: typeof fetch = fetch) {
    this.#ask = ask;
    this.#db = db;
    this.#store = store;
    this.#versions = versions;
  }

  /** Writes what there is to say of a score, for everybody who handed that attempt in; what was written before stays. @param tx the transaction of the score */
  async write(tx: Db, { attempt, judge }: ScoreJob): Promise<void> {
    const rows = await tx
      .select({ submission: submissions, assignment: assignments, result: scores.result })
      .from(submissions)
      .innerJoin(assignments, eq(assignments.id, submissions.assignmentId))
      .innerJoin(
        scores,
        and(
          eq(scores.attempt, submissions.attempt),
          eq(scores.judge, submissions.judge),
          eq(scores.engine, this.#versions.engine),
          eq(scores.scoring, this.#versions.scoring),
        ),
      )
      .where(and(eq(submissions.attempt, attempt), eq(submissions.judge, judge)));
    for (const { submission: s, assignment, result } of rows) {
      // What could not be scored has nothing to be said of it.
      if (result === null) continue;
      const statement = statementOf(
        {
          ...{ submissionId: s.id, trainee: s.traineeId, number: s.number, late: s.late, received: s.received },
          ...{ assignment, result: result as Result, versions: this.#versions },
        },
        this.#store.home,
      );
      await tx
        .insert(statements)
        .values({ id: statement.id, submissionId: s.id, statement: JSON.stringify(statement), made: new Date() })
        .onConflictDoNothing();
    }
  }

  /** Ids of what is not sent, oldest first. */
  async waiting(most: number): Promise<string[]> {
    const rows = await this.#db
      .select({ id: statements.id })
      .from(statements)
      .where(and(isNull(statements.sent), isNull(statements.refused)))
      .orderBy(asc(statements.made), asc(statements.id))
      .limit(most);
    return rows.map((r) => r.id);
  }

  /**
   * Sends one and marks it. Killed between the two, it is sent again under the same id, which a store takes for the same statement.
   * @throws Error when the store did not take it and may yet
   */
  async send(id: string): Promise<void> {
    const [row] = await this.#db.select().from(statements).where(eq(statements.id, id));
    if (row === undefined || row.sent !== null || row.refused !== null) return;
    const { url, login } = this.#store;
    const ask = this.#ask;
    const answer = await ask(`${url.replace(/\/+$/, '')}/statements?statementId=${id}`, {
      method: 'PUT',
      headers: {
        'content-type': 'application/json',
        'x-experience-api-version': '1.0.3',
        ...(login === null ? {} : { authorization: `Basic ${Buffer.from(login).toString('base64')}` }),
      },
      body: row.statement,
      redirect: 'error',
      signal: AbortSignal.timeout(20_000),
    });
    await answer.body?.cancel();
    // 409: the store has a statement of this id, as after a kill; whether it is word for word this one it does not say.
    if (answer.ok || answer.status === 409) {
      await this.#db.update(statements).set({ sent: new Date() }).where(eq(statements.id, id));
    } else if (answer.status === 400 || answer.status === 413) {
      await this.#db
        .update(statements)
        .set({ refused: `the record store answered ${answer.status}` })
        .where(eq(statements.id, id));
    } else throw new Error(`the record store answered ${answer.status}`);
  }
}
