import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { PGlite } from '@electric-sql/pglite';
import { drizzle as drizzlePg } from 'drizzle-orm/node-postgres';
import { migrate as migratePg } from 'drizzle-orm/node-postgres/migrator';
import type { PgDatabase, PgQueryResultHKT } from 'drizzle-orm/pg-core';
import { drizzle as drizzlePglite } from 'drizzle-orm/pglite';
import { migrate as migratePglite } from 'drizzle-orm/pglite/migrator';
import pg from 'pg';

/** Tables through drizzle, whichever database is under it; a transaction of it is one too. */
export type Db = PgDatabase<PgQueryResultHKT>;

/** The lab's database: embedded in a folder, or a PostgreSQL server. */
export interface Store {
  kind: 'embedded' | 'server';
  db: Db;
  /** Runs SQL of the queue's own making: with values one statement, without them any number; the rows are those of the last that has some. */
  executeSql(text: string, values?: unknown[]): Promise<{ rows: unknown[]; rowCount: number }>;
  close(): Promise<void>;
}

/** Migrations as committed; each has been what some lab out there stands at. */
const MIGRATIONS = fileURLToPath(new URL('./migrations', import.meta.url));

/** Any number that nothing else in the database locks with. */
const MIGRATION_LOCK = 710_551_882;

/** Where the lab keeps its tables. */
export type StorePlace = { url: string } | { folder: string } | { memory: true };

/**
 * Opens the database and brings its tables up to date. A folder must be locked by the caller first.
 * @throws Error of the database when it cannot be reached or a migration fails; nothing of a failed migration stays
 */
export async function openStore(place: StorePlace, migrations = MIGRATIONS): Promise<Store> {
  return 'url' in place ? openServer(place.url, migrations) : openEmbedded(place, migrations);
}

async function openEmbedded(place: { folder: string } | { memory: true }, migrationsFolder: string): Promise<Store> {
  const folder = 'folder' in place ? join(place.folder, 'database') : undefined;
  if (folder !== undefined) mkdirSync(folder, { recursive: true, mode: 0o700 });
  const engine = await PGlite.create(folder);
  const db = drizzlePglite(engine);
  await migratePglite(db, { migrationsFolder });
  return {
    kind: 'embedded',
    db,
    executeSql: async (text, values = []) => {
      if (values.length > 0) {
        const { rows, affectedRows } = await engine.query(text, values);
        return { rows, rowCount: affectedRows ?? rows.length };
      }
      const last = (await engine.exec(text)).filter((r) => r.fields.length > 0).at(-1);
      return { rows: last?.rows ?? [], rowCount: last?.rows.length ?? 0 };
    },
    close: () => engine.close(),
  };
}

async function openServer(connectionString: string, migrationsFolder: string): Promise<Store> {
  const pool = new pg.Pool({ connectionString, max: 10 });
  // A connection lost while idle is replaced by the pool; without a listener it would end the program.
  pool.on('error', () => undefined);
  // The pool does not listen while somebody holds the connection: lost between two statements of a transaction, it would end the program as well.
  pool.on('connect', (client) => client.on('error', () => undefined));
  try {
    await migrateAlone(pool, migrationsFolder);
  } catch (cause) {
    await pool.end();
    throw cause;
  }
  return {
    kind: 'server',
    db: drizzlePg(pool),
    executeSql: async (text, values = []) => {
      const got: unknown = await (values.length > 0 ? pool.query(text, values) : pool.query(text));
      const last = (Array.isArray(got) ? got.filter((r: pg.QueryResult) => r.fields?.length > 0).at(-1) : got) as
        | pg.QueryResult
        | undefined;
      return { rows: last?.rows ?? [], rowCount: last?.rowCount ?? 0 };
    },
    close: () => pool.end(),
  };
}

/** Several processes may start at once: one migrates, the others wait for it. The lock goes with its connection. */
async function migrateAlone(pool: pg.Pool, migrationsFolder: string): Promise<void> {
  const client = await pool.connect();
  try {
    await client.query('select pg_advisory_lock($1)', [MIGRATION_LOCK]);
    await migratePg(drizzlePg(client), { migrationsFolder });
    await client.query('select pg_advisory_unlock($1)', [MIGRATION_LOCK]);
    client.release();
  } catch (cause) {
    client.release(true);
    throw cause;
  }
}
