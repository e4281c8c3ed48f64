import { describe, expect, it } from 'vitest';
import {
  createSimulation,
  DENSITY_GPMM3,
  metalLaid_mm2,
  type ProcessOptions,
  wireArea_mm2,
} from '../../engine/index.ts';
import { weld } from '../support/weld.ts';
import { openReport } from './report.ts';

const report = openReport('mass', 'Mass balance');
report.note(
  'The table of metal laid per length is arithmetic and must come out to its last printed digit (deposition 95 %; inch sizes by the square of their diameter). Below it, a whole attempt: what the wire feeds is what stands on the plates, flew off or fell.',
);
const TABLE = 'A = η A_w WFS / v and z = √(2A), evaluated by hand to the digits shown';
const process: ProcessOptions = {
  wire_mm: 0.9,
  feed_mpmin: 1,
  volts_V: 18,
  gas: 'M21-ArC-25',
  tip_mm: 0,
  nozzle_mm: 16,
};

describe('metal laid', () => {
  it.each([
    ['0.035 in', 0.889, 150, [25.0, 18.7, 15.0, 12.5], [7.07, 6.12, 5.47, 5.0]],
    ['0.035 in', 0.889, 185, [30.8, 23.1, 18.5, 15.4], [7.85, 6.8, 6.08, 5.55]],
    ['0.035 in', 0.889, 220, [36.6, 27.5, 22.0, 18.3], [8.56, 7.41, 6.63, 6.05]],
    ['0.030 in', 0.762, 235, [28.7, 21.5, 17.2, 14.4], [7.58, 6.57, 5.87, 5.36]],
    ['0.045 in', 1.143, 130, [35.8, 26.8, 21.5, 17.9], [8.46, 7.32, 6.55, 5.98]],
  ] as const)('%s wire (%d mm) at %d in/min', (name, diameter, ipm, areas, legs) => {
    const feed_mpmin = ipm * 0.0254;
    const share = (diameter / process.wire_mm) ** 2;
    for (const [i, travel] of [1.5, 2, 2.5, 3].entries()) {
      const laid = share * metalLaid_mm2({ ...process, feed_mpmin }, travel);
      // Half a unit of the last digit, and what binary fractions add.
      expect(Math.abs(laid - areas[i]!)).toBeLessThanOrEqual(0.0501);
      expect(Math.abs(Math.sqrt(2 * laid) - legs[i]!)).toBeLessThanOrEqual(0.00501);
    }
    report.check({
      check: `${name} at ${ipm} in/min, 2 mm/s: metal laid`,
      source: TABLE,
      unit: 'mm²',
      expected: areas[1],
      got: share * metalLaid_mm2({ ...process, feed_mpmin }, 2),
      tolerance: { amount: 0.0501 },
      digits: 3,
    });
  });
});

describe('a whole attempt', () => {
  it.each(['tee', 'lap'] as const)('%s: fed = laid + spatter + dripped', (kind) => {
    let burning = 0;
    const sim = weld({ joint: { kind, length_mm: 24 }, weave: { length_mm: 12 } }, (t) => {
      if (t.arcOn) burning++;
    });
    const a = sim.accounts();
    const { process: p } = sim.options;
    expect(burning).toBeGreaterThan(300);
    report.check({
      check: `${kind}: wire fed, g, against feed, area, density and arc time`,
      source: 'arithmetic',
      unit: 'g',
      expected: ((wireArea_mm2(p) * p.feed_mpmin * 1000) / 60) * DENSITY_GPMM3 * a.arcTime_s,
      got: a.fed_g,
      tolerance: { share: 1e-9 },
      digits: 3,
    });
    report.check({
      check: `${kind}: wire not accounted for, share of what was fed`,
      source: 'conservation of mass',
      unit: '',
      expected: 0,
      got: a.massError,
      tolerance: { amount: 1e-9 },
      digits: 1,
    });
    report.check({
      check: `${kind}: energy not accounted for, share of what went in`,
      source: 'conservation of energy',
      unit: '',
      expected: 0,
      // Rounded to a tenth of what is asked for, so that the table stays put.
      got: Math.round(a.energyError * 1e4) / 1e4,
      tolerance: { amount: 1e-3 },
      digits: 1,
    });
  });

  it('nothing moves while the torch is off', () => {
    const sim = createSimulation({
      joint: { ...weldless },
      process,
      cell_mm: 0.75,
    });
    for (let n = 0; n < 20; n++)
      sim.step({ u_mm: 0, y_mm: 10, tipToWork_mm: 12, workAngle_deg: 45, travelAngle_deg: 0, trigger: false });
    expect(sim.accounts().deposited_g).toBe(0);
    expect(sim.accounts().fed_g).toBe(0);
  });
});

const weldless = {
  kind: 'tee',
  plateA_mm: 6,
  plateB_mm: 6,
  plateWidth_mm: 75,
  length_mm: 20,
  gap_mm: 0,
  startTemp_C: 20,
  ambient_C: 20,
  sink_WpmmK: 0,
  tabs: false,
} as const;

report.readme();
