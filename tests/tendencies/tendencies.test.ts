import { describe, expect, it } from 'vitest';
import { summarise } from './summary.ts';
import { TENDENCIES } from './table.ts';

describe.each([0.75, 1.0])('tendencies at %f mm cells', (cell_mm) => {
  it.each(TENDENCIES)('$name ($source)', ({ quantity, more, less, margin }) => {
    const high = summarise(more, cell_mm)[quantity];
    const low = summarise(less, cell_mm)[quantity];
    expect(high - low).toBeGreaterThan(margin);
  });
});
