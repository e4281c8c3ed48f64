import type { PGlite } from '@electric-sql/pglite';
import { asc, sql } from 'drizzle-orm';
import { drizzle } from 'drizzle-orm/pglite';
import { migrate } from 'drizzle-orm/pglite/migrator';
import type { Scheduler } from 'fast-check';
import { AttemptFiles } from '../../../scoring/lab/attempt-files.ts';
import { digestOf } from '../../../scoring/lab/digests.ts';
import type { Disk } from '../../../scoring/lab/disk.ts';
import { judgeOf, VERSIONS } from '../../../scoring/lab/judge.ts';
import type { ScoreQueue } from '../../../scoring/lab/queue.ts';
import { rebuild } from '../../../scoring/lab/rebuild.ts';
import type { ScoreOutcome } from '../../../scoring/lab/score-one.ts';
import { Scores } from '../../../scoring/lab/scores.ts';
import type { Db } from '../../../scoring/lab/store.ts';
import { submit } from '../../../scoring/lab/submit.ts';
import * as tables from '../../../scoring/lab/tables.ts';
import { Worker } from '../../../scoring/lab/worker.ts';
import { bytesOf, shortAttempt, shortExercise } from '../support/attempts.ts';
import { SimulatedDisk } from './disk.ts';
import { openEngine, quickly, withLiterals } from './one-message.ts';
import { SimulatedQueue } from './queue.ts';
import { type Fault, type Process, World } from './world.ts';

const ROOT = '/lab';
const CLASS = { id: 'tern-dock', name: 'Tern Dock', code: 'TERN' };
const TRAINEES = ['ines', 'tom'];
/** Later than the clock ever jumps. */
const FAR = new Date(Date.UTC(3000, 0));
/** A client that is refused more often than there can be faults has found one. */
const MOST_TRIES = 60;
/** Turns others have while it settles, before it is asked whether everything is scored. */
const LOOK_TURNS = 12;

/** Parts that a planted fault exchanges; left out: the lab's own. */
export interface Planted {
  disk?: (disk: Disk) => Disk;
  scores?: (db: Db) => Scores;
  /** Tells the client before anything is kept. */
  hasty?: boolean;
}

/** Upload n of a schedule: whose it is, and which attempt. */
export interface Upload {
  trainee: 0 | 1;
  attempt: 0 | 1 | 2;
}

/** A submission as it stands in the database, and how many scores it has. */
interface Row {
  traineeId: string;
  attempt: string;
  number: number;
  late: boolean;
  received: Date;
  scores: number;
}

interface Rebuilt {
  spoilt: string[];
  again: Row[];
}

/** Several schedules one after another on one embedded database. */
export class Simulation {
  readonly #engine: PGlite;
  readonly #db: Db;
  readonly #judge = judgeOf(shortExercise());
  readonly #attempts: Uint8Array[];
  readonly #school: string;
  readonly #met = new Map<string, Rebuilt>();

  private constructor(engine: PGlite) {
    this.#engine = engine;
    this.#db = quickly(engine);
    const { poses, ...recording } = shortAttempt(0);
    // Nothing is welded here: a recording of a few poses is one.
    const few = Object.fromEntries(Object.entries(poses).map(([name, column]) => [name, column.slice(0, 4)]));
    this.#attempts = [0, 1, 2].map((seed) => bytesOf({ ...recording, poses: few, seed }));
    this.#school = this.#schoolText();
  }

  static async open(): Promise<Simulation> {
    const engine = await openEngine();
    await migrate(drizzle(engine), { migrationsFolder: 'scoring/lab/migrations' });
    // Whether a commit is on the platter is not tried here: a power cut may take the whole database.
    await engine.exec('set synchronous_commit = off');
    for (const name of UNLOGGED) await engine.exec(`alter table ${name} set unlogged`);
    return new Simulation(engine);
  }

  close(): Promise<void> {
    return this.#engine.close();
  }

