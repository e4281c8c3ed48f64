/** A quick share of every attack; the whole of it is in the slow suite, and its table in README.md. */
import { describe, expect, it } from 'vitest';
import { carriedOut } from './attack.ts';
import { attacks } from './attacks.ts';

describe('an attack by', () => {
  it.each(attacks.map((a) => [a.name, a] as const))('%s finds nothing that does not hold', async (_name, attack) => {
    const outcome = await carriedOut(attack, attack.share);
    expect(outcome.inputs).toBeGreaterThan(0);
    expect(outcome.faults).toEqual([]);
  });
});
