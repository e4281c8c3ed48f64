import { type Options, stringify } from 'csv-stringify/browser/esm/sync';

/**
 * How every table is written (RFC 4180). A text cell that a spreadsheet would take for a formula is preceded by an apostrophe; numbers stay
 * numbers. The library quotes a cell that holds its own record delimiter; a line end of the other kind would end a row for many a reader too.
 */
const SAFE: Options = { header: true, escape_formulas: true, quoted_match: /[\r\n]/, cast: { boolean: String } };

/**
 * Rows as CSV for a spreadsheet: UTF-8 with byte order mark, so that accents are read, and Windows line ends.
 * @param columns column names, for the header of a table without rows
 */
export function csvText(rows: readonly object[], columns: readonly string[]): string {
  return stringify([...rows], { ...SAFE, columns: [...columns], bom: true, record_delimiter: 'windows' });
}

/** Rows as CSV for a program: no byte order mark, plain line ends, and comment lines with a # above the header. */
export function csvWithComments(
  comments: readonly string[],
  rows: readonly object[],
  columns: readonly string[],
): string {
  const table = stringify([...rows], { ...SAFE, columns: [...columns], record_delimiter: 'unix' });
  return comments.map((text) => `# ${text}\n`).join('') + table;
}