  /**
   * Upload, file, acknowledgement, queue, score and row under one schedule of faults.
   * @returns everything that did not hold; empty: all of it held
   */
  async run(
    s: Scheduler,
    uploads: readonly Upload[],
    faults: readonly Fault[],
    planted: Planted = {},
  ): Promise<{ wrong: string[]; awaits: number; struck: readonly string[] }> {
    await this.#wipe();
    const disk = new SimulatedDisk(ROOT);
    await this.#openSchool(disk);
    const world = new World(s, faults, disk);
    const lab = new SimulatedLab(
      world,
      this.#engine,
      this.#db,
      planted,
      () => this.#wipe(),
      () => this.#openSchool(disk),
    );
    const wrong: string[] = [];
    const acknowledged = new Map<string, number>();
    const clients = uploads.map(async ({ trainee, attempt }) => {
      const bytes = this.#attempts[attempt]!;
      const id = TRAINEES[trainee]!;
      for (let tries = 0; ; tries++) {
        if (tries > MOST_TRIES) {
          wrong.push(`upload of attempt ${attempt} by ${id} is refused again and again`);
          return;
        }
        await world.turn('client');
        const number = await lab.handIn(id, bytes).catch(() => null);
        if (number === null) continue;
        const key = `${id} ${digestOf(bytes)}`;
        const before = acknowledged.get(key);
        if (before !== undefined && before !== number && !world.databaseLost)
          wrong.push(`${key}: acknowledged as ${before} and as ${number}`);
        acknowledged.set(key, number);
        return;
      }
    });
    await s.waitFor(Promise.all(clients));
    await s.waitFor(lab.settle());
    wrong.push(...lab.wrong);
    const rows = await this.#rows();
    for (const key of acknowledged.keys())
      if (!rows.some((r) => `${r.traineeId} ${r.attempt}` === key)) wrong.push(`lost: acknowledged ${key}`);
    if (rows.length !== new Set(uploads.map((u) => `${u.trainee}${u.attempt}`)).size)
      wrong.push(`${rows.length} rows of ${uploads.length} uploads`);
    for (const r of rows) if (r.scores !== 1) wrong.push(`${r.attempt} has ${r.scores} scores`);
    // The machine burns down; what was on the platter is put into another one.
    disk.cut(() => false);
    const { spoilt, again } = await this.#rebuilt(disk);
    for (const why of spoilt) wrong.push(`spoilt after the end: ${why}`);
    const said = (list: typeof rows): string => JSON.stringify(list.map(({ scores: _, ...r }) => r));
    if (said(again) !== said(rows)) wrong.push(`rebuilt as ${said(again)}, was ${said(rows)}`);
    return { wrong, awaits: world.awaits, struck: world.struck };
  }

  /** What an empty database comes to from the files of a disk. The same files give the same: those met before are not put back once more. */
  async #rebuilt(disk: SimulatedDisk): Promise<Rebuilt> {
    const files = disk.print();
    const before = this.#met.get(files);
    if (before !== undefined) return before;
    await this.#wipe();
    const back = await rebuild(this.#db, new AttemptFiles(ROOT, disk));
    const rebuilt = { spoilt: back.spoilt.map(({ why }) => why), again: await this.#rows() };
    this.#met.set(files, rebuilt);
    return rebuilt;
  }

  async #rows(): Promise<Row[]> {
    const { submissions } = tables;
    return this.#db
      .select({
        traineeId: submissions.traineeId,
        attempt: submissions.attempt,
        number: submissions.number,
        late: submissions.late,
        received: submissions.received,
        scores: sql<number>`(select count(*)::int from scores s where s.attempt = submissions.attempt)`,
      })
      .from(submissions)
      .orderBy(asc(submissions.traineeId), asc(submissions.number));
  }

  async #wipe(): Promise<void> {
    await this.#engine.exec(unwatched(WIPE));
  }

  /** The class as its instructor made it; what is there stays. Its judge is on the disk before it is handed out. */
  async #openSchool(disk: Disk): Promise<void> {
    await new AttemptFiles(ROOT, disk).keepJudge(this.#judge.content);
    await this.#engine.exec(unwatched(this.#school));
  }

  /** All of the class in one text: a schedule opens it twice or more. */
  #schoolText(): string {
    const made = new Date(0);
    const marks = { rule: 'best' } as const;
    const judge = this.#judge.digest;
    const people = TRAINEES.map((id) => ({ id, classId: CLASS.id, name: id, nameKey: id, sourcedId: null, made }));
    const tee = {
      id: 'tee',
      classId: CLASS.id,
      judge,
      title: 'Tee',
      opens: made,
      closes: null,
      mostAttempts: null,
      made,
    };
    const { classes, trainees, judges, assignments } = tables;
    return [
      this.#db
        .insert(classes)
        .values({ ...CLASS, marks, pins: false, made })
        .onConflictDoNothing(),
      this.#db.insert(trainees).values(people).onConflictDoNothing(),
      this.#db.insert(judges).values(this.#judge).onConflictDoNothing(),
      this.#db.insert(assignments).values(tee).onConflictDoNothing(),
    ]
      .map((insert) => withLiterals(insert.toSQL()))
      .join(';');
  }
}

/** What the simulation does to the database from outside need not be held against its foreign keys row by row. */
function unwatched(text: string): string {
  return `set session_replication_role = replica;${text};set session_replication_role = origin`;
}

/** Without a log of what is never read back: a tenth of the time. In an order in which no table refers to one that is still logged. */
const UNLOGGED = [
  ...['overrides', 'statements', 'welding', 'scores', 'submissions', 'sessions', 'teaches', 'assignments', 'trainees'],
  ...['judges', 'classes', 'exercises', 'instructors', 'audit'],
];

