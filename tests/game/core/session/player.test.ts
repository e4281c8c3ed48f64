import { beforeAll, describe, expect, it } from 'vitest';
import { weaveAt } from '../../../../engine/index.ts';
import { exerciseNamed } from '../../../../scoring/index.ts';
import { TestBench } from '../../support/test-bench.ts';

const weave = { ...exerciseNamed('tee-inverted-v')!.demonstration, shelf_s: 0.3 };

describe('a replay', () => {
  let bench: TestBench;
  let ids: string[];

  beforeAll(async () => {
    bench = await new TestBench({ length_mm: 40 }).settle();
    for (const faster of [1, 1.5]) {
      bench
        .press(0, 12)
        .follow((t_s) => {
          const { u_mm, ahead_mm } = weaveAt(weave, (t_s * weave.cyclesPerSecond) % 1);
          return { u_mm, y_mm: 12 + faster * 2 * t_s + ahead_mm };
        }, 6)
        .release();
      bench.session.finish();
      await bench.result();
      bench.session.again();
      bench.wait(0.1);
    }
    ids = bench.state.shelf.value.map((entry) => entry.id);
    await bench.session.opener.kept(ids[0]!);
    await bench.result();
  }, 60_000);

  it.each([0.25, 1, 4])('goes %d times as fast as it was welded', async (pace) => {
    bench.state.pace.value = pace;
    bench.session.seek(0);
    bench.state.playing.value = true;
    bench.wait(1);
    bench.state.playing.value = false;
    expect(bench.state.shownTime.value).toBeCloseTo(pace, 1);
    await bench.settle();
  });

  it('steps by weave cycle, on and back, to the moments the cycles begin with', () => {
    const crossings = bench.state.result.value!.motion.crossings;
    const begins = crossings.filter((c, i) => c.cycle !== crossings[i - 1]?.cycle).map((c) => c.t_s);
    expect(begins.length).toBeGreaterThan(3);
    bench.session.seek(0);
    const seen = begins.map(() => {
      bench.player.step(1);
      return bench.state.shownTime.value;
    });
    expect(seen).toEqual(begins);
    bench.player.step(-1);
    expect(bench.state.shownTime.value).toBe(begins.at(-2));
    for (let n = 0; n < begins.length + 2; n++) bench.player.step(-1);
    expect(bench.state.shownTime.value).toBe(0);
  });

  it('takes the attempt beside it along, so that both cuts grow in step', async () => {
    bench.session.seek(null);
    await bench.session.opener.beside(ids[1]!);
    await bench.until(() => bench.state.otherCut.value !== null, 'the other cut');
    bench.session.cutAt(18);
    await bench.until(() => bench.state.otherCut.value?.y_mm === 18, 'both cuts');
    const whole = bench.state.otherCut.value!.station;
    expect(whole).not.toBeNull();
    bench.session.seek(0.2);
    await bench.until(() => bench.state.otherCut.value!.station === null, 'the other cut before its metal came there');
    expect(bench.state.cut.value!.station).toBeNull();
    bench.session.seek(null);
    await bench.until(() => bench.state.otherCut.value!.station !== null, 'the finished cut again');
    expect(bench.state.otherCut.value!.station!.legA_mm).toBeCloseTo(whole!.legA_mm!, 6);
  });
});
