import { randomBytes } from 'node:crypto';
import { closeSync, constants, fstatSync, openSync, realpathSync, writeFileSync } from 'node:fs';
import { dirname, resolve, sep } from 'node:path';
import { InputError } from '../schema/problem.ts';
import { readBytes, whyNot } from './files.ts';

const LEAST_BYTES = 16;
const MOST_BYTES = 4096;

/**
 * The secret that a folder's owner seals the journal with, from a file that only its owner can read. One that is not there is made: 32 random bytes.
 * @param folder the folder scored, whose writers must not come by the secret
 * @throws InputError when the file lies in that folder, can be read by others, or is no secret
 */
export function journalSecret(path: string, folder: string): Uint8Array {
  if (liesIn(path, folder)) {
    throw refusal(path, 'a file in the very folder it is to guard', 'a file elsewhere, that the class cannot write to');
  }
  make(path);
  const bytes = readBytes(path);
  if (bytes.length < LEAST_BYTES || bytes.length > MOST_BYTES) {
    throw refusal(path, `${bytes.length} bytes`, `a secret of ${LEAST_BYTES} to ${MOST_BYTES} bytes`);
  }
  return bytes;
}

/** Made where it is not there; refused where others could read it. */
function make(path: string): void {
  let made: number | null = null;
  try {
    made = openSync(path, constants.O_WRONLY | constants.O_CREAT | constants.O_EXCL, 0o600);
    writeFileSync(made, `${randomBytes(32).toString('hex')}\n`);
  } catch (cause) {
    if (!(cause instanceof Error && 'code' in cause && cause.code === 'EEXIST')) {
      throw refusal(path, whyNot(cause), 'a place that can be written to');
    }
    checkKept(path);
  } finally {
    if (made !== null) closeSync(made);
  }
}

function checkKept(path: string): void {
  // Windows keeps no such bits: there the folder's own permissions are what there is.
  if (process.platform === 'win32') return;
  let file: number;
  try {
    file = openSync(path, constants.O_RDONLY | constants.O_NONBLOCK);
  } catch (cause) {
    throw refusal(path, whyNot(cause), 'a file that can be read');
  }
  try {
    const bits = fstatSync(file).mode & 0o077;
    if (bits !== 0) {
      throw refusal(path, 'a file that others may read or write', 'one that its owner alone may read (chmod 600)');
    }
  } finally {
    closeSync(file);
  }
}

function liesIn(path: string, folder: string): boolean {
  try {
    const real = realpathSync(folder);
    const at = realpathSync(dirname(resolve(path)));
    return at === real || at.startsWith(real.endsWith(sep) ? real : real + sep);
  } catch {
    // A folder that cannot be found is named where it is read.
    return false;
  }
}

function refusal(path: string, found: string, allowed: string): InputError {
  return new InputError(path, [{ path: 'journal secret', found, allowed }]);
}
