import type { PGlite, QueryOptions, Transaction } from '@electric-sql/pglite';
import { drizzle } from 'drizzle-orm/pglite';
import type { Scheduler } from 'fast-check';
import type { Disk } from '../../../scoring/lab/disk.ts';
import type { Db } from '../../../scoring/lab/store.ts';
import { fault, type SimulatedDisk } from './disk.ts';
import { askOnce } from './one-message.ts';

/** What can happen at an await. */
export const KINDS = [
  'dies before',
  'dies after',
  'fails before',
  'fails after',
  'power cut',
  'power cut, database of before lost',
  'torn',
  'clock jumps',
] as const;
export interface Fault {
  /** The how manieth await of all. */
  at: number;
  kind: (typeof KINDS)[number];
  /** Where a choice has to be made, 0 to 1: how much of a torn write is there, how far the clock jumps. */
  chance: number;
}

/** A process of the lab: once dead nothing it does has an effect. */
export class Process {
  alive = true;
}

/** The process is no more: whatever it was at ends here. */
class Died extends Error {}

/** Machine, disk, clock and database under a schedule: every await of the code on trial goes through `gate`, in the order the schedule chooses, and may fail there. */
export class World {
  now = Date.UTC(2026, 2, 14, 9);
  processes = new Set<Process>();
  /** Awaits passed so far. */
  awaits = 0;
  /** Faults that struck. */
  struck: string[] = [];
  databaseLost = false;
  readonly #s: Scheduler;
  readonly #faults: Map<number, Fault>;
  readonly #disk: SimulatedDisk;
  #chance: number;

  constructor(s: Scheduler, faults: readonly Fault[], disk: SimulatedDisk) {
    this.#s = s;
    this.#faults = new Map(faults.map((f) => [f.at, f]));
    this.#disk = disk;
    this.#chance = 1 + Math.floor(1e6 * (faults[0]?.chance ?? 0.5));
  }

  begin(): Process {
    const process = new Process();
    this.processes.add(process);
    return process;
  }

  /** A place where others may go first. */
  async turn(what: string): Promise<void> {
    await this.#s.schedule(Promise.resolve(), what);
  }

  async gate<T>(
    process: Process,
    what: string,
    run: () => Promise<T>,
    torn: (at: number) => void = () => {},
  ): Promise<T> {
    await this.turn(what);
    if (!process.alive) throw new Died(what);
    const found = this.#faults.get(this.awaits++);
    if (found === undefined) return this.#alive(process, what, await run());
    this.struck.push(`${found.kind} at await ${found.at}, ${what}`);
    switch (found.kind) {
      case 'dies before':
        return this.#die(process, what);
      case 'dies after':
        await run();
        return this.#die(process, what);
      case 'fails before':
        throw passing(what);
      case 'fails after':
        await run();
        throw passing(what);
      case 'torn':
        torn(found.chance);
        return found.chance < 0.5 ? this.#powerCut(what, false) : Promise.reject(fault('ENOSPC'));
      case 'power cut':
        return this.#powerCut(what, false);
      case 'power cut, database of before lost':
        return this.#powerCut(what, true);
      case 'clock jumps':
        this.now += (found.chance - 0.5) * 172_800_000;
        return this.#alive(process, what, await run());
    }
  }

  /** Others went on while it waited; it may have been killed meanwhile. */
  #alive<T>(process: Process, what: string, value: T): T {
    if (!process.alive) throw new Died(what);
    return value;
  }

  #die(process: Process, what: string): never {
    process.alive = false;
    this.processes.delete(process);
    throw new Died(what);
  }

  #powerCut(what: string, loses: boolean): never {
    for (const process of this.processes) process.alive = false;
    this.processes.clear();
    this.#disk.cut(() => this.#coin());
    this.databaseLost ||= loses;
    throw new Died(what);
  }

  #coin(): boolean {
    this.#chance = (Math.imul(this.#chance, 1_664_525) + 1_013_904_223) >>> 0;
    return this.#chance > 2 ** 31;
  }

  diskOf(process: Process): Disk {
    const disk = this.#disk;
    const gate = <T>(what: string, run: () => Promise<T>): Promise<T> => this.gate(process, `disk ${what}`, run);
    return {
      makeFolder: (path) => gate('makeFolder', () => disk.makeFolder(path)),
      write: (path, bytes) =>
        this.gate(
          process,
          'disk write',
          () => disk.write(path, bytes),
          (at) => disk.tear(path, bytes, at),
        ),
      rename: (from, to) => gate('rename', () => disk.rename(from, to)),
      syncFolder: (path) => gate('syncFolder', () => disk.syncFolder(path)),
      read: (path) => gate('read', () => disk.read(path)),
      list: (path) => gate('list', () => disk.list(path)),
      remove: (path) => gate('remove', () => disk.remove(path)),
    };
  }

  /** The real embedded database as this process sees it. What was begun and not committed when it dies is rolled back, as a server does when a client is gone. */
  databaseOf(process: Process, engine: PGlite): Db {
    const query = (of: PGlite | Transaction) => (text: string, params?: unknown[], options?: QueryOptions) =>
      this.gate(process, `query ${text.slice(0, 40)}`, () => askOnce(of, text, params, options));
    const transaction = async <T>(work: (tx: Transaction) => Promise<T>): Promise<T> => {
      const value = await engine.transaction(async (tx) => {
        const seen = new Proxy(tx, { get: (of, key) => (key === 'query' ? query(of) : Reflect.get(of, key)) });
        const done = await work(seen);
        await this.gate(process, 'commit', async () => undefined);
        return done;
      });
      return this.gate(process, 'committed', async () => value as T);
    };
    const client = new Proxy(engine, {
      get: (of, key) => {
        if (key === 'query') return query(of);
        if (key === 'transaction') return transaction;
        const value: unknown = Reflect.get(of, key);
        return typeof value === 'function' ? value.bind(of) : value;
      },
    });
    return drizzle(client);
  }
}

function passing(what: string): Error {
  return what.startsWith('disk') ? fault('ENOSPC') : fault('57P01');
}
