import { readdirSync, realpathSync } from 'node:fs';
import { join, sep } from 'node:path';
import { isTaken, MOST_FILES, refusePacked } from '../class/taken.ts';
import { InputError } from '../schema/problem.ts';
import { readBytes, whyNot } from './files.ts';

/** What is in a folder of recordings. */
export interface FolderList {
  /** Names of the files to read, sorted by code unit so that the order is the same everywhere. */
  files: string[];
  /** Subfolders, which are not looked into. */
  folders: string[];
  /** Names of other files, left alone; hidden ones are not named. */
  passedOver: string[];
}

/**
 * Files of a folder that are or should be recordings: names ending in .json, and packed ones so that they can be refused by name.
 * Hidden files are passed over, others named.
 * @throws InputError when the folder cannot be read, holds none, or too many
 */
export function listFolder(folder: string): FolderList {
  const files: string[] = [];
  const folders: string[] = [];
  const passedOver: string[] = [];
  try {
    for (const entry of readdirSync(folder, { withFileTypes: true })) {
      if (entry.name.startsWith('.')) continue;
      if (entry.isDirectory()) folders.push(entry.name);
      else if (isTaken(entry.name)) files.push(entry.name);
      else passedOver.push(entry.name);
    }
  } catch (cause) {
    throw new InputError(folder, [{ path: '', found: whyNot(cause), allowed: 'a folder of recordings' }]);
  }
  if (files.length === 0) {
    throw new InputError(folder, [
      { path: '', found: 'a folder without .json files', allowed: 'a folder of recordings' },
    ]);
  }
  if (files.length > MOST_FILES) {
    throw new InputError(folder, [
      { path: '', found: `${files.length} files`, allowed: `at most ${MOST_FILES} in one folder` },
    ]);
  }
  return { files: files.sort(), folders: folders.sort(), passedOver: passedOver.sort() };
}

/**
 * Bytes of one file of a folder. A link is followed only to a file inside the folder.
 * @throws InputError naming the file
 */
export function readInFolder(folder: string, name: string): Uint8Array {
  if (name.includes('/') || name.includes(sep) || name === '..') {
    throw new InputError(name, [{ path: '', found: 'a path', allowed: 'the name of a file in the folder' }]);
  }
  refusePacked(name);
  const path = join(folder, name);
  let real: string;
  let root: string;
  try {
    root = realpathSync(folder);
    real = realpathSync(path);
  } catch (cause) {
    // The name was listed, so it is there; what of it was no UTF-8 has been lost on the way.
    if (name.includes('\ufffd') && (cause as NodeJS.ErrnoException).code === 'ENOENT')
      throw new InputError(name, [
        { path: '', found: 'a file name that is not written in UTF-8', allowed: 'a name in UTF-8; rename the file' },
      ]);
    throw new InputError(name, [{ path: '', found: whyNot(cause), allowed: 'a file that can be read' }]);
  }
  if (!real.startsWith(root.endsWith(sep) ? root : root + sep)) {
    throw new InputError(name, [
      { path: '', found: 'a link out of the folder', allowed: 'a file that lies in the folder itself' },
    ]);
  }
  return readBytes(real, name, false);
}
