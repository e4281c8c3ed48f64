/** Check number of a whole state. */
import { digestOf, Hasher } from './digest.ts';
import { PAD } from './kernel/layout.ts';
import { namedArrays, namedNumbers } from './snapshot.ts';
import type { State } from './state.ts';
import type { Pose } from './types.ts';

/**
 * Check number of everything that decides what comes next or stands in the books: every field by its name, then the digests in order of
 * names, so that a row moved in a list moves nothing. Padding of the heat fields and what follows from other fields are left out.
 */
export function hashState(s: State, pressure: Float64Array, last: Pose | null): string {
  const parts: string[] = [];
  for (const [name, view] of Object.entries(namedArrays(s, pressure)))
    if (!FOLLOWS.has(name)) parts.push(`${name} ${digestArray(s, view)}`);
  for (const [name, value] of Object.entries(namedNumbers(s, last))) {
    const hasher = new Hasher();
    hasher.number(value);
    parts.push(`${name} ${hasher.digest()}`);
  }
  return digestOf(...parts.sort());
}

/** Counted or labelled anew from the others before they are used. */
const FOLLOWS: ReadonlySet<string> = new Set(['notFull', 'holding', 'pool']);

function digestArray(s: State, view: Float64Array | Float32Array | Int32Array | Uint8Array): string {
  const hasher = new Hasher();
  if (view instanceof Uint8Array) {
    for (let i = 0; i < view.length; i++) hasher.number(view[i]!);
    return hasher.digest();
  }
  const words = new Uint32Array(view.buffer, view.byteOffset, view.byteLength >> 2);
  if (view instanceof Float64Array) hasher.doubles(words);
  else if (view instanceof Int32Array) hasher.words(words);
  else {
    const { stride } = s.heat.layout;
    for (let first = PAD; first < words.length; first += stride) hasher.floats(words, first, first + s.plan.ny);
  }
  return hasher.digest();
}
