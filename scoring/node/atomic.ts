import { randomBytes } from 'node:crypto';
import { closeSync, fsyncSync, openSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { InputError } from '../schema/problem.ts';
import { whyNot } from './files.ts';

/**
 * Writes a file whole or not at all: into a temporary file beside it, then renamed over.
 * @throws InputError when the place cannot be written to; what was there before stays
 */
export function writeText(path: string, content: string | Uint8Array): void {
  const temporary = join(dirname(path), `.${basename(path).slice(0, 80)}.${randomBytes(6).toString('hex')}.part`);
  try {
    const file = openSync(temporary, 'wx');
    try {
      writeFileSync(file, content);
      fsyncSync(file);
    } finally {
      closeSync(file);
    }
    renameSync(temporary, path);
  } catch (cause) {
    rmSync(temporary, { force: true });
    throw new InputError(path, [{ path: '', found: whyNot(cause), allowed: 'a place that can be written to' }]);
  }
}
