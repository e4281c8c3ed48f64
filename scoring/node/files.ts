import { randomBytes } from 'node:crypto';
import {
  closeSync,
  constants,
  fstatSync,
  fsyncSync,
  openSync,
  readSync,
  renameSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { MOST_BYTES, textOf } from '../schema/bytes.ts';
import { InputError } from '../schema/problem.ts';

/**
 * Reads a file whole. Opened first and looked at through the open handle, so that what was checked is what is read; never waits on a
 * pipe or a device.
 * @param follow whether the last part of the path may be a link
 * @throws InputError when it is no ordinary file, too large, or cannot be read
 */
export function readBytes(path: string, name = path, follow = true): Uint8Array {
  let file: number;
  try {
    file = openSync(path, constants.O_RDONLY | constants.O_NONBLOCK | (follow ? 0 : constants.O_NOFOLLOW));
  } catch (cause) {
    throw refusal(name, whyNot(cause));
  }
  try {
    const stat = fstatSync(file);
    if (stat.isDirectory()) throw refusal(name, 'a folder');
    if (!stat.isFile()) throw refusal(name, 'a device, pipe or socket');
    if (stat.size > MOST_BYTES) throw tooLarge(name, stat.size);
    return readAll(file, stat.size, name);
  } catch (cause) {
    if (cause instanceof InputError) throw cause;
    throw refusal(name, whyNot(cause));
  } finally {
    closeSync(file);
  }
}

/** Reads to the end, even of a file that grows meanwhile, but never past the largest size. */
function readAll(file: number, size: number, name: string): Uint8Array {
  let bytes = new Uint8Array(size + 1);
  let length = 0;
  for (;;) {
    if (length === bytes.length) {
      const larger = new Uint8Array(2 * bytes.length);
      larger.set(bytes);
      bytes = larger;
    }
    const got = readSync(file, bytes, length, bytes.length - length, null);
    if (got === 0) return bytes.slice(0, length);
    length += got;
    if (length > MOST_BYTES) throw tooLarge(name, length);
  }
}

/** What stood in the way, in words. */
export function whyNot(cause: unknown): string {
  const code = cause instanceof Error && 'code' in cause ? String(cause.code) : '';
  const words: Record<string, string> = {
    ENOENT: 'no such file or folder',
    EACCES: 'no permission',
    EISDIR: 'a folder',
    ENOTDIR: 'a path through something that is not a folder',
    ENOSPC: 'no space left on the disk',
    EROFS: 'a disk that cannot be written to',
    ELOOP: 'a link where a file should be',
    ENXIO: 'a device, pipe or socket',
    ENAMETOOLONG: 'a name longer than this disk takes',
  };
  return words[code] ?? (cause instanceof Error ? cause.message : 'an unknown fault');
}

function refusal(name: string, found: string): InputError {
  return new InputError(name, [{ path: '', found, allowed: 'a file that can be read' }]);
}

function tooLarge(name: string, size: number): InputError {
  return new InputError(name, [{ path: '', found: `${size} bytes`, allowed: `at most ${MOST_BYTES} bytes` }]);
}

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

/** Text of a file. @throws InputError when it cannot be read, is packed, too large or no text */
export function readText(path: string): string {
  return textOf(readBytes(path), path);
}
