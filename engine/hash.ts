/** Check number of a state: FNV-1a over the bytes that decide its future, as 16 hex digits (two lanes). */
import { PAD } from './kernel/layout.ts';
import type { State } from './state.ts';

export interface Hasher {
  words(view: Uint32Array): void;
  number(value: number): void;
  digest(): string;
}

export function createHasher(): Hasher {
  let a = 0x811c9dc5 | 0;
  let b = 0x9747b28c | 0;
  const scratch = new Float64Array(1);
  const scratchWords = new Uint32Array(scratch.buffer);
  const word = (v: number): void => {
    a = Math.imul(a ^ v, 0x01000193);
    a ^= a >>> 15;
    b = Math.imul(b ^ v, 0x85ebca6b);
    b ^= b >>> 13;
  };
  return {
    words(view) {
      for (let i = 0; i < view.length; i++) word(view[i]!);
    },
    number(value) {
      scratch[0] = value;
      word(scratchWords[0]!);
      word(scratchWords[1]!);
    },
    digest() {
      return (a >>> 0).toString(16).padStart(8, '0') + (b >>> 0).toString(16).padStart(8, '0');
    },
  };
}

const wordsOf = (view: ArrayBufferView): Uint32Array =>
  new Uint32Array(view.buffer, view.byteOffset, view.byteLength >> 2);

/** Hash of heat, surface, contact lines and stamps; padding is left out. */
export function hashState(s: State): string {
  const hasher = createHasher();
  const { heat, plan } = s;
  const { stride } = heat.layout;
  for (const field of [heat.H, heat.residual, heat.fill, heat.peak]) {
    const words = wordsOf(field);
    for (let r = 0; r < plan.rods.count; r++)
      hasher.words(words.subarray(r * stride + PAD, r * stride + PAD + plan.ny));
  }
  for (const field of [
    s.w,
    s.wEq,
    s.response,
    s.flowPotential,
    s.edge,
    s.wetTick,
    s.frozenTick,
    s.calm.H,
    s.calm.crossing,
  ])
    hasher.words(wordsOf(field));
  for (let i = 0; i < s.liquid.length; i++) hasher.number(s.liquid[i]!);
  hasher.number(s.fine.from);
  hasher.number(s.fine.to);
  hasher.number(s.tick);
  hasher.number(s.current);
  for (const value of Object.values(s.ledger) as number[]) hasher.number(value);
  return hasher.digest();
}
