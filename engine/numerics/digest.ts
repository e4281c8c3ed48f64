/**
 * Check numbers: 64 bits in two lanes of multiply and shift, as 16 hex digits. Made to show accidents, hand edits and machines that compute
 * otherwise; it is no seal against somebody who writes a program to make another.
 */

const QUIET_NAN = 0x7fc00000;
const FIRST = [0x811c9dc5, 0x9747b28c] as const;

/** A running check number. Its two lanes live in local variables while a list is taken in: in an object they would cost ten times as much. */
export class Hasher {
  private readonly lanes = Int32Array.from(FIRST);
  private readonly scratch = new Float64Array(1);
  private readonly scratchWords = new Uint32Array(this.scratch.buffer);

  words(view: Uint32Array): void {
    let [a, b] = this.lanes as unknown as [number, number];
    for (let i = 0; i < view.length; i++) {
      const v = view[i]!;
      a = Math.imul(a ^ v, 0x01000193);
      a ^= a >>> 15;
      b = Math.imul(b ^ v, 0x85ebca6b);
      b ^= b >>> 13;
    }
    this.lanes[0] = a;
    this.lanes[1] = b;
  }

  /** Words of 32-bit floats; whatever bits a NaN has here, it counts as one and the same. */
  floats(view: Uint32Array, from: number, to: number): void {
    let [a, b] = this.lanes as unknown as [number, number];
    for (let i = from; i < to; i++) {
      const found = view[i]!;
      const v = (found & 0x7fffffff) > 0x7f800000 ? QUIET_NAN : found;
      a = Math.imul(a ^ v, 0x01000193);
      a ^= a >>> 15;
      b = Math.imul(b ^ v, 0x85ebca6b);
      b ^= b >>> 13;
    }
    this.lanes[0] = a;
    this.lanes[1] = b;
  }

  /** Words of 64-bit floats, two a number; NaN as above. */
  doubles(view: Uint32Array): void {
    let [a, b] = this.lanes as unknown as [number, number];
    for (let i = 0; i < view.length; i += 2) {
      let low = view[i]!;
      let high = view[i + 1]!;
      const size = high & 0x7fffffff;
      if (size > 0x7ff00000 || (size === 0x7ff00000 && low !== 0)) {
        low = 0;
        high = QUIET_NAN;
      }
      a = Math.imul(a ^ low, 0x01000193);
      a ^= a >>> 15;
      b = Math.imul(b ^ low, 0x85ebca6b);
      b ^= b >>> 13;
      a = Math.imul(a ^ high, 0x01000193);
      a ^= a >>> 15;
      b = Math.imul(b ^ high, 0x85ebca6b);
      b ^= b >>> 13;
    }
    this.lanes[0] = a;
    this.lanes[1] = b;
  }

  number(value: number): void {
    this.scratch[0] = value;
    this.doubles(this.scratchWords);
  }

  text(value: string): void {
    this.words(
      Uint32Array.from({ length: value.length + 1 }, (_, i) => (i === 0 ? value.length : value.charCodeAt(i - 1))),
    );
  }

  digest(): string {
    return Array.from(this.lanes, (lane) => (lane >>> 0).toString(16).padStart(8, '0')).join('');
  }
}

/** Digest of a few texts. */
export function digestOf(...texts: string[]): string {
  const hasher = new Hasher();
  for (const text of texts) hasher.text(text);
  return hasher.digest();
}
