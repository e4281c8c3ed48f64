import { InputError, textOf } from '../../../scoring/index.ts';
import type { ChosenFile } from '../chosen-file.ts';
import type { WrittenDate } from '../ports.ts';
import { FileTooLarge, messageOf } from './problem.ts';

/** `2026-03-14_tee-inverted-v_1532.json`: date, exercise, time of day. */
export function fileName(made: WrittenDate, exercise: string): string {
  return `${made.day}_${exercise}_${made.minute}.json`;
}

/** A file chosen or dropped; larger ones are refused before they are read. */
export const MOST_FILE_BYTES = 16_000_000;

/** A logbook holds hundreds of recordings. */
export const LARGEST_LOGBOOK_BYTES = 400_000_000;

/**
 * Text of a chosen file by the command line's own rule: UTF-8 or refused, never letters guessed.
 * @throws FileTooLarge, InputError
 */
export async function readText(file: ChosenFile, most_bytes = MOST_FILE_BYTES): Promise<string> {
  if (file.size > most_bytes) throw new FileTooLarge(file.name, file.size, most_bytes);
  return textOf(await bytesOf(file), file.name);
}

/** Bytes of a chosen file. @throws InputError where it can no longer be read: taken away since, or no file at all */
export async function bytesOf(file: ChosenFile): Promise<Uint8Array> {
  try {
    return new Uint8Array(await file.arrayBuffer());
  } catch (error) {
    throw new InputError(file.name, [
      {
        path: '',
        found: `a file that can no longer be read (${messageOf(error)})`,
        allowed: 'a file that can be read',
      },
    ]);
  }
}
