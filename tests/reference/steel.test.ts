import { describe, expect, it } from 'vitest';
import { conductivity, DENSITY_GPMM3, specificHeat } from '../../engine/index.ts';
import { buildTable, enthalpyAt, lookup, steelCurves, temperatureAt } from '../../engine/physics/steel.ts';
import * as formula from './formulas/steel.ts';
import { openReport } from './report.ts';

const report = openReport('steel', 'Steel');
const EN = 'EN 1993-1-2 3.4.1 (Dlubal knowledge base 001496)';
report.note(
  'Curves are compared at every whole degree from 20 to 1200 °C; the table is what the kernels read (2048 even steps of enthalpy, f32).',
);

describe('curves of EN 1993-1-2', () => {
  it('are the standard to the last bit that counts', () => {
    let worstC = 0;
    let worstL = 0;
    for (let t = 20; t <= 1200; t++) {
      worstC = Math.max(worstC, Math.abs(specificHeat(t) - formula.specificHeat(t)));
      worstL = Math.max(worstL, Math.abs(conductivity(t) - formula.conductivity(t)));
    }
    const common = { source: EN, expected: 0, tolerance: { amount: 1e-9 } as const, digits: 1 };
    report.check({ ...common, check: 'specific heat, largest difference', unit: 'J/(kg K)', got: worstC });
    report.check({ ...common, check: 'conductivity, largest difference', unit: 'W/(m K)', got: worstL });
  });

  // Printed in a published worked table of the same curves.
  it.each([
    [20, 439.8, 53.33],
    [400, 605.9, 40.68],
    [600, 760.2, 34.02],
    [735, 5000, 29.52],
    [750, 1482.9, 29.02],
    [800, 803.3, 27.3],
    [1200, 650, 27.3],
  ])('at %d °C', (t, c, l) => {
    expect(Math.abs(specificHeat(t) - c)).toBeLessThan(0.06);
    expect(Math.abs(conductivity(t) - l)).toBeLessThan(0.006);
  });

  it('stay finite and positive outside the standard', () => {
    for (const t of [-200, 19, 1201, 1459, 1521, 5000]) {
      expect(specificHeat(t)).toBeGreaterThan(400);
      expect(conductivity(t)).toBeGreaterThan(27);
    }
  });

  it('have the density of clause 3.2.2', () => {
    report.check({
      check: 'density at every temperature',
      source: 'EN 1993-1-2 3.2.2',
      unit: 'kg/m³',
      expected: 7850,
      got: DENSITY_GPMM3 * 1e6,
      tolerance: { amount: 1e-9 },
    });
  });
});

describe('table of enthalpy', () => {
  const table = buildTable(steelCurves(1));
  it.each([100, 400, 600, 735, 900, 1200])('integral of c to %d °C', (t) => {
    report.check({
      check: `enthalpy from 20 to ${t} °C`,
      source: `${EN}, integrated in closed form`,
      unit: 'kJ/kg',
      expected: formula.enthalpy(t),
      got: enthalpyAt(table, t),
      tolerance: { share: 0.001 },
      digits: 5,
    });
  });

  it.each([400, 800, 1200])('integral of λ to %d °C', (t) => {
    report.check({
      check: `potential ∫λ dT from 20 to ${t} °C`,
      source: `${EN}, integrated in closed form`,
      unit: 'W/mm',
      expected: formula.potential(t),
      got: lookup(table.potential, formula.enthalpy(t)),
      tolerance: { share: 0.001 },
      digits: 5,
    });
  });

  it('holds the latent heat between solidus and liquidus', () => {
    report.check({
      check: 'enthalpy from 20 °C to the liquidus, 1520 °C, latent heat with it',
      source:
        'the curve of 1200 °C held, and 270 kJ/kg: between pure iron 247 (memory) and 277 of a published fillet model (authorea 473212)',
      unit: 'kJ/kg',
      expected: formula.enthalpy(1520) + 270,
      got: enthalpyAt(table, 1520),
      tolerance: { share: 0.001 },
    });
  });

  it('turns back into temperature', () => {
    for (let t = 20; t <= 2800; t += 7)
      expect(Math.abs(temperatureAt(table, enthalpyAt(table, t)) - t)).toBeLessThan(0.01);
  });
});

report.readme();
