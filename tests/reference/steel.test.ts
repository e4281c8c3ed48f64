import { describe, expect, it } from 'vitest';
import { conductivity, specificHeat } from '../../engine/index.ts';
import { buildTable, enthalpyAt, steelCurves, temperatureAt } from '../../engine/physics/steel.ts';

describe('curves of EN 1993-1-2', () => {
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
});

it('the table of enthalpy turns back into temperature', () => {
  const table = buildTable(steelCurves(1));
  for (let t = 20; t <= 2800; t += 7)
    expect(Math.abs(temperatureAt(table, enthalpyAt(table, t)) - t)).toBeLessThan(0.01);
});
