import { cpSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { freePort, startPostgres } from '../../lab/support/postgres.ts';
import { type LabProcess, startLab } from './lab-process.ts';

export const STORES = ['embedded', 'postgresql'] as const;
export type StoreName = (typeof STORES)[number];

export const WORKER_TOKEN = 'a-token-of-at-least-twenty-characters';

/** Where one lab has its data. */
export interface Place {
  folder: string;
  databaseUrl: string | null;
}

/** Makes places of one store and takes them away again. */
export interface Ground {
  fresh(): Place;
  /** The same data once more; no lab may be at work in it. */
  copyOf(place: Place): Place;
  end(): void;
}

export async function openGround(store: StoreName): Promise<Ground> {
  const server = store === 'embedded' ? null : await startPostgres();
  const folders: string[] = [];
  const newFolder = (): string => {
    folders.push(mkdtempSync(join(tmpdir(), 'toehold-load-')));
    return folders.at(-1)!;
  };
  return {
    fresh: () => ({ folder: newFolder(), databaseUrl: server?.newDatabase() ?? null }),
    copyOf: (place) => {
      const folder = newFolder();
      cpSync(place.folder, folder, { recursive: true });
      return { folder, databaseUrl: server?.newDatabase(place.databaseUrl ?? undefined) ?? null };
    },
    end: () => {
      server?.stop();
      for (const folder of folders) rmSync(folder, { recursive: true, force: true });
    },
  };
}

/** A lab at work somewhere. */
export interface AtWork {
  base: string;
  service: LabProcess;
  /** Starts a worker beside it, which fetches attempts over the network as one on another machine does. */
  worker(): Promise<LabProcess>;
}

export async function startAt({ folder, databaseUrl }: Place, threads: number): Promise<AtWork> {
  const port = String(await freePort());
  const base = `http://127.0.0.1:${port}`;
  const env: Record<string, string> = {
    LAB_REQUESTS: '100000',
    LAB_WORKER_TOKEN: WORKER_TOKEN,
    LAB_URL: base,
    ...(databaseUrl === null ? {} : { DATABASE_URL: databaseUrl }),
  };
  const at = ['--data', folder, '--host', '127.0.0.1', '--port', port, '--threads', String(threads)];
  return {
    base,
    service: await startLab(at, env),
    worker: () =>
      startLab(
        ['worker', '--data', join(folder, 'none'), '--threads', '1'],
        { ...env, LAB_LOG: 'info' },
        /worker started/,
      ),
  };
}
