import { expect, it } from 'vitest';
import { checkTendencies } from './check.ts';
import { summarise } from './summary.ts';

// At the working cell and finer: `npm run test:slow`. The golden welds hold the bits of the working cell meanwhile.
checkTendencies(1.0);

it('a weld without a bead shows no tendency, it is refused', () => {
  expect(() => summarise({ joint: { length_mm: 30 }, weave: { length_mm: 4 }, between: [20, 24] }, 1.0)).toThrow(
    'no bead at 20 mm',
  );
});
