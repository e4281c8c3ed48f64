/** A bead on one flat plate: what must come out whatever the puddle does, by geometry and by balance. */
import { describe, expect, it } from 'vitest';
import { buildJoint } from '../../engine/grid/joint.ts';
import { PART } from '../../engine/grid/rods.ts';
import { defaultJoint, metalLaid_mm2 } from '../../engine/index.ts';
import { optionsOf, weld } from '../support/weld.ts';

const joint = { ...defaultJoint(), kind: 'plate' as const, plateA_mm: 8, length_mm: 60 };
const straight = { pattern: 'straight' as const, start_mm: 4, length_mm: 52, travel_mmps: 5, shelf_s: 0 };

describe('the piece', () => {
  it.each([
    [1, 8],
    [0.75, 8],
    [0.75, 5.3],
    [0.5, 12],
  ])(
    'of cells of %d mm has the section of a plate of %d mm within 2 percent, flat, and its outline in the air below',
    (cell, thick) => {
      const { rods, fill, plate, nu } = buildJoint({ ...joint, plateA_mm: thick }, cell);
      let area = 0;
      let outline = 0;
      for (let r = 0; r < rods.count; r++) {
        if (rods.part[r] !== PART.WELD) area += rods.area_mm2[r]! * fill[r]!;
        outline += rods.exposed_mm[r]!;
      }
      expect(Math.abs(area / (thick * joint.plateWidth_mm) - 1)).toBeLessThan(0.02);
      expect([...plate]).toEqual(new Array(nu).fill(0));
      // Back of the whole plate, and its face outside the height field.
      const field = (nu * cell) / Math.SQRT2;
      expect(Math.abs(outline - (2 * joint.plateWidth_mm - field))).toBeLessThan(0.02 * outline);
    },
  );
});

describe('a bead', () => {
  const sim = weld({ joint, weave: straight, cell_mm: 1 });
  const crown = (y: number): number => Math.max(...sim.section(y).w_mm);

  it('has the section of the metal laid (mass balance), and closes the accounts', () => {
    const { process } = optionsOf({});
    const du = 1 / Math.SQRT2;
    let sum = 0;
    for (let y = 30; y < 46; y++) sum += sim.section(y).w_mm.reduce((all, w) => all + w * du, 0) / 16;
    expect(Math.abs(sum / metalLaid_mm2(process, straight.travel_mmps) - 1)).toBeLessThan(0.03);
    expect(sim.accounts().massError).toBeLessThan(1e-9);
    expect(sim.accounts().energyError).toBeLessThan(1e-4);
  });

  it('is even along its length and its own mirror image, for the hand is', () => {
    expect(Math.abs(crown(44) - crown(32))).toBeLessThan(0.1);
    const { w_mm } = sim.section(38);
    // Sums over coarse tiles round differently on the two sides.
    for (const [c, w] of w_mm.entries()) expect(w_mm[w_mm.length - 1 - c]).toBeCloseTo(w, 4);
  });

  it('lies lower where the arc has more volts, and where travel is faster', () => {
    const other = (change: object, volts_V = 18): ReturnType<typeof weld> =>
      weld({ joint, process: { volts_V }, weave: { ...straight, ...change }, cell_mm: 1 });
    const height = (s: ReturnType<typeof weld>): number => Math.max(...s.section(40).w_mm);
    expect(height(other({ travel_mmps: 9 }))).toBeLessThan(crown(40) - 0.1);
    expect(height(other({}, 21))).toBeLessThan(crown(40) - 0.03);
  });

  it('asks nothing of plate B or of a gap', () => {
    const section = (s: ReturnType<typeof weld>): number[] => [...s.section(12).w_mm];
    const plain = weld({ joint: { ...joint, length_mm: 30 }, weave: { ...straight, length_mm: 8 }, cell_mm: 1 });
    const odd = weld({
      joint: { ...joint, length_mm: 30, plateB_mm: 3, gap_mm: 2 },
      weave: { ...straight, length_mm: 8 },
      cell_mm: 1,
    });
    expect(section(odd)).toEqual(section(plain));
  });
});
