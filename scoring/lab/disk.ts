import { mkdir, open, readdir, readFile, rename, rm, writeFile } from 'node:fs/promises';

/** What the lab asks of a disk; each call is a place where power can go. Simulated with torn writes in the tests. */
export interface Disk {
  /** Makes a folder if there is none; true where it was made. */
  makeFolder(path: string): Promise<boolean>;
  /** Writes a file and waits until its content is on the disk. Its name is not, until the folder is synced. */
  write(path: string, bytes: Uint8Array): Promise<void>;
  rename(from: string, to: string): Promise<void>;
  /** Waits until the names in a folder are on the disk. */
  syncFolder(path: string): Promise<void>;
  /** Null where there is no such file. */
  read(path: string): Promise<Uint8Array | null>;
  /** Names in a folder, sorted; none where there is no such folder. */
  list(path: string): Promise<string[]>;
  /** No fault where there is none. */
  remove(path: string): Promise<void>;
}

/** The disk of this machine. */
export const realDisk: Disk = {
  makeFolder: async (path) => (await mkdir(path, { recursive: true, mode: 0o700 })) !== undefined,
  write: (path, bytes) => writeFile(path, bytes, { flush: true, mode: 0o600 }),
  rename,
  syncFolder: async (path) => {
    // Windows opens no folders; there a rename is on the disk when it returns.
    if (process.platform === 'win32') return;
    const folder = await open(path, 'r');
    try {
      await folder.sync();
    } finally {
      await folder.close();
    }
  },
  read: (path) => readFile(path).catch(noneIfMissing(null)),
  list: async (path) => (await readdir(path).catch(noneIfMissing<string[]>([]))).sort(),
  remove: (path) => rm(path, { force: true }),
};

function noneIfMissing<T>(none: T): (cause: unknown) => T {
  return (cause) => {
    if (cause instanceof Error && 'code' in cause && cause.code === 'ENOENT') return none;
    throw cause;
  };
}
