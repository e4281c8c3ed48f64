import { existsSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { type AttemptName, attemptFileName } from '../class/file-name.ts';
import { InputError } from '../schema/problem.ts';

/** Highest number of an attempt in a file's name. */
const MOST_ATTEMPTS = 9999;

/** Whether a path leads to a folder that is there. */
export function isFolder(path: string): boolean {
  return statSync(path, { throwIfNoEntry: false })?.isDirectory() ?? false;
}

/** The day where this machine is, as names of files have it: 2026-03-14. */
export function dayOf(date: Date): string {
  const two = (n: number): string => String(n).padStart(2, '0');
  return `${date.getFullYear()}-${two(date.getMonth() + 1)}-${two(date.getDate())}`;
}

/**
 * Path of an attempt in a folder, under the first attempt number that is not there yet.
 * @throws InputError when every number is taken
 */
export function nextFile(folder: string, name: Omit<AttemptName, 'attempt'>): string {
  for (let attempt = 1; attempt <= MOST_ATTEMPTS; attempt++) {
    const path = join(folder, attemptFileName({ ...name, attempt }));
    if (!existsSync(path)) return path;
  }
  throw new InputError(folder, [
    { path: '', found: `${MOST_ATTEMPTS} attempts of that name`, allowed: 'a folder with a number left' },
  ]);
}
