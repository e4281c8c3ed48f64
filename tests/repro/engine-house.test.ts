import { describe, expect, it } from 'vitest';
import { createHeatPiece, createSimulation, defaultOptions, defaultWeave, weaveHand } from '../../engine/index.ts';
import { sin } from '../../engine/numerics/math.ts';

const options = () => {
  const o = defaultOptions();
  return { ...o, joint: { ...o.joint, length_mm: 24 }, cell_mm: 1.2 };
};

describe('bugs of the engine that were mended and stay mended', () => {
  it('the check number left out pressure, bottoms, wet levels, coarse blocks and the last pose', () => {
    for (const name of ['pressure', 'bottom', 'wetLevel', 'wetUntil', 'coarse', 'active', 'tilePotential']) {
      const sim = createSimulation(options());
      const before = sim.hash();
      const field = sim.fields()[name] as Float64Array;
      field[0] = field[0] === 0 ? 1 : 0;
      expect(sim.hash(), name).not.toBe(before);
    }
    const [a, b] = [createSimulation(options()), createSimulation(options())];
    const pose = { ...[...weaveHand(defaultWeave())][0]!, trigger: false };
    a.step(pose);
    b.step({ ...pose, u_mm: pose.u_mm + 3 });
    expect(a.hash()).not.toBe(b.hash());
  });

  it('a material that does not melt was NaN liquid instead of 0', () => {
    const piece = createHeatPiece({
      piece: { kind: 'block', width_mm: 4, depth_mm: 4, length_mm: 4 },
      cell_mm: 1,
      material: { kind: 'constant', conductivity_WpmK: 40, specificHeat_JpkgK: 500, density_kgpm3: 7850 },
      start_C: 20,
    });
    expect(new Set(piece.field().liquid)).toEqual(new Set([0]));
  });

  it('sin was said to err by less than 1e-14 up to 1000 radians: it errs by nearly 1e-13 there, and says so', () => {
    const worst = Math.max(
      ...Array.from({ length: 20_000 }, (_, n) => n / 20).map((x) => Math.abs(sin(x) - Math.sin(x))),
    );
    expect(worst).toBeGreaterThan(1e-14);
    expect(worst).toBeLessThan(2 ** -53 * (4 + 1.5 * 1000));
  });
});
