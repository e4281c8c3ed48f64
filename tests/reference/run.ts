/** The one runner of published checks: a section is rows of data, a row one case. */
import { describe, it } from 'vitest';
import { WHOLE } from '../support/share.ts';
import { openReport, type SectionName, type Tolerance } from './report.ts';

/** One case: what is checked against whose answer, and by how much it may be off (`notHeld` where it misses, and by how much it does). */
export interface Row {
  check: string;
  /** Where the expected value comes from, with its formula where it has one; "memory" where no published page could be read. */
  source: string;
  unit: string;
  /** The published answer; worked out when the row is run where it hangs on the instant that was reached. */
  expected: number | (() => number);
  /** What the engine or the finders give; throws where there is nothing to compare. */
  got: () => number;
  tolerance: Tolerance;
  /** Significant digits in the table. */
  digits?: number;
  /** Takes seconds: run by the slow suite and when the table is written. */
  slow?: boolean;
}

export interface Section {
  name: SectionName;
  title: string;
  note: string;
  rows: readonly Row[];
}

/** Makes a test of every row, and one that the committed table shows what they measured. */
export function runSection({ name, title, note, rows }: Section): void {
  const report = openReport(name, title);
  report.note(note);
  describe(title, () => {
    for (const { expected, got, slow, ...row } of rows) {
      if (slow && !WHOLE) continue;
      it(row.check, () =>
        report.check({ ...row, expected: typeof expected === 'number' ? expected : expected(), got: got() }),
      );
    }
    report.readme();
  });
}

/** Does a piece of work when it is first asked for, and never again. */
export function once<T>(make: () => T): () => T {
  let made: { value: T } | null = null;
  return () => {
    made ??= { value: make() };
    return made.value;
  };
}
