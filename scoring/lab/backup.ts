import { createHash, type Hash } from 'node:crypto';
import { createReadStream } from 'node:fs';
import { cp, mkdir, open, readdir, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { createInterface } from 'node:readline/promises';
import { sql } from 'drizzle-orm';
import { z } from 'zod';
import { InputError } from '../index.ts';
import { AttemptFiles, KINDS } from './attempt-files.ts';
import { realDisk } from './disk.ts';
import type { Db, Store } from './store.ts';

/** What is carried, each after those it points at. Sessions are not: people sign in again. The queue fills itself from what is not scored. */
const TABLES = [
  ...['instructors', 'classes', 'teaches', 'trainees', 'judges', 'assignments', 'exercises'],
  ...['submissions', 'scores', 'statements', 'overrides', 'audit'],
] as const;
/** Tables that number their own rows. */
const NUMBERED = ['overrides', 'audit'] as const;
const ROWS_AT_ONCE = 200;
/** Written last: a backup without it was broken off. */
const LIST = 'backup.json';

const listSchema = z.strictObject({
  format: z.literal('toehold-lab-backup'),
  version: z.literal(1),
  /** Migrations the tables stood at. */
  migrations: z.number().int(),
  tables: z.record(z.string(), z.strictObject({ rows: z.number().int(), sha256: z.string() })),
});

/** What a backup holds, or what was restored from one. */
export interface Carried {
  rows: number;
  attempts: number;
}

/**
 * Writes tables and files of a lab into an empty folder. Rows are of one moment, also while the lab runs; files are copied after them, so every row has
 * its own.
 * @throws InputError when the folder is not empty
 */
export async function backUp(store: Store, data: string, to: string): Promise<Carried> {
  await mkdir(to, { recursive: true, mode: 0o700 });
  if ((await readdir(to)).length > 0) throw fault(to, 'a folder that is not empty', 'an empty folder, or a new one');
  const tables: z.infer<typeof listSchema>['tables'] = {};
  await store.db.transaction(
    async (tx) => {
      for (const table of TABLES) tables[table] = await writeTable(tx, table, tableFile(to, table));
    },
    { isolationLevel: 'repeatable read', accessMode: 'read only' },
  );
  await copyFiles(data, to);
  const list = { format: 'toehold-lab-backup', version: 1, migrations: await migrationsOf(store), tables };
  await writeFile(join(to, LIST), JSON.stringify(list, null, 2), { flush: true, mode: 0o600 });
  return carried(tables, to);
}

/**
 * Fills an empty lab from a backup, whichever database either of them has. The backup is checked whole before anything is written.
 * @throws InputError naming what is wrong with the backup, or that the lab is not empty
 */
export async function restore(store: Store, data: string, from: string): Promise<Carried> {
  const list = await readList(from);
  const own = await migrationsOf(store);
  if (list.migrations !== own) {
    throw fault(
      join(from, LIST),
      `tables at migration ${list.migrations}, this program is at ${own}`,
      'a backup of the same version: restore it with the version that made it, then start this one on the same data',
    );
  }
  for (const table of TABLES) {
    const { rows, sha256 } = list.tables[table] ?? { rows: -1, sha256: '' };
    const hash = createHash('sha256');
    let found = 0;
    for await (const lines of batches(tableFile(from, table))) for (const line of lines) found += told(hash, line);
    if (found !== rows || hash.digest('hex') !== sha256)
      throw fault(tableFile(from, table), `${found} rows, not those that were written`, 'the file as it was written');
  }
  const { rows: there } = await store.executeSql('select 1 from instructors union all select 1 from classes limit 1');
  if (there.length > 0) throw fault(data, 'a lab that is in use', 'an empty lab to restore into');
  await copyFiles(from, data);
  const files = new AttemptFiles(data, realDisk);
  for (const digest of await files.attemptDigests())
    if ((await files.readAttempt(digest)) === null)
      throw fault(from, `attempt ${digest}, whose content is another`, 'the file as it was written');
  await store.db.transaction(async (tx) => {
    for (const table of TABLES)
      for await (const lines of batches(tableFile(from, table)))
        await tx.execute(
          sql`insert into ${sql.identifier(table)} select * from json_populate_recordset(null::${sql.identifier(table)}, ${`[${lines.join(',')}]`}::json)`,
        );
    for (const table of NUMBERED)
      await tx.execute(
        sql`select setval(pg_get_serial_sequence(${table}, 'id'), greatest(1, (select coalesce(max(id), 0) from ${sql.identifier(table)})))`,
      );
  });
  return carried(list.tables, data);
}

async function writeTable(tx: Db, table: string, path: string): Promise<{ rows: number; sha256: string }> {
  const hash = createHash('sha256');
  let rows = 0;
  const file = await open(path, 'wx', 0o600);
  try {
    // A cursor: results of a term need not fit into memory at once.
    await tx.execute(
      sql`declare carried no scroll cursor for select row_to_json(t)::text as line from ${sql.identifier(table)} t`,
    );
    for (;;) {
      const got = (await tx.execute(sql.raw(`fetch ${ROWS_AT_ONCE} from carried`))) as { rows: { line: string }[] };
      if (got.rows.length === 0) break;
      for (const { line } of got.rows) rows += told(hash, line);
      await file.write(got.rows.map(({ line }) => `${line}\n`).join(''));
    }
    await tx.execute(sql`close carried`);
    await file.sync();
  } finally {
    await file.close();
  }
  return { rows, sha256: hash.digest('hex') };
}

function told(hash: Hash, line: string): 1 {
  hash.update(line).update('\n');
  return 1;
}

async function* batches(path: string): AsyncGenerator<string[]> {
  let some: string[] = [];
  for await (const line of createInterface({ input: createReadStream(path), crlfDelay: Number.POSITIVE_INFINITY })) {
    some.push(line);
    if (some.length < ROWS_AT_ONCE) continue;
    yield some;
    some = [];
  }
  if (some.length > 0) yield some;
}

async function copyFiles(from: string, to: string): Promise<void> {
  for (const kind of KINDS) {
    await mkdir(join(from, kind), { recursive: true, mode: 0o700 });
    await cp(join(from, kind), join(to, kind), { recursive: true, filter: (path) => !path.endsWith('.part') });
  }
}

async function readList(from: string): Promise<z.infer<typeof listSchema>> {
  const path = join(from, LIST);
  const text = await readFile(path, 'utf8').catch(() => null);
  if (text === null) throw fault(path, 'nothing', 'a whole backup, as `npm run lab -- backup` writes it');
  try {
    return listSchema.parse(JSON.parse(text));
  } catch {
    throw fault(path, 'a list that cannot be read', 'a whole backup, as `npm run lab -- backup` writes it');
  }
}

async function migrationsOf(store: Store): Promise<number> {
  const { rows } = await store.executeSql('select count(*)::int as n from drizzle.__drizzle_migrations');
  return (rows as { n: number }[])[0]!.n;
}

async function carried(tables: Record<string, { rows: number }>, folder: string): Promise<Carried> {
  const rows = Object.values(tables).reduce((sum, t) => sum + t.rows, 0);
  return { rows, attempts: (await new AttemptFiles(folder, realDisk).attemptDigests()).length };
}

function tableFile(folder: string, table: string): string {
  return join(folder, `${table}.jsonl`);
}

function fault(where: string, found: string, allowed: string): InputError {
  return new InputError(where, [{ path: '', found, allowed }]);
}
