import { CsvError, parse } from 'csv-parse/browser/esm/sync';
import { MOST_PLATES } from '../exercises/piece.ts';
import { describeFound, InputError } from '../schema/problem.ts';
import { wordsInName } from './file-name.ts';

/** Somebody on a roster. */
export interface OnRoster {
  /** Name or number as written. */
  name: string;
  /** Bench the roster gives; null where it gives none. */
  bench: string | null;
  /** Number of the plate the roster gives; null where it gives none. Where it gives nobody one, their place in the list is (`platesOf`). */
  plate: number | null;
}

/** Most people on a roster. */
const MOST_PEOPLE = 200;
/** Longest roster taken in, characters. */
const MOST_TEXT = 100_000;
/** Longest name and bench, as the file of an attempt holds them. */
const MOST_NAME = 120;
const MOST_BENCH = 60;

/** What a heading may be called; where several stand in one table the first of these counts: a name before a number. */
const HEADINGS: Record<'name' | 'given' | 'family' | 'bench' | 'plate', readonly string[]> = {
  name: ['name', 'trainee', 'student', 'full name', 'number', 'no', 'no.', 'id'],
  given: ['first name', 'given name', 'firstname', 'forename'],
  family: ['last name', 'family name', 'lastname', 'surname'],
  bench: ['bench', 'booth', 'place'],
  plate: ['plate', 'plate number', 'plate no', 'plate no.', 'piece'],
};

/**
 * Reads a roster: a name or a number on each line, or a table (CSV with commas, semicolons or tabs) whose first line names its columns.
 * @param file name used in messages
 * @throws InputError naming the line: no names, two who could not be told apart, a name without a letter or digit
 */
export function readRoster(text: string, file = 'roster'): OnRoster[] {
  if (text.length > MOST_TEXT) {
    throw refusal(file, '', `${text.length} characters`, `a roster of at most ${MOST_TEXT} characters`);
  }
  const rows = rowsOf(text, file);
  const head = headingOf(rows[0]?.cells ?? []);
  const people: (OnRoster & { line: number })[] = [];
  for (const { cells, line } of head === null ? rows : rows.slice(1)) {
    const at = `line ${line}`;
    if (head === null && cells.length > 1) {
      throw refusal(
        file,
        at,
        `${cells.length} columns and no heading`,
        'one name a line, or a first line that names the columns (name, bench)',
      );
    }
    const cell = (i: number): string => checked(cells[i] ?? '', file, at);
    const name = head === null ? cell(0) : head.names.map(cell).filter(Boolean).join(' ');
    const bench = head === null || head.bench === null ? '' : cell(head.bench);
    if (name === '' && bench === '') continue;
    const plate = head === null || head.plate === null ? null : plateFrom(cell(head.plate), file, at);
    people.push({ ...person(name, bench, file, at), plate, line });
  }
  if (people.length === 0) throw refusal(file, '', 'no names', 'a name or a number on each line');
  if (people.length > MOST_PEOPLE) throw refusal(file, '', `${people.length} names`, `at most ${MOST_PEOPLE}`);
  alike(people, file);
  samePlates(people, file);
  return people.map(({ name, bench, plate }) => ({ name, bench, plate }));
}

/**
 * A name or number and a bench as somebody typed them, fit to be written into attempts.
 * @throws InputError when the name has neither letter nor digit, or either is too long
 */
export function person(name: string, bench: string, file = 'trainee', at = ''): OnRoster {
  const who = checked(name, file, at);
  const where = checked(bench, file, at);
  const field = (of: string): string => (at === '' ? of : `${at}, ${of}`);
  if (wordsInName(who) === null) {
    throw refusal(file, field('name'), describeFound(who), 'a name or number with at least one letter or digit');
  }
  if (who.length > MOST_NAME) throw refusal(file, field('name'), describeFound(who), `at most ${MOST_NAME} characters`);
  if (where !== '' && wordsInName(where) === null) {
    throw refusal(file, field('bench'), describeFound(where), 'letters or digits, or nothing');
  }
  if (where.length > MOST_BENCH) {
    throw refusal(file, field('bench'), describeFound(where), `at most ${MOST_BENCH} characters`);
  }
  return { name: who, bench: where === '' ? null : where, plate: null };
}

