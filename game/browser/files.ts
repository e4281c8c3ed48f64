import type { Recording } from '../../engine/index.ts';
import type { Coupon } from '../../scoring/index.ts';

/** Hands a recording, or the marks of a coupon, to the user as a file. */
export function downloadJson(content: Recording | Coupon, name: string): void {
  const address = URL.createObjectURL(new Blob([JSON.stringify(content)], { type: 'application/json' }));
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  // The browser has taken the blob once the click has been handled.
  setTimeout(() => URL.revokeObjectURL(address), 10_000);
}

/** `2026-03-14_tee-inverted-v_1532.json`: date, exercise, time of day. */
export function fileName(made_ms: number, exercise: string): string {
  const at = new Date(made_ms);
  const two = (x: number): string => String(x).padStart(2, '0');
  const day = `${at.getFullYear()}-${two(at.getMonth() + 1)}-${two(at.getDate())}`;
  return `${day}_${exercise}_${two(at.getHours())}${two(at.getMinutes())}.json`;
}

/** A file chosen or dropped; larger ones are refused before they are read. */
const LARGEST_FILE_BYTES = 16_000_000;

export async function readText(file: File): Promise<string> {
  if (file.size > LARGEST_FILE_BYTES)
    throw new Error(
      `${file.name}: found ${(file.size / 1e6).toFixed(0)} MB, allowed are recordings of at most ${LARGEST_FILE_BYTES / 1e6} MB`,
    );
  return file.text();
}
