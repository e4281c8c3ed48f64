import { setImmediate } from 'node:timers/promises';
import type { PGlite } from '@electric-sql/pglite';
import { drizzle } from 'drizzle-orm/pglite';
import { migrate } from 'drizzle-orm/pglite/migrator';
import type { Scheduler } from 'fast-check';
import { judgeOf, VERSIONS } from '../../../scoring/lab/judge.ts';
import { Scores } from '../../../scoring/lab/scores.ts';
import { Statements } from '../../../scoring/lab/statements.ts';
import type { Db } from '../../../scoring/lab/store.ts';
import * as tables from '../../../scoring/lab/tables.ts';
import { shortExercise } from '../support/attempts.ts';
import { SimulatedDisk } from './disk.ts';
import { openEngine, quickly } from './one-message.ts';
import { type Fault, type Process, World } from './world.ts';

const CLASS = 'tern-dock';
const SUBMISSIONS = ['one', 'two'];
const STORE = { url: 'http://store.invalid', login: null, home: 'http://lab.invalid' };
/** More than there can be faults. */
const MOST_TRIES = 60;

/** What a planted mistake exchanges; left out: the lab's own. */
export type PlantedStatements = (db: Db, ask: typeof fetch) => Statements;

/** Scores written with their statements, and statements sent by two senders at once, under schedules of faults at database, store and process. */
export class OutboxSimulation {
  readonly #engine: PGlite;
  readonly #db: Db;
  readonly #judge = judgeOf(shortExercise());

  private constructor(engine: PGlite) {
    this.#engine = engine;
    this.#db = quickly(engine);
  }

  static async open(): Promise<OutboxSimulation> {
    const engine = await openEngine();
    await migrate(drizzle(engine), { migrationsFolder: 'scoring/lab/migrations' });
    await engine.exec('set synchronous_commit = off');
    return new OutboxSimulation(engine);
  }

  close(): Promise<void> {
    return this.#engine.close();
  }

  /** @returns everything that did not hold; empty: all of it held */
  async run(
    s: Scheduler,
    faults: readonly Fault[],
    planted?: PlantedStatements,
  ): Promise<{ wrong: string[]; struck: readonly string[] }> {
    await this.#openSchool();
    const world = new World(s, faults, new SimulatedDisk('/lab'));
    const store = new Map<string, string>();
    const wrong: string[] = [];
    const toldBy = (process: Process): { db: Db; told: Statements } => {
      const db = world.databaseOf(process, this.#engine);
      const ask = asking(world, process, store);
      return { db, told: planted?.(db, ask) ?? new Statements(db, STORE, VERSIONS, ask) };
    };
    /** A process that is started again whenever it is dead; what fails is tried again, as the queue does. */
    const insisting = async (what: string, work: (parts: { db: Db; told: Statements }) => Promise<boolean>) => {
      let process = world.begin();
      for (let tries = 0; tries < MOST_TRIES; tries++) {
        if (!process.alive) process = world.begin();
        if (world.databaseLost) {
          world.databaseLost = false;
          await this.#openSchool();
        }
        await world.turn(what);
        if (await work(toldBy(process)).catch(() => false)) return;
      }
      wrong.push(`${what} comes to no end`);
    };
    const score = (attempt: string) => async (parts: { db: Db; told: Statements }) => {
      const job = { attempt, judge: this.#judge.digest };
      const scores = new Scores(parts.db, VERSIONS, parts.told);
      if (await scores.has(job)) await scores.tellAgain(job);
      else await scores.write({ ...job, outcome: OUTCOME, took_ms: 1, worker: 'worker' });
      return true;
    };
    const send = async ({ told }: { told: Statements }) => {
      const ids = await told.waiting(10);
      for (const id of ids) await told.send(id);
      return ids.length === 0;
    };
    const scoreAll = () => Promise.all(SUBMISSIONS.map((id) => insisting(`score ${id}`, score(id))));
    await s.waitFor(Promise.all([scoreAll(), insisting('send', send), insisting('send beside', send)]));
    // A database put back from before has lost scores: they are welded again, and what is said of them is sent.
    for (let left = 0; left < 3 && (await this.#waiting()) !== 0; left++) {
      await s.waitFor(scoreAll());
      await s.waitFor(insisting('send', send));
    }
    const about = [...store].map(([id, text]) => ({ id, submission: submissionIn(text) }));
    for (const submission of SUBMISSIONS) {
      const ids = about.filter((a) => a.submission === submission).map((a) => a.id);
      if (ids.length === 0) wrong.push(`lost: nothing was said of ${submission}`);
      if (ids.length > 1) wrong.push(`sent twice: ${submission} as ${ids.join(' and ')}`);
    }
    await setImmediate();
    return { wrong, struck: world.struck };
  }

  /** Submissions without a statement that was sent. */
  async #waiting(): Promise<number> {
    const { rows } = await this.#engine.query<{ n: number }>(
      'select count(*)::int as n from submissions s where not exists (select 1 from statements t where t.submission_id = s.id and t.sent is not null)',
    );
    return rows[0]!.n;
  }

  async #openSchool(): Promise<void> {
    const made = new Date(0);
    await this.#engine.exec(`set session_replication_role = replica;${EMPTY};set session_replication_role = origin`);
    const { classes, trainees, judges, assignments, submissions } = tables;
    const db = this.#db;
    const person = { id: 'ines', classId: CLASS, name: 'ines', nameKey: 'ines', sourcedId: null, made };
    const judge = this.#judge.digest;
    const tee = { id: 'tee', classId: CLASS, judge, title: 'Tee', opens: made, closes: null, mostAttempts: null, made };
    await db
      .insert(classes)
      .values({ id: CLASS, name: CLASS, code: 'TERN', marks: { rule: 'best' }, pins: false, made });
    await db.insert(trainees).values(person);
    await db.insert(judges).values(this.#judge);
    await db.insert(assignments).values(tee);
    await db.insert(submissions).values(
      SUBMISSIONS.map((id, i) => ({
        ...{ id, classId: CLASS, assignmentId: 'tee', traineeId: 'ines', attempt: id, judge, bytes: 1 },
        ...{ received: made, number: i + 1, late: false },
      })),
    );
  }
}

const EMPTY = ['statements', 'scores', 'submissions', 'assignments', 'trainees', 'classes', 'judges']
  .map((name) => `delete from ${name}`)
  .join(';');

/** As much of a result as is said of it. */
const OUTCOME = {
  result: { verdict: 'within', score: 80, process: { arcTime_s: 12 } },
  ...{ hand: null, motion: null, fault: null },
} as unknown as Parameters<Scores['write']>[0]['outcome'];

/** A record store that keeps a statement under its id once and for all (xAPI 1.0.3, Part Three, 2.1.1: 409 where the id is there; from memory). */
function asking(world: World, process: Process, store: Map<string, string>): typeof fetch {
  return (address, init) =>
    world.gate(process, 'store', async () => {
      const id = new URL(String(address)).searchParams.get('statementId')!;
      if (store.has(id)) return new Response(null, { status: 409 });
      store.set(id, String(init?.body));
      return new Response(null, { status: 204 });
    });
}

function submissionIn(text: string): string {
  const { context } = JSON.parse(text) as { context: { extensions: Record<string, string> } };
  return context.extensions[`${STORE.home}/xapi/attempt`]!;
}