const WIPE = ['scores', 'submissions', 'assignments', 'trainees', 'classes', 'judges', 'audit']
  .map((name) => `delete from ${name}`)
  .join(';');

/** One service with a worker of its own and a worker beside it, each started again whenever it is dead. */
class SimulatedLab {
  readonly wrong: string[] = [];
  readonly #queue = new SimulatedQueue();
  /** The weld whose score was written, by attempt. */
  readonly #written = new Map<string, string>();
  #service: Running | null = null;
  #beside: Running | null = null;
  #starting: Promise<void> | null = null;
  #welds = 0;

  constructor(
    private readonly world: World,
    private readonly engine: PGlite,
    private readonly real: Db,
    private readonly planted: Planted,
    private readonly wipe: () => Promise<void>,
    private readonly openSchool: () => Promise<void>,
  ) {
    this.#queue.woken = () => {
      this.#service?.worker.wake();
      this.#beside?.worker.wake();
    };
  }

  /** What the route does. @returns the attempt's number once it is acknowledged */
  async handIn(trainee: string, bytes: Uint8Array): Promise<number> {
    const { db, files, queue } = await this.#serving();
    const who = { role: 'trainee', id: trainee, classId: CLASS.id } as Parameters<typeof submit>[2]['who'];
    const upload = { who, assignmentId: 'tee', digest: digestOf(bytes), bytes, now: new Date(this.world.now) };
    if (this.planted.hasty) {
      submit(db, files, upload).catch(() => undefined);
      return 1;
    }
    const { number, judge } = await submit(db, files, upload);
    await queue.add([{ attempt: upload.digest, judge }], true).catch(() => undefined);
    return number;
  }

  /** Everything handed in is scored, whatever still strikes; then all stop. */
  async settle(): Promise<void> {
    for (let tries = 0; tries < MOST_TRIES; tries++) {
      await this.#serving().catch(() => undefined);
      this.#queue.expire();
      const left = await this.#service?.worker.sweep(FAR).catch(() => 1);
      if (left === 0) break;
      for (let turn = 1; turn <= 200; turn++) {
        await this.world.turn('settling');
        if (!this.#service?.process.alive) break;
        // Asked now and then: the question costs as much as ten turns.
        if (turn % LOOK_TURNS === 0 && (await new Scores(this.real, VERSIONS).missing(FAR, 1)).length === 0) break;
      }
    }
    await Promise.all([this.#service?.worker.stop(), this.#beside?.worker.stop()]);
  }

  /** The service, started anew where it is dead. */
  async #serving(): Promise<Running> {
    if (!this.#service?.process.alive) {
      this.#starting ??= this.#start().finally(() => {
        this.#starting = null;
      });
      await this.#starting;
    }
    return this.#service!;
  }

  async #start(): Promise<void> {
    await this.#service?.worker.stop();
    this.#service = null;
    if (this.world.databaseLost) {
      await this.wipe();
      this.#written.clear();
    }
    const running = this.#begin('service');
    await running.files.clearParts();
    await rebuild(running.db, running.files);
    this.world.databaseLost = false;
    await this.openSchool();
    this.#queue.expire();
    await running.worker.sweep(FAR);
    running.worker.start();
    this.#service = running;
    if (!this.#beside?.process.alive) {
      await this.#beside?.worker.stop();
      this.#beside = this.#begin('worker');
      this.#beside.worker.start();
    }
  }

  #begin(name: string): Running {
    const { world, planted } = this;
    const process = world.begin();
    const disk = world.diskOf(process);
    const files = new AttemptFiles(ROOT, planted.disk?.(disk) ?? disk);
    const db = world.databaseOf(process, this.engine);
    const queue = this.#queue.of(process, world);
    const worker = new Worker({
      name,
      queue,
      scores: planted.scores?.(db) ?? new Scores(db, VERSIONS),
      scorer: {
        threads: 1,
        score: () => world.gate(process, 'weld', async () => this.#weld()),
        stop: async () => undefined,
      },
      readAttempt: (digest) => files.readAttempt(digest),
      look_ms: 5,
      ears: {
        scored: ({ attempt }, _took, written) => {
          if (!written) return;
          const weld = `by ${name}`;
          if (this.#written.has(attempt))
            this.wrong.push(`scored twice: ${attempt} ${this.#written.get(attempt)} and ${weld}`);
          this.#written.set(attempt, weld);
        },
        fault: () => undefined,
      },
    });
    return { process, files, db, queue, worker };
  }

  /** Welding is tried elsewhere; here it only has to take its time. Every weld says which it was. */
  #weld(): ScoreOutcome {
    this.#welds++;
    return { result: null, hand: null, motion: null, fault: `weld ${this.#welds}` };
  }
}

interface Running {
  process: Process;
  files: AttemptFiles;
  db: Db;
  queue: ScoreQueue;
  worker: Worker;
}
