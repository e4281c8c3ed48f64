import { InputError } from '../schema/problem.ts';

/** Most files of one class taken in. */
export const MOST_FILES = 5000;

/** Ends of names of packed files, which are refused by name and never opened. */
const PACKED_END = /\.(gz|tgz|zip|bz2|xz|zst|br|7z|rar)$/i;

/** Whether a file of a folder is or should be a recording: a name ending in .json, or a packed one, to be refused by name. Hidden files are not. */
export function isTaken(name: string): boolean {
  return !name.startsWith('.') && (/\.json$/i.test(name) || PACKED_END.test(name));
}

/** @throws InputError when the name is that of a packed file */
export function refusePacked(name: string): void {
  if (!PACKED_END.test(name)) return;
  throw new InputError(name, [
    { path: '', found: 'a packed file', allowed: 'plain JSON text; unpack it first, packed files are not opened' },
  ]);
}
