import { signal } from '@preact/signals-core';
import {
  type Agreement,
  agreementHtml,
  agreementOf,
  blankReadings,
  type ReadingsTable,
  readCoupon,
  readingRow,
  readReadings,
  tableOf,
} from '../../../scoring/index.ts';
import type { ChosenFile } from '../chosen-file.ts';
import type { Ports } from '../ports.ts';
import { readText } from '../session/files.ts';
import { problemOf } from '../session/problem.ts';
import type { State } from '../session/state.ts';

/** Several readers of the same macros. */
export interface ReadersView {
  table: Pick<ReadingsTable, 'macros' | 'readers' | 'trials'>;
  agreement: Agreement[];
}

/** Macros, readers and measures of the table that is handed out blank. */
const BLANK = {
  macros: 12,
  readers: ['1st', '2nd', '3rd'],
  measures: ['leg right', 'leg left', 'throat', 'convexity', 'root'],
} as const;

/** How far several readers agree about the school's own macros: from a table, or from the marks they set. */
export class Readers {
  readonly view = signal<ReadersView | null>(null);

  constructor(
    private readonly ports: Pick<Ports, 'files' | 'papers'>,
    private readonly state: Pick<State, 'problem' | 'language'>,
  ) {}

  /** A table of readings as pasted. */
  text(text: string, file?: string): void {
    this.take(() => readReadings(text, file));
  }

  /** One table, or the marks of macros by several readers (.coupon.json). */
  async open(files: readonly ChosenFile[]): Promise<void> {
    try {
      const [first] = files;
      if (first === undefined) return;
      if (files.length === 1 && !first.name.endsWith('.json')) {
        this.text(await readText(first), first.name);
        return;
      }
      const rows = await Promise.all(
        files.map(async (file) => readingRow(readCoupon(await readText(file), file.name), file.name)),
      );
      this.take(() => tableOf(rows, 'readings'));
    } catch (error) {
      this.state.problem.value = problemOf(error);
    }
  }

  /** Prints how far they agree, on one sheet. */
  print(): void {
    const view = this.view.peek();
    if (view) this.ports.papers.print(agreementHtml(view.table, view.agreement, this.state.language.value));
  }

  /** Hands out a table to be filled in. */
  saveBlank(): void {
    this.ports.files.saveAs(blankReadings(BLANK.macros, BLANK.readers, BLANK.measures), 'readings.csv', 'text/csv');
  }

  private take(read: () => ReadingsTable): void {
    try {
      const { macros, readers, trials, ...table } = read();
      this.view.value = {
        table: { macros, readers, trials },
        agreement: agreementOf({ macros, readers, trials, ...table }),
      };
    } catch (error) {
      this.state.problem.value = problemOf(error);
    }
  }
}