/** Without spaces at its ends; control characters and ones that turn the direction of a line are refused. */
function checked(text: string, file: string, at: string): string {
  const tidy = text.normalize('NFC').replace(/\s+/gu, ' ').trim();
  if (/[\p{Cc}\p{Bidi_Control}]/u.test(tidy)) {
    throw refusal(file, at, 'a control character', 'letters, digits and punctuation');
  }
  return tidy;
}

function rowsOf(text: string, file: string): { cells: string[]; line: number }[] {
  try {
    const parsed = parse(text, {
      bom: true,
      delimiter: [';', '\t', ','],
      record_delimiter: ['\r\n', '\n', '\r'],
      relax_column_count: true,
      skip_empty_lines: true,
      skip_records_with_empty_values: true,
      info: true,
    }) as unknown as { record: string[]; info: { lines: number } }[];
    return parsed.map(({ record, info }) => ({ cells: withoutTail(record), line: info.lines }));
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    throw refusal(file, '', error.message, 'a table of names (CSV) with every quoted cell closed');
  }
}

/** A spreadsheet may end its lines with empty cells. */
function withoutTail(cells: string[]): string[] {
  let end = cells.length;
  while (end > 1 && cells[end - 1]!.trim() === '') end--;
  return cells.slice(0, end);
}

/** Which columns hold what, where the first line is a heading; null where it is not. */
function headingOf(cells: readonly string[]): { names: number[]; bench: number | null; plate: number | null } | null {
  const said = cells.map((c) => c.trim().toLowerCase());
  const find = (of: keyof typeof HEADINGS): number =>
    HEADINGS[of].map((heading) => said.indexOf(heading)).find((i) => i >= 0) ?? -1;
  const whole = find('name');
  const names = [find('given'), find('family')].filter((i) => i >= 0);
  const bench = find('bench');
  const columns = names.length > 0 ? names : whole >= 0 ? [whole] : [];
  const plate = find('plate');
  const known = (at: number): number | null => (at < 0 ? null : at);
  return columns.length === 0 ? null : { names: columns, bench: known(bench), plate: known(plate) };
}

/** @returns null for an empty cell */
function plateFrom(text: string, file: string, at: string): number | null {
  if (text === '') return null;
  const plate = /^\d{1,3}$/.test(text) ? Number(text) : 0;
  if (plate < 1)
    throw refusal(file, `${at}, plate`, describeFound(text), `a whole number from 1 to ${MOST_PLATES}, or nothing`);
  return plate;
}

/** Two on one plate would weld the same piece. */
function samePlates(people: readonly (OnRoster & { line: number })[], file: string): void {
  const seen = new Map<number, number>();
  for (const { plate, line } of people) {
    if (plate === null) continue;
    const before = seen.get(plate);
    if (before !== undefined) {
      throw refusal(file, `line ${line}, plate`, `plate ${plate}, as on line ${before}`, 'a plate for each');
    }
    seen.set(plate, line);
  }
}

/** Two whose names would be one in the names of files could not be told apart on a class sheet. */
function alike(people: readonly (OnRoster & { line: number })[], file: string): void {
  const seen = new Map<string, number>();
  for (const { name, line } of people) {
    const words = wordsInName(name)!;
    const before = seen.get(words);
    if (before !== undefined) {
      throw refusal(
        file,
        `line ${line}`,
        `${describeFound(name)}, as on line ${before}`,
        'names that can be told apart; add a letter or a number',
      );
    }
    seen.set(words, line);
  }
}

function refusal(file: string, path: string, found: string, allowed: string): InputError {
  return new InputError(file, [{ path, found, allowed }]);
}
