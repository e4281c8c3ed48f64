import { openStore, type Store } from '../../../scoring/lab/store.ts';
import { startPostgres, type TestPostgres } from './postgres.ts';

/** Both databases, so that one suite runs over both; each `open` is a new and empty one. */
export const KINDS = ['embedded', 'server'] as const;
export type Kind = (typeof KINDS)[number];

let server: Promise<TestPostgres> | null = null;

export async function openEmpty(kind: Kind): Promise<Store> {
  return openStore(kind === 'embedded' ? { memory: true } : { url: await newServerDatabase() });
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
