import { closeSync, fsyncSync, ftruncateSync, mkdirSync, openSync, readFileSync, writeSync } from 'node:fs';
import { hostname } from 'node:os';
import { join } from 'node:path';
import native from 'fs-native-extensions';
import { InputError } from '../index.ts';

/** Name of the file that is locked; it stays when the lock goes. */
const LOCK_NAME = 'in-use-by';

/** A data folder held by this process. */
export interface FolderLock {
  release(): void;
}

/**
 * Takes a data folder for this process alone, by the system's own file lock: it goes with the process that holds it, however that ends, so none is
 * ever stale and none has to be reaped by age. The embedded database has no lock of its own: two processes on one folder lose rows that were
 * already acknowledged.
 * @throws InputError naming the process that holds it
 */
export function lockFolder(folder: string): FolderLock {
  mkdirSync(folder, { recursive: true, mode: 0o700 });
  const path = join(folder, LOCK_NAME);
  const file = openSync(path, 'a+', 0o600);
  if (!native.tryLock(file)) {
    closeSync(file);
    const owner = readFileSync(path, 'utf8').trim();
    throw new InputError(folder, [
      {
        path: '',
        found: `a data folder in use by ${owner === '' ? 'another process' : owner}`,
        allowed: 'a folder that no other lab uses; stop that one, or give this one its own with --data',
      },
    ]);
  }
  ftruncateSync(file);
  writeSync(file, `process ${process.pid} on ${hostname()}, since ${new Date().toISOString()}\n`);
  fsyncSync(file);
  return {
    release: () => {
      ftruncateSync(file);
      native.unlock(file);
      closeSync(file);
    },
  };
}
