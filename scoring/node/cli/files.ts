import { readBytes, textOf, writeText } from '../files.ts';

export { writeText };

/** Text of a file. @throws InputError when it cannot be read, is packed, too large or no text */
export function readText(path: string): string {
  return textOf(readBytes(path), path);
}
