import { InputError } from './problem.ts';

/** Largest file taken in, bytes. */
export const MOST_BYTES = 16_000_000;

/** First bytes of packed files. None is read: a few kilobytes can unpack to more than fits in memory. */
const PACKED: readonly [string, readonly number[]][] = [
  ['gzip', [0x1f, 0x8b]],
  ['zip', [0x50, 0x4b, 0x03, 0x04]],
  ['bzip2', [0x42, 0x5a, 0x68]],
  ['xz', [0xfd, 0x37, 0x7a, 0x58, 0x5a]],
  ['Zstandard', [0x28, 0xb5, 0x2f, 0xfd]],
  ['7z', [0x37, 0x7a, 0xbc, 0xaf]],
];

/**
 * Bytes as text.
 * @throws InputError when they are packed or not UTF-8
 */
export function textOf(bytes: Uint8Array, name: string): string {
  for (const [kind, first] of PACKED) {
    if (first.every((b, i) => bytes[i] === b)) {
      throw new InputError(name, [
        { path: '', found: `a packed file (${kind})`, allowed: 'plain JSON text; packed files are not opened' },
      ]);
    }
  }
  if (
    (bytes[0] === 0xff && bytes[1] === 0xfe) ||
    (bytes[0] === 0xfe && bytes[1] === 0xff) ||
    bytes.subarray(0, 64).includes(0)
  ) {
    throw new InputError(name, [
      { path: '', found: 'UTF-16 text, or no text at all', allowed: 'JSON text in UTF-8; save it again as UTF-8' },
    ]);
  }
  try {
    return new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes);
  } catch {
    throw new InputError(name, [{ path: '', found: 'bytes that are not UTF-8 text', allowed: 'JSON text in UTF-8' }]);
  }
}
