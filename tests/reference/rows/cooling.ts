import { IMPLIED, inJoint, onPlate, START_C, STEEL, STILL_AIR, THICK_RUN, THIN_RUN } from '../cases/cooling.ts';
import { t85Thick, t85Thin } from '../formulas/cooling.ts';
import type { Row, Section } from '../run.ts';

const SOURCE = 'EN 1011-2 annex D (SSAB welding handbook 3.1, 3.2)';
const TABLE = 'EN 1011-2 table D.1 (memory)';
const thick = { source: SOURCE, unit: 's', expected: t85Thick(THICK_RUN.heat_kJpmm, START_C), digits: 3 } as const;
const thin = { source: SOURCE, unit: 's', expected: t85Thin(THIN_RUN.heat_kJpmm, 6, START_C), digits: 3 } as const;
const factor = { source: TABLE, unit: '', tolerance: 'shown beside', digits: 2, slow: true } as const;

const onThickJoint = { ...THICK_RUN, material: IMPLIED, cell_mm: 1, length_mm: 90 };
const onThinJoint = { ...THIN_RUN, material: IMPLIED, cell_mm: 1, heat_kJpmm: 1, length_mm: 190, back_mm: 90 };
const F2 = [
  ['tee', 0.45, 'tee, 0.45 to 0.67'],
  ['lap', 0.67, 'lap, not in the table'],
  ['corner', 0.9, 'corner, 0.9 to 0.67'],
] as const;

export const cooling: Section = {
  name: 'cooling',
  title: 'Cooling time t8/5',
  note: 'EN 1011-2 annex D is an engineering formula fitted to welds. Its two constants stand for one metal: λ 24.1 W/(m K), ρc 7.8 MJ/(m³ K). On that metal the model gives its times within 3 %, and its shape factors where they can be told. On the curves of EN 1993-1-2 it cannot: from 20 to 800 °C they conduct 40 W/(m K) in the mean, so a thick plate cools in little more than half the time; a thin one, where only λρc counts, takes a sixth longer without losses to air and a seventh less with those of an attempt. Neither standard is wrong about what it is for, but no model can meet both, and the curves are kept because they are measured properties. What it means here: HAZ cooling times of thick coupons are too short against the formula, and no reading of this project rests on them. A lap conducts away on three sides like a tee, and comes out like one; a thin corner is a bent plate.',
  rows: [
    {
      ...thick,
      check: "thick plate (thicker than 14.7 mm), the formula's metal",
      got: () => onPlate({ ...THICK_RUN, material: IMPLIED }, 40, 50, 2).t85_s,
      tolerance: { share: 0.1 },
    },
    {
      ...thick,
      check: 'thick plate, steel curves',
      got: () => onPlate({ ...THICK_RUN, material: STEEL }, 30, 45, 2).t85_s,
      tolerance: { share: 0.1, notHeld: [0.4, 0.48] },
      slow: true,
    },
    {
      ...thin,
      check: "thin plate (thinner than 11.4 mm), the formula's metal",
      got: () => onPlate({ ...THIN_RUN, material: IMPLIED }, 6, 70, 2).t85_s,
      tolerance: { share: 0.1 },
    },
    {
      ...thin,
      check: 'thin plate, steel curves, insulated',
      got: () => onPlate({ ...THIN_RUN, material: STEEL }, 6, 75, 2).t85_s,
      tolerance: { share: 0.1, notHeld: [0.13, 0.2] },
      slow: true,
    },
    {
      ...thin,
      check: "thin plate, steel curves, an attempt's losses to air",
      got: () => onPlate({ ...THIN_RUN, material: STEEL, losses: STILL_AIR }, 6, 75, 2).t85_s,
      tolerance: { share: 0.1, notHeld: [0.1, 0.17] },
      slow: true,
    },
    ...(['tee', 'corner'] as const).map(
      (kind): Row => ({
        ...factor,
        check: `F3 of a ${kind} of 20 mm plates, 1 kJ/mm`,
        expected: 0.67,
        got: () => inJoint(onThickJoint, kind, 20, 120).t85_s / t85Thick(onThickJoint.heat_kJpmm, START_C),
      }),
    ),
    ...F2.map(
      ([kind, expected, says]): Row => ({
        ...factor,
        check: `F2 of 6 mm plates, 1 kJ/mm: ${says}`,
        expected,
        got: () => inJoint(onThinJoint, kind, 6, 300).t85_s / t85Thin(onThinJoint.heat_kJpmm, 6, START_C),
      }),
    ),
  ],
};
