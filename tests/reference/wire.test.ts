import { expect, it } from 'vitest';
import { wireState } from '../../engine/index.ts';
import { feedFor, TIP_MM } from './cases/wire.ts';
import { processOf } from './rows/wire.ts';

it('amps rise with feed without a jump', () => {
  let last = 0;
  for (let feed = 1; feed <= 12; feed += 0.25) {
    const amps = wireState(processOf(0.9, feed), TIP_MM).current_A;
    expect(amps).toBeGreaterThan(last);
    last = amps;
  }
});

it('feed and current invert one another', () => {
  for (const amps of [60, 120, 180])
    expect(wireState(processOf(0.9, feedFor(0.9, amps)), TIP_MM).current_A).toBeCloseTo(amps, 6);
});
