/** Seeded generator (xorshift32 after a splitmix scramble); state is one 32-bit word, so it can live in a snapshot. */
export interface Random {
  /** Uniform in [0, 1). */
  next(): number;
  /** Zero mean, unit variance (sum of twelve uniforms: no transcendental function, tails end at ±6). */
  normal(): number;
}

/** A seeded source of random numbers: the same seed gives the same numbers everywhere. */
export function createRandom(seed: number): Random {
  let state = (Math.imul((seed | 0) ^ 0x9e3779b9, 0x85ebca6b) ^ 0x5bd1e995) | 0;
  if (state === 0) state = 0x6d2b79f5;
  const next = (): number => {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    return (state >>> 0) / 4294967296;
  };
  for (let i = 0; i < 8; i++) next();
  return {
    next,
    normal() {
      let sum = -6;
      for (let i = 0; i < 12; i++) sum += next();
      return sum;
    },
  };
}
