import { CsvError, parse } from 'csv-parse/browser/esm/sync';
import { csvText } from '../schema/csv.ts';
import { describeFound, InputError } from '../schema/problem.ts';

/** Readings of several macros by several readers, each as often as every other. */
export interface ReadingsTable {
  macros: string[];
  readers: string[];
  /** Times each reader read each macro. */
  trials: number;
  /** Readings by what was measured: macro, reader, trial. */
  measures: { name: string; values: number[][][] }[];
}

/** One line of a table of readings. */
export interface ReadingRow {
  macro: string;
  reader: string;
  values: Readonly<Record<string, number | null>>;
}

/** Longest table taken in, characters, and most macros, readers and measures in it. */
const MOST_TEXT = 500_000;
const MOST = { macros: 200, readers: 40, measures: 20 } as const;
const KEYS = { macro: ['macro', 'cut', 'coupon', 'part'], reader: ['reader', 'initials', 'read by'] } as const;
/** Columns that count or date a reading: nothing measured, and lines are counted here anyhow. */
const NOT_MEASURED = [
  'trial',
  'repeat',
  'replicate',
  'run',
  'time',
  'reading',
  'no',
  'no.',
  'nr',
  'nr.',
  '#',
  'date',
  'day',
  'notes',
  'note',
];

/**
 * Reads a table of readings (CSV): a column `macro`, a column `reader`, any further column is something measured, in its own unit, but for one that
 * counts or dates readings (trial, date, notes and the like). The same macro and reader again is another trial. A decimal comma is understood where columns are parted otherwise.
 * @throws InputError naming the line: no such columns, a cell that is no number, a reader who has not read a macro as often as others
 */
export function readReadings(text: string, file = 'readings'): ReadingsTable {
  if (text.length > MOST_TEXT) throw refusal(file, '', `${text.length} characters`, `at most ${MOST_TEXT} characters`);
  const rows = cellsOf(text, file);
  const head = (rows[0]?.cells ?? []).map((c) => c.trim());
  const lower = head.map((c) => c.toLowerCase());
  const find = (of: keyof typeof KEYS): number => lower.findIndex((c) => (KEYS[of] as readonly string[]).includes(c));
  const [macroAt, readerAt] = [find('macro'), find('reader')];
  if (macroAt < 0 || readerAt < 0) {
    throw refusal(
      file,
      'line 1',
      head.join(', ') || 'nothing',
      'a heading with the columns macro and reader, and one for everything measured',
    );
  }
  const measured = head
    .map((name, at) => ({ name, at }))
    .filter(({ name, at }) => at !== macroAt && at !== readerAt && name !== '' && !NOT_MEASURED.includes(lower[at]!));
  if (measured.length === 0)
    throw refusal(file, 'line 1', head.join(', '), 'a column for something measured, such as convexity');
  const list = rows.slice(1).map(({ cells, line }): ReadingRow => {
    const named = (at: number, what: string): string => {
      const cell = (cells[at] ?? '').trim();
      if (cell === '') throw refusal(file, `line ${line}, ${what}`, 'nothing', `a ${what}`);
      return cell;
    };
    const values = Object.fromEntries(
      measured.map(({ name, at }) => [name, numberIn(cells[at] ?? '', file, `line ${line}, ${name}`)]),
    );
    return { macro: named(macroAt, 'macro'), reader: named(readerAt, 'reader'), values };
  });
  return tableOf(list, file);
}

/**
 * Rows as a table in which every reader has read every macro equally often. A measure that somebody left out somewhere is left out whole.
 * @throws InputError where readers or macros are too few, or a pair is missing
 */
export function tableOf(rows: readonly ReadingRow[], file = 'readings'): ReadingsTable {
  const macros = unique(rows.map((r) => r.macro));
  const readers = unique(rows.map((r) => r.reader));
  const names = unique(rows.flatMap((r) => Object.keys(r.values)));
  if (macros.length < 2)
    throw refusal(file, 'macro', `${macros.length} different`, 'at least 2; a dozen tell something');
  if (readers.length < 2) throw refusal(file, 'reader', `${readers.length} different`, 'at least 2');
  for (const [what, found] of [
    ['macros', macros.length],
    ['readers', readers.length],
    ['measures', names.length],
  ] as const) {
    if (found > MOST[what]) throw refusal(file, what, String(found), `at most ${MOST[what]}`);
  }
  const by = macros.map((macro) =>
    readers.map((reader) => rows.filter((r) => r.macro === macro && r.reader === reader)),
  );
  const trials = Math.max(...by.flat().map((own) => own.length));
  by.forEach((of, m) => {
    of.forEach((own, r) => {
      if (own.length === trials) return;
      const often = trials === 1 ? 'once' : `${trials} times`;
      throw refusal(
        file,
        `${macros[m]}, ${readers[r]}`,
        `${own.length} readings`,
        `every macro read ${often} by everybody`,
      );
    });
  });
  const measures = names.flatMap((name) => {
    const values = by.map((of) => of.map((own) => own.map((r) => r.values[name] ?? null)));
    return values.flat(2).every((x) => x !== null) ? [{ name, values: values as number[][][] }] : [];
  });
  if (measures.length === 0) throw refusal(file, 'readings', 'gaps in every column', 'one column without a gap');
  return { macros, readers, trials, measures };
}

/** A table to be filled in: so many macros, these readers, each measure a column. */
export function blankReadings(macros: number, readers: readonly string[], measures: readonly string[]): string {
  const columns = ['macro', 'reader', ...measures];
  const rows = readers.flatMap((reader) =>
    Array.from({ length: macros }, (_, i) =>
      Object.fromEntries(columns.map((c) => [c, c === 'macro' ? String(i + 1) : c === 'reader' ? reader : null])),
    ),
  );
  return csvText(rows, columns);
}

function unique(names: readonly string[]): string[] {
  return [...new Set(names)];
}

function numberIn(text: string, file: string, at: string): number | null {
  const tidy = text
    .trim()
    .replace('−', '-')
    .replace(/^(-?\d+),(\d+)$/, '$1.$2');
  if (tidy === '') return null;
  const x = Number(tidy);
  if (!Number.isFinite(x)) throw refusal(file, at, describeFound(text), 'a number, or nothing');
  return x;
}

function cellsOf(text: string, file: string): { cells: string[]; line: number }[] {
  try {
    const parsed = parse(text, {
      bom: true,
      delimiter: [';', '\t', ','].find((d) => (text.split(/\r?\n/, 1)[0] ?? '').includes(d)) ?? ',',
      record_delimiter: ['\r\n', '\n', '\r'],
      relax_column_count: true,
      skip_empty_lines: true,
      skip_records_with_empty_values: true,
      info: true,
    }) as unknown as { record: string[]; info: { lines: number } }[];
    return parsed.map(({ record, info }) => ({ cells: record, line: info.lines }));
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    throw refusal(file, '', error.message, 'a table (CSV) with every quoted cell closed');
  }
}

function refusal(file: string, path: string, found: string, allowed: string): InputError {
  return new InputError(file, [{ path, found, allowed }]);
}
