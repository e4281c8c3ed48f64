/** Several readers of the same macros, at the desk. */
import { describe, expect, it } from 'vitest';
import { couponOf, plain } from '../../../scoring/macro/marked.ts';
import { chosen, TestBench } from '../../support/test-bench.ts';

describe('readers of macros', () => {
  it('are compared from the marks they saved, and a table that is none leaves what was there', async () => {
    const bench = new TestBench();
    const { readers } = bench.session.desk;
    const files = ['one', 'two', 'three'].flatMap((name, i) =>
      ['IC', 'WH'].map((reader, j) => {
        const coupon = couponOf({ ...plain, legA_mm: 5 + i + 0.1 * j });
        const content = { ...coupon, reader, picture: { ...coupon.picture, name } };
        return chosen(`${name}-${reader}.coupon.json`, JSON.stringify(content));
      }),
    );
    await readers.open(files);
    expect(readers.view.value!.table).toEqual({
      macros: ['one, 30 mm', 'two, 30 mm', 'three, 30 mm'],
      readers: ['IC', 'WH'],
      trials: 1,
    });
    const leg = readers.view.value!.agreement.find((a) => a.name === 'leg, right or back')!;
    // Two readers 0.1 apart: a spread of 0.1/√2; macros a millimetre apart: 1.
    expect(leg.reproducibility).toBeCloseTo(0.1 / Math.SQRT2, 2);
    expect(leg.macros).toBeCloseTo(1, 2);
    const before = readers.view.value;
    readers.text('macro,reader\n1,a');
    expect(bench.state.problem.value).toMatchObject({ code: 'input' });
    await readers.open(files.slice(0, 3));
    expect(readers.view.value).toBe(before);
    readers.saveBlank();
    expect(bench.saved[0]!.name).toBe('readings.csv');
  });
});
