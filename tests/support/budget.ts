import { readFileSync } from 'node:fs';
import { gzipSync } from 'node:zlib';

/**
 * Size of files as they go over a line, each packed by gzip (RFC 1952), in thousands of bytes. Node packs; a size tool would bring a dozen packages
 * for this one sum.
 */
export function packedSize_kB(files: readonly string[]): number {
  return files.reduce((sum, file) => sum + gzipSync(readFileSync(file)).length, 0) / 1000;
}
