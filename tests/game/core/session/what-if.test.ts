import { beforeAll, describe, expect, it } from 'vitest';
import { inSteps, knobsOf, scoreAttempt } from '../../../../scoring/index.ts';
import { TestBench } from '../../support/test-bench.ts';

describe('what if', () => {
  let bench: TestBench;

  beforeAll(async () => {
    bench = new TestBench();
    bench.session.chooseExercise('straight-run');
    bench.session.edit({ joint: { length_mm: 30 } });
    bench
      .wait(0.1)
      .press(0, 4)
      .follow((t_s) => ({ u_mm: 0, y_mm: 4 + 3 * Math.max(0, t_s - 1) }), 7)
      .release();
    bench.session.finish();
    await bench.result();
  });

  it('offers what can be changed on this hand: nothing of a weave on a straight run, nothing a mouse does not measure', () => {
    expect(knobsOf(bench.state.finished.value!.recording as never)).toEqual([
      'travel_mmps',
      'volts_V',
      'feed_mpmin',
      'centre_mm',
    ]);
  });

  it('welds the same hand with one thing changed and lays it beside; nothing of it is kept', async () => {
    const before = bench.state.shelf.value.length;
    const own = bench.state.result.value!;
    bench.session.whatIf(inSteps('feed_mpmin', 4));
    // A first look comes before the whole piece, and gives way to it.
    const looks: boolean[] = [];
    const stop = bench.state.otherStretch.subscribe((only) => looks.push(only));
    bench.wait(5);
    await bench.until(() => bench.state.otherResult.value !== null, 'what came of it');
    expect(bench.state.whatIf.value).toEqual({ what: 'feed_mpmin', by: 1 });
    const other = bench.state.otherResult.value!;
    // What is asked goes along with the setting: the changed one is judged by the same limits.
    expect(other.reasons.map((r) => r.code)).toEqual(own.reasons.map((r) => r.code));
    expect(other.process.laid_mm2!).toBeGreaterThan(own.process.laid_mm2! * 1.15);
    await bench.until(() => bench.state.otherCut.value !== null && !bench.state.otherStretch.value, 'the whole');
    stop();
    expect(looks).toEqual([false, true, false]);
    expect(bench.state.result.value).toBe(own);
    expect(bench.state.shelf.value.length).toBe(before);
    expect(own).toEqual(JSON.parse(JSON.stringify(scoreAttempt(bench.state.finished.value!.recording as never))));
  });

  it('goes away with the piece, or when asked', async () => {
    const none = () => [bench.state.whatIf.value, bench.state.other.value, bench.state.otherResult.value];
    bench.session.whatIf(null);
    expect(none()).toEqual([null, null, null]);
    bench.session.whatIf(inSteps('volts_V', -1));
    expect(bench.state.whatIf.value).not.toBeNull();
    const { id } = bench.state.finished.value!;
    bench.session.again();
    expect(none()).toEqual([null, null, null]);
    await bench.session.opener.kept(id);
    await bench.result();
    expect([bench.state.whatIf.value, bench.state.other.value, bench.state.otherResult.value]).toEqual([
      null,
      null,
      null,
    ]);
  });

  it('says so where the change leaves what the machine can do', () => {
    bench.session.whatIf({ what: 'volts_V', by: 40 });
    expect(bench.state.problem.value).toEqual({ code: 'no-such-change', change: { what: 'volts_V', by: 40 } });
    expect(bench.state.other.value).toBeNull();
  });
});
