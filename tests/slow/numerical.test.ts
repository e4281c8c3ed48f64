/**
 * A numerical constant may not matter: at either end of its range the means read off a settled weld move by less than half of the reading's
 * plus-minus at 0.75 mm cells. One that moves them more is a free parameter and has to stand with those.
 */
import { describe, expect, it } from 'vitest';
import { type Calibration, NUMERICAL, type NumericalName } from '../../engine/index.ts';
import { readSection } from '../../scoring/index.ts';
import { plusMinusAt } from '../../scoring/measures/precision.ts';
import { weld } from '../support/weld.ts';

const CELL_MM = 0.75;
/** Cuts over two weave cycles of a settled tee. */
const CUTS_MM = [16, 17, 18, 19, 20, 21];

interface Means {
  root_mm: number;
  leg_mm: number;
  convexity_mm: number;
}

function means(calibration: Partial<Calibration>): Means {
  const sim = weld({ joint: { length_mm: 32 }, cell_mm: CELL_MM, calibration });
  const sum: Means = { root_mm: 0, leg_mm: 0, convexity_mm: 0 };
  for (const y of CUTS_MM) {
    const { station } = readSection(sim.section(y))!;
    sum.root_mm += station.rootFusion_mm / CUTS_MM.length;
    sum.leg_mm += (station.legA_mm + station.legB_mm) / (2 * CUTS_MM.length);
    sum.convexity_mm += station.convexity_mm / CUTS_MM.length;
  }
  return sum;
}

describe('a numerical constant moves no settled reading by half its plus-minus', () => {
  const asIs = means({});
  const half = {
    root_mm: plusMinusAt('root fusion', CELL_MM) / 2,
    leg_mm: plusMinusAt('leg', CELL_MM) / 2,
    convexity_mm: plusMinusAt('convexity', CELL_MM) / 2,
  };

  it.each(Object.keys(NUMERICAL) as NumericalName[])(
    '%s',
    (name) => {
      for (const value of NUMERICAL[name].range) {
        const there = means({ [name]: value });
        for (const key of Object.keys(half) as (keyof Means)[])
          expect(Math.abs(there[key] - asIs[key]), `${key} at ${value}`).toBeLessThan(half[key]);
      }
    },
    120_000,
  );

  it('and is looked at between the ends it says, not beside them', () => {
    for (const { value, range } of Object.values(NUMERICAL)) {
      expect(value).toBeGreaterThanOrEqual(range[0]);
      expect(value).toBeLessThanOrEqual(range[1]);
      expect(range[1]).toBeGreaterThan(range[0]);
    }
  });
});
