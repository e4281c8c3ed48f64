import { randomBytes } from 'node:crypto';
import { closeSync, fsyncSync, openSync, readFileSync, renameSync, rmSync, statSync, writeSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { InputError } from '../schema/index.ts';

/** Largest file taken in, bytes. */
const MOST_BYTES = 16_000_000;

/** Text of a file. @throws InputError when it cannot be read or is too large */
export function readText(path: string): string {
  try {
    const { size } = statSync(path);
    if (size > MOST_BYTES) {
      throw new InputError(path, [{ path: '', found: `${size} bytes`, allowed: `at most ${MOST_BYTES} bytes` }]);
    }
    return readFileSync(path, 'utf8');
  } catch (cause) {
    if (cause instanceof InputError) throw cause;
    throw new InputError(path, [{ path: '', found: whyNot(cause), allowed: 'a file that can be read' }]);
  }
}

/**
 * Writes a file whole or not at all: into a temporary file beside it, then renamed over.
 * @throws InputError when the place cannot be written to; what was there before stays
 */
export function writeText(path: string, text: string): void {
  const temporary = join(dirname(path), `.${basename(path)}.${randomBytes(6).toString('hex')}.part`);
  try {
    const file = openSync(temporary, 'wx');
    try {
      writeSync(file, text);
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

function whyNot(cause: unknown): string {
  const code = cause instanceof Error && 'code' in cause ? String(cause.code) : '';
  const words: Record<string, string> = {
    ENOENT: 'no such file or folder',
    EACCES: 'no permission',
    EISDIR: 'a folder',
    ENOTDIR: 'a path through something that is not a folder',
    ENOSPC: 'no space left on the disk',
    EROFS: 'a disk that cannot be written to',
  };
  return words[code] ?? (cause instanceof Error ? cause.message : 'an unknown fault');
}
