import { type Options, stringify } from 'csv-stringify/browser/esm/sync';
import { type Clean, clean } from './clean.ts';

/** What a table can hold. */
export type Cell = string | number | boolean | null | undefined;

/**
 * How every table is written (RFC 4180). Cells hold no line ends (`clean`); one with another country's separator in it is quoted too, so that it
 * stays one cell there.
 */
const RULES: Options = { header: true, quoted_match: /[;\t]/, cast: { boolean: String } };

/** What a spreadsheet would take for a formula, also where its letters are wide ones. */
const FORMULA = /^\s*[=+\-@\uff1d\uff0b\uff0d\uff20]/;

/** The same behind a separator of another country, which splits a row anew there, quoted or not. */
const FORMULA_BEHIND = /([;|]\s*)(?=[=+\-@\uff1d\uff0b\uff0d\uff20])/g;

/** Text that a spreadsheet would take for a formula is preceded by an apostrophe; numbers stay numbers. */
function safe(cell: Cell): Clean | number | boolean | null | undefined {
  if (typeof cell !== 'string') return cell;
  const text = clean(cell).replace(FORMULA_BEHIND, "$1'");
  return clean(FORMULA.test(text) ? `'${text}` : text);
}

function safeRows<K extends string>(rows: readonly Readonly<Record<K, Cell>>[], columns: readonly K[]): unknown[][] {
  return rows.map((row) => columns.map((column) => safe(row[column])));
}

/**
 * Rows as CSV for a spreadsheet: UTF-8 with byte order mark, so that accents are read, and Windows line ends.
 * @param columns column names, in order
 */
export function csvText<K extends string>(rows: readonly Readonly<Record<K, Cell>>[], columns: readonly K[]): string {
  return stringify(safeRows(rows, columns), {
    ...RULES,
    columns: [...columns],
    bom: true,
    record_delimiter: 'windows',
  });
}

/** Rows as CSV for a program: no byte order mark, plain line ends, and comment lines with a # above the header. */
export function csvWithComments<K extends string>(
  comments: readonly string[],
  rows: readonly Readonly<Record<K, Cell>>[],
  columns: readonly K[],
): string {
  const table = stringify(safeRows(rows, columns), { ...RULES, columns: [...columns], record_delimiter: 'unix' });
  return comments.map((text) => `# ${clean(text)}\n`).join('') + table;
}
