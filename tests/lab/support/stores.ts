import { openStore, type Store } from '../../../scoring/lab/store.ts';
import { startPostgres, type TestPostgres } from './postgres.ts';

/** Both databases. One suite runs over both, one after the other (LAB_STORE). */
export const KINDS = ['embedded', 'server'] as const;
export type Kind = (typeof KINDS)[number];

/** The one this run is about. */
export const KIND: Kind = process.env.LAB_STORE === 'server' ? 'server' : 'embedded';

let server: Promise<TestPostgres> | null = null;

/** A new and empty database. */
export async function openEmpty(): Promise<Store> {
  return openStore(KIND === 'embedded' ? { memory: true } : { url: await newServerDatabase() });
}

/** Address of an empty database on the file's own server, which is started when first asked for. */
export async function newServerDatabase(): Promise<string> {
  server ??= startPostgres();
  return (await server).newDatabase();
}

/** To be called when a file's tests are over. */
export async function stopServer(): Promise<void> {
  if (server !== null) (await server).stop();
  server = null;
}
