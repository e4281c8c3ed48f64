import { backUp, type Carried, restore } from './backup.ts';
import { lockFolder } from './folder-lock.ts';
import type { Environment } from './settings.ts';
import { openStore } from './store.ts';

/** `npm run lab -- backup <folder>` and `restore <folder>`. @throws InputError */
export async function runBackup(
  what: 'backup' | 'restore',
  o: { data: string; folder: string; env: Environment; say: (text: string) => void },
): Promise<void> {
  const url = o.env.DATABASE_URL;
  const lock = url === undefined ? lockFolder(o.data) : null;
  try {
    const store = await openStore(url === undefined ? { folder: o.data } : { url });
    try {
      const run = what === 'backup' ? backUp : restore;
      const { rows, attempts }: Carried = await run(store, o.data, o.folder);
      o.say(`${what === 'backup' ? 'Backed up' : 'Restored'}: ${rows} rows, ${attempts} attempts.`);
    } finally {
      await store.close();
    }
  } finally {
    lock?.release();
  }
}
