import { beforeAll, describe, expect, it } from 'vitest';
import { TestBench } from '../../support/test-bench.ts';

describe('a second attempt beside the first', () => {
  let bench: TestBench;
  let ids: string[];

  beforeAll(async () => {
    bench = await new TestBench().settle();
    bench.session.chooseExercise('straight-run');
    bench.wait(0.1);
    for (const speed of [2, 3]) {
      bench
        .press(0, 45)
        .follow((t_s) => ({ u_mm: 0, y_mm: 45 + speed * t_s }), 4)
        .release();
      bench.session.finish();
      await bench.result();
      bench.session.again();
      bench.wait(0.1);
    }
    ids = bench.state.shelf.value.map((entry) => entry.id);
    await bench.session.opener.kept(ids[0]);
    await bench.result();
  }, 60_000);

  it('is welded on a bench of its own and cut at the same height', async () => {
    await bench.session.opener.beside(ids[1]);
    expect(bench.state.other.value?.id).toBe(ids[1]);
    expect(bench.state.otherBusy.value?.what).toBe('welding again');
    await bench.until(() => bench.state.otherCut.value !== null, 'the other cut');
    expect(bench.state.otherBusy.value).toBeNull();
    bench.session.cutAt(48);
    await bench.until(
      () => bench.state.otherCut.value?.y_mm === 48 && bench.state.cut.value?.y_mm === 48,
      'both cuts at 48 mm',
    );
    const [own, other] = [bench.state.cut.value!.station!, bench.state.otherCut.value!.station!];
    // Newest first: the other one climbed slower and laid more metal.
    expect(other.legA_mm).toBeGreaterThan(own.legA_mm);
    expect(bench.state.readingsHidden.value).toBe(false);
  });

  it('goes when it is taken away, and its bench with it', async () => {
    const count = bench.benches.length;
    await bench.session.opener.beside(null);
    expect(bench.state.other.value).toBeNull();
    expect(bench.state.otherCut.value).toBeNull();
    expect(bench.benches[count - 1].closed).toBe(true);
    expect(bench.benches[0].closed).toBe(false);
  });

  it('goes when another kind of joint comes on the bench', async () => {
    await bench.session.opener.beside(ids[1]);
    bench.session.chooseExercise('lap-5');
    expect(bench.state.other.value).toBeNull();
  });
});
