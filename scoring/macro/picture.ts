import { InputError } from '../schema/problem.ts';

/** Largest picture file taken in, bytes, and largest picture, pixels: more is slow to show and no better to read. */
export const MOST_PICTURE_BYTES = 30_000_000;
/** Largest picture taken in, pixels in all. */
export const MOST_PICTURE_PX = 50_000_000;
/** A picture smaller than this along one side cannot be marked to a tenth of a millimetre. */
const LEAST_PICTURE_PX = 100;
/** Enough of a file to find its size in; cameras put previews of up to some 64 kB before it. */
export const PICTURE_HEAD_BYTES = 512_000;

/** Kind and size of a picture, read from its first bytes. */
export interface PictureHead {
  kind: 'image/png' | 'image/jpeg';
  /** As stored; a camera's turn by 90° is not applied. */
  width_px: number;
  height_px: number;
}

const PNG = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a];

/**
 * What a picture file says of itself, before any of it is unpacked: a small file may unpack to gigabytes.
 * @param head the first bytes of the file, PICTURE_HEAD_BYTES or all of it
 * @param size_bytes size of the whole file
 * @throws InputError when it is no PNG or JPEG, cut off, too large or too small
 */
export function pictureHead(head: Uint8Array, size_bytes: number, file: string): PictureHead {
  if (size_bytes > MOST_PICTURE_BYTES)
    throw refuse(
      file,
      `${(size_bytes / 1e6).toFixed(0)} MB`,
      `a picture of at most ${MOST_PICTURE_BYTES / 1e6} MB; make it smaller first`,
    );
  const found = PNG.every((byte, i) => head[i] === byte) ? png(head) : jpeg(head);
  if (found === 'other') throw refuse(file, 'a file that is neither PNG nor JPEG', 'a photograph saved as PNG or JPEG');
  if (found === null) throw refuse(file, 'a picture that is cut off or damaged', 'a complete PNG or JPEG file');
  const { width_px: w, height_px: h } = found;
  if (w * h > MOST_PICTURE_PX)
    throw refuse(
      file,
      `${w} by ${h} pixels`,
      `at most ${MOST_PICTURE_PX / 1e6} million pixels; make the picture smaller first`,
    );
  if (Math.min(w, h) < LEAST_PICTURE_PX)
    throw refuse(file, `${w} by ${h} pixels`, `a picture at least ${LEAST_PICTURE_PX} pixels wide and high`);
  return found;
}

/** Enough of a file's end to see whether it is there. Telephones put a second of film behind a photograph. */
export const PICTURE_TAIL_BYTES = 8_000_000;

/**
 * Whether a picture file goes on to its end: browsers show the upper part of one that was cut off without saying so.
 * @param tail the last bytes of the file, PICTURE_TAIL_BYTES or the half of it
 */
export function pictureEnds(kind: PictureHead['kind'], tail: Uint8Array): boolean {
  if (kind === 'image/png') return tail.length >= 12 && text(tail, tail.length - 8) === 'IEND';
  // Picture data never holds FF D9: the standard fills every FF of its own with 00.
  for (let at = tail.length - 2; at >= 0; at--) if (tail[at] === 0xff && tail[at + 1] === 0xd9) return true;
  return false;
}

function png(head: Uint8Array): PictureHead | null {
  if (head.length < 24 || text(head, 12) !== 'IHDR') return null;
  return sized('image/png', word(head, 16) * 65536 + word(head, 18), word(head, 20) * 65536 + word(head, 22));
}

/** Walks a JPEG's segments to its frame header (ITU-T T.81, B.2.2). */
function jpeg(head: Uint8Array): PictureHead | 'other' | null {
  if (head[0] !== 0xff || head[1] !== 0xd8) return 'other';
  let at = 2;
  while (at + 9 < head.length) {
    if (head[at] !== 0xff) return null;
    const marker = head[at + 1]!;
    if (marker === 0xff) {
      at += 1;
      continue;
    }
    // Frame headers are C0 to CF but for tables (C4, C8, CC).
    if (marker >= 0xc0 && marker <= 0xcf && marker !== 0xc4 && marker !== 0xc8 && marker !== 0xcc)
      return sized('image/jpeg', word(head, at + 7), word(head, at + 5));
    if (marker === 0xd9 || marker === 0xda) return null;
    at += 2 + word(head, at + 2);
  }
  return null;
}

function sized(kind: PictureHead['kind'], width_px: number, height_px: number): PictureHead | null {
  return width_px > 0 && height_px > 0 ? { kind, width_px, height_px } : null;
}

function word(bytes: Uint8Array, at: number): number {
  return (bytes[at] ?? 0) * 256 + (bytes[at + 1] ?? 0);
}

function text(bytes: Uint8Array, at: number): string {
  return String.fromCharCode(...bytes.subarray(at, at + 4));
}

function refuse(file: string, found: string, allowed: string): InputError {
  return new InputError(file, [{ path: '', found, allowed }]);
}
