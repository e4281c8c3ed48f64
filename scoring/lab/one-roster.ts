import { InputError } from '../index.ts';
import { nameIn, type RosterEntry, rowsOf, withoutTwice } from './roster.ts';

/**
 * Trainees of one class from the CSV files of a OneRoster export (1.1 and 1.2 name these columns alike: users.csv sourcedId, status, enabledUser, role
 * or roles, givenName, familyName; enrollments.csv classSourcedId, userSourcedId, role, status; from memory of the published tables).
 * @param classSourcedId the class meant; left out where the export has one class only
 * @throws InputError naming file and column
 */
export function readOneRoster(users: string, enrollments: string, classSourcedId?: string): RosterEntry[] {
  const people = new Map(
    table('users.csv', users, ['sourcedId', 'givenName', 'familyName']).map((row) => [row.get('sourcedId')!, row]),
  );
  const enrolled = table('enrollments.csv', enrollments, ['classSourcedId', 'userSourcedId', 'role']).filter(
    (row) => row.get('role') === 'student' && isActive(row),
  );
  const classes = [...new Set(enrolled.map((row) => row.get('classSourcedId')!))];
  const meant = classSourcedId ?? (classes.length === 1 ? classes[0] : undefined);
  if (meant === undefined || !classes.includes(meant)) {
    throw fault(
      'classSourcedId',
      meant ?? 'nothing',
      `one of the classes in enrollments.csv: ${classes.slice(0, 20).join(', ')}`,
    );
  }
  const entries = enrolled
    .filter((row) => row.get('classSourcedId') === meant)
    .flatMap((row): RosterEntry[] => {
      const sourcedId = row.get('userSourcedId')!;
      const person = people.get(sourcedId);
      if (person === undefined) {
        throw fault('enrollments.csv userSourcedId', JSON.stringify(sourcedId), 'the sourcedId of a user in users.csv');
      }
      if (!isActive(person)) return [];
      const name = nameIn(`${person.get('givenName')} ${person.get('familyName')}`, `users.csv ${sourcedId}`);
      return [{ name, sourcedId }];
    });
  return withoutTwice(entries);
}

/** Bulk exports leave `status` empty; deltas say `tobedeleted`. */
function isActive(row: ReadonlyMap<string, string>): boolean {
  return row.get('status') !== 'tobedeleted' && row.get('enabledUser') !== 'false';
}

function table(file: string, csv: string, needed: readonly string[]): Map<string, string>[] {
  const [heads = [], ...rows] = rowsOf(csv, file);
  const missing = needed.filter((name) => !heads.includes(name));
  if (missing.length > 0) throw fault(file, `columns ${heads.join(', ')}`, `also ${missing.join(', ')}`);
  return rows.map((row) => new Map(heads.map((head, i) => [head, row[i] ?? ''])));
}

function fault(path: string, found: string, allowed: string): InputError {
  return new InputError('OneRoster files', [{ path, found, allowed }]);
}
