import { describe, expect, it } from 'vitest';
import { canBeProved, type Result } from '../../../../scoring/index.ts';
import { TestBench } from '../../support/test-bench.ts';

/** A straight run up a short tee that asks for more leg than it lays metal for: a fault that a change of one thing could mend. */
async function undersize(bench: TestBench): Promise<Result> {
  bench.session.chooseExercise('straight-run');
  bench.session.edit({ joint: { length_mm: 30 }, size_mm: 6 });
  bench
    .wait(0.1)
    .press(0, 2)
    .follow((t_s) => ({ u_mm: 0, y_mm: 2 + 2.7 * t_s }), 9)
    .release();
  bench.session.finish();
  return bench.result();
}

describe('the first sentence', () => {
  it('is being tried by a helping hand once the verdict stands, and no longer when the next piece comes', async () => {
    const bench = new TestBench();
    const result = await undersize(bench);
    expect(result.verdict).toBe('outside');
    expect(canBeProved(result)).toBe(true);
    expect(bench.state.proof.value).toBe('trying');
    expect(bench.hands).toEqual([{ closed: false }]);
    // The page goes on meanwhile: cuts are answered.
    bench.session.cutAt(12);
    await bench.until(() => bench.state.cut.value?.y_mm === 12, 'the cut');
    bench.session.again();
    expect(bench.hands).toEqual([{ closed: true }]);
    expect(bench.state.proof.value).toBeNull();
  });
});
