import { AttemptFiles } from './attempt-files.ts';
import { realDisk } from './disk.ts';
import { lockFolder } from './folder-lock.ts';
import { eraseTooOld, tooOld } from './retention.ts';
import type { Environment } from './settings.ts';
import { openStore } from './store.ts';

/** `npm run lab -- forget <days>`: says what is older and, asked to, erases it. */
export async function runForget(o: {
  data: string;
  days: number;
  really: boolean;
  env: Environment;
  say: (text: string) => void;
}): Promise<void> {
  const url = o.env.DATABASE_URL;
  const lock = url === undefined ? lockFolder(o.data) : null;
  try {
    const store = await openStore(url === undefined ? { folder: o.data } : { url });
    try {
      const old = await tooOld(store.db, o.days, new Date());
      const whose = `handed in before ${old.before.toISOString().slice(0, 10)}`;
      if (!o.really) {
        o.say(
          `Would erase ${old.trainees.length} trainees who handed nothing in since, with everything of theirs, and ${old.attempts.length} attempts of others ${whose}. Nothing was changed; with --really it is.`,
        );
        return;
      }
      const done = await eraseTooOld(store.db, new AttemptFiles(o.data, realDisk), old);
      o.say(
        `Erased: ${done.trainees} trainees and ${done.attempts} attempts ${whose}. Backups made before still hold them.`,
      );
    } finally {
      await store.close();
    }
  } finally {
    lock?.release();
  }
}
