import { describe, expect, it } from 'vitest';
import { firstCell, type HeatKernel, PROGRAM_WORDS, planLayout, ROD } from '../../engine/kernel/layout.ts';
import { createReferenceKernel } from '../../engine/kernel/reference.ts';
import { createSimdKernel } from '../../engine/kernel/simd.ts';
import { TABLE_STEPS } from '../../engine/physics/steel.ts';
import { chanceOf } from '../support/chance.ts';

const STEP_JPG = 1.5625;
const CELLS = 61;
/** Window of slices, so that vectors go in pairs and one is over. */
const FROM = 4;
const TO = 49;

/** Enthalpies within the table, on its points, below its beginning and beyond its end, J/g. */
function enthalpies(random: () => number): number[] {
  const end = TABLE_STEPS * STEP_JPG;
  return Array.from({ length: CELLS }, (_, j) => {
    const within = random() * end;
    return [within, Math.floor(random() * TABLE_STEPS) * STEP_JPG, -within, end + within, end - STEP_JPG, 0][j % 6]!;
  });
}

describe('the table of potentials at four enthalpies', () => {
  it('is read alike by both twins, also outside it, and nothing outside the window is touched', () => {
    const random = chanceOf(20_261_127);
    const layout = planLayout(1, CELLS, 1, 0, 0);
    const table = Float32Array.from({ length: 2 * TABLE_STEPS }, () => (random() - 0.3) * 1e4);
    const heat = enthalpies(random);
    const run = (kernel: HeatKernel) => {
      const field = (at: number) => new Float32Array(kernel.memory, at, layout.stride);
      const here = firstCell(layout, 0);
      new Int32Array(kernel.memory, layout.program, PROGRAM_WORDS)[0] = ROD.FULL;
      new Float32Array(kernel.memory, layout.table, table.length).set(table);
      field(layout.enthalpy).set(heat, here);
      field(layout.potential).fill(7);
      kernel.potential(FROM, TO);
      return [field(layout.potential), field(layout.peak)].map((f) => [...f.subarray(here, here + TO)]);
    };
    const simd = createSimdKernel(layout);
    expect(simd).not.toBeNull();
    const [potential, peak] = run(simd!);
    expect([potential, peak]).toEqual(run(createReferenceKernel(layout)));
    expect(potential!.slice(0, FROM)).toEqual(Array(FROM).fill(7));
    // Not one number over and over.
    expect(new Set(potential!.slice(FROM)).size).toBeGreaterThan(30);
  });
});
