import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { availableParallelism, cpus } from 'node:os';
import type { StoreName } from './ground.ts';
import type { Bell, Drain, Week } from './phases.ts';
import { tableOf } from './table.ts';

/** What one store's phases came to; a phase that was not played is not there. */
export interface Row {
  bell?: Bell;
  drain?: Drain;
  long?: Drain;
  week?: Week;
}

export interface Played {
  machine: { processor: string; cores: number; node: string; day: string };
  stores: Partial<Record<StoreName, Row>>;
}

const FILE = new URL('./figures.json', import.meta.url);
const README = new URL('./README.md', import.meta.url);
const [START, END] = ['<!-- table: written by npm run lab:load -->', '<!-- end of table -->'];

/** The figures beside this file, and the table in README.md that is made from them. */
export class Figures {
  rows: Played;
  private constructor(
    before: Played | null,
    private readonly lookOnly: boolean,
  ) {
    const machine = {
      ...{ processor: cpus()[0]?.model ?? 'unknown processor', cores: availableParallelism(), node: process.version },
      day: new Date().toISOString().slice(0, 10),
    };
    this.rows = { machine, stores: before?.stores ?? {} };
  }

  /** @param lookOnly nothing is read and nothing written */
  static read(lookOnly: boolean): Figures {
    const there = !lookOnly && existsSync(FILE);
    return new Figures(there ? (JSON.parse(readFileSync(FILE, 'utf8')) as Played) : null, lookOnly);
  }

  keep(store: StoreName, row: Row): void {
    this.rows.stores[store] = { ...this.rows.stores[store], ...row };
    if (this.lookOnly) return;
    writeFileSync(FILE, `${JSON.stringify(withoutTimes(this.rows), null, 1)}\n`);
    const text = readFileSync(README, 'utf8');
    writeFileSync(
      README,
      `${text.slice(0, text.indexOf(START) + START.length)}\n\n${tableOf(this.rows)}\n\n${text.slice(text.indexOf(END))}`,
    );
  }
}

/** A moment of every score is for reckoning with and not for keeping. */
function withoutTimes(played: Played): unknown {
  return JSON.parse(JSON.stringify(played, (key, value: unknown) => (key === 'written_ms' ? undefined : value)));
}
