import type { ChosenFile } from '../ports.ts';
import { FileTooLarge } from './problem.ts';

/** `2026-03-14_tee-inverted-v_1532.json`: date, exercise, time of day. */
export function fileName(made_ms: number, exercise: string): string {
  const at = new Date(made_ms);
  const two = (x: number): string => String(x).padStart(2, '0');
  const day = `${at.getFullYear()}-${two(at.getMonth() + 1)}-${two(at.getDate())}`;
  return `${day}_${exercise}_${two(at.getHours())}${two(at.getMinutes())}.json`;
}

/** A file chosen or dropped; larger ones are refused before they are read. */
const LARGEST_FILE_BYTES = 16_000_000;

/** @throws FileTooLarge */
export async function readText(file: ChosenFile): Promise<string> {
  if (file.size > LARGEST_FILE_BYTES) throw new FileTooLarge(file.name, file.size, LARGEST_FILE_BYTES);
  return file.text();
}
