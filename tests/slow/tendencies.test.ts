import { describe, expect, it } from 'vitest';
import { summarise } from '../tendencies/summary.ts';
import { TENDENCIES } from '../tendencies/table.ts';

describe('tendencies at 0.5 mm cells', () => {
  it.each(TENDENCIES)('$name ($source)', ({ quantity, more, less, margin }) => {
    expect(summarise(more, 0.5)[quantity] - summarise(less, 0.5)[quantity]).toBeGreaterThan(margin);
  });
});
