/** Check number of a whole state. */
import { firstCell } from '../kernel/layout.ts';
import { digestOf, Hasher } from '../numerics/digest.ts';
import { arrayOf, scalarOf } from './allocate.ts';
import { type FieldArray, SAVED, SCALAR_NAMES } from './fields.ts';
import type { State } from './state.ts';

/**
 * Check number of everything that decides what comes next or stands in the balance: every field by its name, then the digests in order of
 * names, so that a row moved in the list moves nothing. Padding of the heat fields is left out.
 */
export function hashState(s: State): string {
  const parts: string[] = [];
  for (const name of SAVED) parts.push(`${name} ${digestArray(s, arrayOf(s, name))}`);
  for (const name of SCALAR_NAMES) {
    const hasher = new Hasher();
    hasher.number(scalarOf(s, name));
    parts.push(`${name} ${hasher.digest()}`);
  }
  return digestOf(...parts.sort());
}

function digestArray(s: State, view: FieldArray): string {
  const hasher = new Hasher();
  if (view instanceof Uint8Array) {
    for (let i = 0; i < view.length; i++) hasher.number(view[i]!);
    return hasher.digest();
  }
  const words = new Uint32Array(view.buffer, view.byteOffset, view.byteLength >> 2);
  if (view instanceof Float64Array) hasher.doubles(words);
  else if (view instanceof Int32Array) hasher.words(words);
  else {
    const { layout } = s.heat;
    for (let rod = 0; rod < layout.count; rod++)
      hasher.floats(words, firstCell(layout, rod), firstCell(layout, rod) + s.plan.ny);
  }
  return hasher.digest();
}
