import { conductivity, DENSITY_GPMM3, specificHeat } from '../../../engine/index.ts';
import { buildTable, enthalpyAt, lookup, steelCurves } from '../../../engine/physics/steel.ts';
import * as formula from '../formulas/steel.ts';
import type { Section } from '../run.ts';

const EN = 'EN 1993-1-2 3.4.1 (Dlubal knowledge base 001496)';
const INTEGRATED = { source: `${EN}, integrated in closed form`, tolerance: { share: 0.001 }, digits: 5 } as const;
const table = buildTable(steelCurves(1));

/** Largest difference at every whole degree from 20 to 1200 °C. */
function apart(ours: (t: number) => number, theirs: (t: number) => number): number {
  let worst = 0;
  for (let t = 20; t <= 1200; t++) worst = Math.max(worst, Math.abs(ours(t) - theirs(t)));
  return worst;
}
const SAME = { source: EN, expected: 0, tolerance: { amount: 1e-9 }, digits: 1 } as const;

export const steel: Section = {
  name: 'steel',
  title: 'Steel',
  note: 'Curves are compared at every whole degree from 20 to 1200 °C; the table is what the kernels read (2048 even steps of enthalpy, f32).',
  rows: [
    {
      ...SAME,
      check: 'specific heat, largest difference',
      unit: 'J/(kg K)',
      got: () => apart(specificHeat, formula.specificHeat),
    },
    {
      ...SAME,
      check: 'conductivity, largest difference',
      unit: 'W/(m K)',
      got: () => apart(conductivity, formula.conductivity),
    },
    {
      check: 'density at every temperature',
      source: 'EN 1993-1-2 3.2.2',
      unit: 'kg/m³',
      expected: 7850,
      got: () => DENSITY_GPMM3 * 1e6,
      tolerance: { amount: 1e-9 },
    },
    ...[100, 400, 600, 735, 900, 1200].map((t) => ({
      ...INTEGRATED,
      check: `enthalpy from 20 to ${t} °C`,
      unit: 'kJ/kg',
      expected: formula.enthalpy(t),
      got: () => enthalpyAt(table, t),
    })),
    ...[400, 800, 1200].map((t) => ({
      ...INTEGRATED,
      check: `potential ∫λ dT from 20 to ${t} °C`,
      unit: 'W/mm',
      expected: formula.potential(t),
      got: () => lookup(table.potential, formula.enthalpy(t)),
    })),
    {
      check: 'enthalpy from 20 °C to the liquidus, 1520 °C, latent heat with it',
      source:
        'the curve of 1200 °C held, and 270 kJ/kg: between pure iron 247 (memory) and 277 of a published fillet model (authorea 473212)',
      unit: 'kJ/kg',
      expected: formula.enthalpy(1520) + 270,
      got: () => enthalpyAt(table, 1520),
      tolerance: { share: 0.001 },
    },
  ],
};
