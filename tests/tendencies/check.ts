/** Both groups of tendencies as tests at one cell size; `npm test` takes one in twelve of the short ones. */
import { describe, expect, it } from 'vitest';
import { share, WHOLE } from '../support/share.ts';
import { summarise } from './summary.ts';
import { CALIBRATED, PREDICTED, type Tendency } from './table.ts';

function checkOne({ quantity, more, less, margin, notHeldAt }: Tendency, cell_mm: number): void {
  const difference = summarise(more, cell_mm)[quantity] - summarise(less, cell_mm)[quantity];
  if (notHeldAt?.cell_mm !== cell_mm) {
    expect(difference).toBeGreaterThan(margin);
    return;
  }
  // One that is held again has to lose its mark.
  const [least, most] = notHeldAt.between;
  expect(most).toBeLessThanOrEqual(margin);
  expect(difference).toBeGreaterThan(least);
  expect(difference).toBeLessThan(most);
}

export function checkTendencies(cell_mm: number): void {
  // A long run takes as long as all the others of the share.
  const short = PREDICTED.filter(
    ({ more, less }) => WHOLE || [more, less].every((c) => (c.joint?.length_mm ?? 0) <= 80),
  );
  const predicted = share(short, Math.ceil(PREDICTED.length / 12));
  const calibrated = share(CALIBRATED, 1);
  describe(`${predicted.length} of ${PREDICTED.length} tendencies that nothing was set to show, at ${cell_mm} mm cells`, () => {
    it.each(predicted)('$name ($source)', (t) => checkOne(t, cell_mm));
  });
  describe(`${calibrated.length} of ${CALIBRATED.length} that the calibration was set by, at ${cell_mm} mm cells`, () => {
    it.each(calibrated)('$name ($source)', (t) => checkOne(t, cell_mm));
  });
}
