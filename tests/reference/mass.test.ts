import { expect, it } from 'vitest';
import { createSimulation } from '../../engine/index.ts';
import { optionsOf } from '../support/weld.ts';
import { BY_HAND, laidBy } from './rows/mass.ts';

it.each(BY_HAND)(
  'metal laid and leg worked out by hand: %s wire (%d mm) at %d in/min',
  (_name, diameter, ipm, areas, legs) => {
    for (const [i, travel] of [1.5, 2, 2.5, 3].entries()) {
      const laid = laidBy(diameter, ipm, travel);
      // Half a unit of the last digit, and what binary fractions add.
      expect(Math.abs(laid - areas[i]!)).toBeLessThanOrEqual(0.0501);
      expect(Math.abs(Math.sqrt(2 * laid) - legs[i]!)).toBeLessThanOrEqual(0.00501);
    }
  },
);

it('nothing moves while the torch is off', () => {
  const sim = createSimulation(optionsOf({ joint: { length_mm: 20 } }));
  for (let n = 0; n < 20; n++)
    sim.step({ u_mm: 0, y_mm: 10, tipToWork_mm: 12, workAngle_deg: 45, travelAngle_deg: 0, trigger: false });
  expect(sim.accounts().deposited_g).toBe(0);
  expect(sim.accounts().fed_g).toBe(0);
});
