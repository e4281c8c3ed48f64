import { describe, expect, it } from 'vitest';
import { fixed, trimmed } from '../../../game/locale/numbers.ts';

describe('numbers', () => {
  it('writes a real minus and no minus nought', () => {
    expect(fixed(-1.25, 1)).toBe('−1.3');
    expect(fixed(-0.01, 1)).toBe('0.0');
  });

  it('drops trailing zeros after the point only', () => {
    expect(trimmed(20, 0)).toBe('20');
    expect(trimmed(18.5, 2)).toBe('18.5');
    expect(trimmed(6, 1)).toBe('6');
    expect(trimmed(100, 2)).toBe('100');
  });
});
