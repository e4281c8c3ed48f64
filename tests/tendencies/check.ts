/** Both groups of tendencies as tests at one cell size. */
import { describe, expect, it } from 'vitest';
import { summarise } from './summary.ts';
import { CALIBRATED, PREDICTED, type Tendency } from './table.ts';

function checkOne({ quantity, more, less, margin }: Tendency, cell_mm: number): void {
  expect(summarise(more, cell_mm)[quantity] - summarise(less, cell_mm)[quantity]).toBeGreaterThan(margin);
}

export function checkTendencies(cell_mm: number): void {
  describe(`${PREDICTED.length} tendencies that nothing was set to show, at ${cell_mm} mm cells`, () => {
    it.each(PREDICTED)('$name ($source)', (t) => checkOne(t, cell_mm));
  });
  describe(`${CALIBRATED.length} that the calibration was set by, at ${cell_mm} mm cells`, () => {
    it.each(CALIBRATED)('$name ($source)', (t) => checkOne(t, cell_mm));
  });
}
