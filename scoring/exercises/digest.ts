import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js';
import { asAsked } from '../schema/asked.ts';
import type { Exercise } from '../schema/exercise.ts';

/** SHA-256 as hexadecimal digits; of a text, of its UTF-8. */
export function digest(content: Uint8Array | string): string {
  return bytesToHex(sha256(typeof content === 'string' ? utf8ToBytes(content) : content));
}

/** SHA-256 of what an exercise asks, whatever the order of its fields, what it is called and what is left to the trainee; null of none. */
export function exerciseDigest(exercise: Exercise | null): string | null {
  if (exercise === null) return null;
  const { name: _name, title: _title, story: _story, teaches: _teaches, ...asked } = asAsked(exercise);
  return digest(canonical(asked));
}

/** JSON with the fields of every object in order. */
function canonical(value: unknown): string {
  if (typeof value !== 'object' || value === null) return JSON.stringify(value);
  if (Array.isArray(value)) return `[${value.map(canonical).join(',')}]`;
  const fields = Object.entries(value).sort(([a], [b]) => (a < b ? -1 : 1));
  return `{${fields.map(([key, inner]) => `${JSON.stringify(key)}:${canonical(inner)}`).join(',')}}`;
}
