import { describe, expect, it } from 'vitest';
import { type Flag, flagColumns } from '../../../game/panels/flags.ts';

const flag = (number: number, y_mm: number, side: Flag['side']): Flag => ({ number, y_mm, t_s: null, side, text: '' });

describe('flags on the joint', () => {
  it('stand farther out where they would cover another on their side', () => {
    const flags = [flag(1, 64, null), flag(2, 62, null), flag(3, 64, 'A'), flag(4, 63, 'B'), flag(5, 30, 'A')];
    expect(flagColumns(flags, 4)).toEqual([0, 1, 2, 0, 0]);
  });

  it('come back in as soon as there is room', () => {
    const flags = [flag(1, 10, 'A'), flag(2, 13, 'A'), flag(3, 16, 'A')];
    expect(flagColumns(flags, 4)).toEqual([0, 1, 0]);
    expect(flagColumns(flags, 2)).toEqual([0, 0, 0]);
  });
});
