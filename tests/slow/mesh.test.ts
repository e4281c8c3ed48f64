import { describe, expect, it } from 'vitest';
import { plusMinus } from '../../scoring/index.ts';
import { meshStudy, moves } from '../studies/mesh/mesh.ts';

/** Issue of trust: the working cell's readings stay within their plus-minus of the finest mesh, case by case (rms over cases). */
describe('mesh study', () => {
  const rows = meshStudy();
  it.each(moves(rows, 0.75))('$measure: 0.75 mm against 0.5 mm', ({ measure, worst, rms }) => {
    const limit = measure.startsWith('leg')
      ? plusMinus.leg.value
      : measure === 'convexity'
        ? plusMinus.convexity.value
        : measure === 'root fusion'
          ? plusMinus['root fusion'].value
          : plusMinus.fusion.value;
    expect(rms).toBeLessThan(limit);
    expect(worst).toBeLessThan(2 * limit);
  });
});
