import { parse } from 'csv-parse/sync';
import { InputError } from '../index.ts';
import { personName } from './fields.ts';
import { nameKey } from './names.ts';

/** Somebody on a roster. */
export interface RosterEntry {
  name: string;
  /** The person's id in the school's own system. */
  sourcedId: string | null;
}

/** Headings a name may stand under, lower case. */
const NAME_HEADS = new Set(['name', 'trainee', 'full name', 'student']);
const ID_HEADS = new Set(['id', 'sourcedid', 'number']);

/**
 * Reads a roster from CSV: a column of names under a heading, or names alone, one a line. Spaces, an unknown column and empty lines are no
 * faults.
 * @throws InputError naming the line
 */
export function readRoster(csv: string): RosterEntry[] {
  const rows = rowsOf(csv);
  const heads = (rows[0] ?? []).map((h) => h.trim().toLowerCase());
  const nameAt = heads.findIndex((h) => NAME_HEADS.has(h));
  const idAt = heads.findIndex((h) => ID_HEADS.has(h));
  const headed = nameAt >= 0;
  if (!headed && heads.length > 1) {
    throw fault('csv', `columns ${heads.join(', ')}`, 'a column called name, or one name a line and nothing else');
  }
  const people = (headed ? rows.slice(1) : rows).map((row, i) => {
    const at = `csv line ${i + (headed ? 2 : 1)}`;
    const sourcedId = idAt < 0 ? '' : (row[idAt]?.trim() ?? '');
    return { name: nameIn(row[headed ? nameAt : 0] ?? '', at), sourcedId: sourcedId === '' ? null : sourcedId };
  });
  return withoutTwice(people);
}

export function rowsOf(csv: string, file = 'csv'): string[][] {
  try {
    return parse(csv, { bom: true, skip_empty_lines: true, relax_column_count: true, trim: true });
  } catch (cause) {
    throw fault(file, cause instanceof Error ? cause.message : 'no CSV', 'CSV text, quotes closed');
  }
}

export function nameIn(text: string, at: string): string {
  const read = personName.safeParse(text);
  if (!read.success) throw fault(at, JSON.stringify(text.slice(0, 60)), 'a name of 1 to 120 characters on one line');
  return read.data;
}

/** @throws InputError when two people have one name: nobody could tell them apart when they join */
export function withoutTwice(people: RosterEntry[]): RosterEntry[] {
  if (people.length === 0) throw fault('csv', 'no names', 'at least one');
  const seen = new Set<string>();
  for (const { name } of people) {
    const key = nameKey(name);
    if (seen.has(key)) {
      throw fault('csv', `${name} twice`, 'names that differ: add a second name or a number to one of them');
    }
    seen.add(key);
  }
  return people;
}

function fault(path: string, found: string, allowed: string): InputError {
  return new InputError('roster', [{ path, found, allowed }]);
}
