import { InputError } from '../index.ts';
import { AttemptFiles } from './attempt-files.ts';
import { realDisk } from './disk.ts';
import { lockFolder } from './folder-lock.ts';
import { rebuild } from './rebuild.ts';
import type { Environment } from './settings.ts';
import { openStore } from './store.ts';

/** `npm run lab -- rebuild`. @throws InputError when something could not be put back; all the rest was */
export async function runRebuild(o: { data: string; env: Environment; say: (text: string) => void }): Promise<void> {
  const url = o.env.DATABASE_URL;
  const lock = url === undefined ? lockFolder(o.data) : null;
  try {
    const store = await openStore(url === undefined ? { folder: o.data } : { url });
    try {
      const { receipts, restored, spoilt } = await rebuild(store.db, new AttemptFiles(o.data, realDisk));
      o.say(
        `${receipts} receipts, ${restored} attempts put back, ${spoilt.length} spoilt. They are scored when the lab runs.`,
      );
      if (spoilt.length > 0) {
        throw new InputError(
          o.data,
          spoilt.map(({ file, why }) => ({ path: file, found: why, allowed: 'a file as the lab wrote it' })),
        );
      }
    } finally {
      await store.close();
    }
  } finally {
    lock?.release();
  }
}
