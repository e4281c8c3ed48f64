/** Every attack whole. What the table of tests/attacks/README.md says is what comes out. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { ENGINE_VERSION } from '../../engine/index.ts';
import { SCORING_VERSION } from '../../scoring/version.ts';
import { carriedOut, type Outcome } from '../attacks/attack.ts';
import { attacks } from '../attacks/attacks.ts';
import { README, withTable } from '../attacks/table.ts';

const outcomes: Outcome[] = [];

describe('an attack by', () => {
  it.each(attacks.map((a) => [a.name, a] as const))(
    '%s, whole, finds nothing that does not hold',
    async (_name, attack) => {
      const outcome = await carriedOut(attack, attack.whole);
      outcomes.push(outcome);
      expect(outcome.faults).toEqual([]);
    },
  );

  it('all classes: the table is current', () => {
    const text = readFileSync(README, 'utf8');
    expect(withTable(text, outcomes, ENGINE_VERSION, SCORING_VERSION)).toBe(text);
  });
});
