import { describe, expect, it } from 'vitest';
import { differencesOf, judgedOf, trendOf } from '../../../../game/core/practice/judge.ts';
import type { OwnJudgement } from '../../../../game/core/practice/record.ts';
import { TestBench } from '../../support/test-bench.ts';

/** A straight run on a short tee, as a hand with a mouse welds it. */
async function welded(bench: TestBench): Promise<void> {
  bench.session.chooseExercise('straight-run');
  bench.session.edit({ joint: { length_mm: 20 }, size_mm: 5 });
  bench
    .wait(0.1)
    .press(0, 2)
    .follow((t_s) => ({ u_mm: 0, y_mm: 1 + 2.7 * t_s }), 7)
    .release();
  bench.session.finish();
  await bench.finished();
}

const own = (made_ms: number, said: OwnJudgement['said'], leg: OwnJudgement['leg'] = null): OwnJudgement => ({
  kind: 'judgement',
  id: `judgement:${made_ms}`,
  attempt: String(made_ms),
  made_ms,
  trainee: null,
  exercise: 'straight-run',
  said,
  leg,
});

describe('judging oneself first', () => {
  it('holds the verdict back until the trainee has said what is outside, shows both and keeps them', async () => {
    const bench = new TestBench({ preferences: { judgeFirst: 'always' } });
    await welded(bench);
    await bench.until(() => bench.state.held.value !== null, 'the question');
    expect(bench.state.result.value).toBeNull();
    expect(bench.state.opened.value).toBeNull();
    expect(bench.state.readingsHidden.value).toBe(true);
    expect(bench.state.announcement.value).toEqual({ code: 'say-first', why: 'judge' });
    const { lines } = bench.state.held.value!.result;

    bench.session.practice.judge([lines[0]!.measure], 4.5);
    await bench.until(() => bench.state.practice.value.length === 1, 'the judgement on the shelf');
    expect(bench.state.result.value?.lines).toEqual(lines);
    expect(bench.state.held.value).toBeNull();
    const [kept] = bench.state.practice.value;
    expect(kept).toEqual(bench.state.ownJudgement.value);
    expect(kept).toMatchObject({ kind: 'judgement', attempt: bench.state.finished.value!.id });
    const said = new Map((kept as OwnJudgement).said.map((s) => [s.measure, s]));
    expect([...said.keys()].sort()).toEqual([...new Set(lines.map((l) => l.measure))].sort());
    expect([...said.values()].filter((s) => s.said === 'outside').map((s) => s.measure)).toEqual([lines[0]!.measure]);
    for (const { measure, was } of said.values())
      if (was === 'outside') expect(lines.some((l) => l.measure === measure && l.verdict === 'outside')).toBe(true);
      else expect(lines.some((l) => l.measure === measure && l.verdict === 'outside')).toBe(false);

    // Goes out with the logbook, comes in with it elsewhere, and goes with its attempt.
    await bench.session.keeper.saveLogbook();
    const other = new TestBench();
    await other.session.opener.logbook(other.file(bench.saved.at(-1)!.content, 'logbook.json'));
    expect(other.state.practice.value).toEqual([kept]);
    // Opened again it is not asked again.
    await bench.session.opener.kept(bench.state.finished.value!.id);
    await bench.until(() => bench.state.result.value === null, 'the opening');
    await bench.result();
    expect(bench.state.held.value).toBeNull();
    await bench.session.keeper.forget(bench.state.finished.value!.id);
    expect(bench.state.practice.value).toEqual([]);
  });

  it('counts what was missed and what was imagined, and what was too close to call neither way', () => {
    const { right, of, missed, imagined } = judgedOf(
      own(1, [
        { measure: 'leg', said: 'inside', was: 'outside' },
        { measure: 'convexity', said: 'outside', was: 'within' },
        { measure: 'overlap', said: 'outside', was: 'outside' },
        { measure: 'undercut', said: 'inside', was: 'within' },
        { measure: 'root fusion', said: 'outside', was: 'too close to call' },
      ]),
    );
    expect({ right, of, missed, imagined }).toEqual({ right: 2, of: 4, missed: ['leg'], imagined: ['convexity'] });
    const trend = trendOf([
      own(2, [{ measure: 'leg', said: 'outside', was: 'outside' }]),
      own(1, [
        { measure: 'leg', said: 'inside', was: 'outside' },
        { measure: 'overlap', said: 'inside', was: 'within' },
      ]),
    ]);
    expect(trend.shares.map((s) => [s.made_ms, s.share])).toEqual([
      [1, 0.5],
      [2, 1],
    ]);
    expect(trend).toMatchObject({
      right: 2,
      of: 3,
      missed: 1,
      imagined: 0,
      faults: { there: 2, seen: 1 },
      held: { there: 1, seen: 1 },
    });
  });

  it('says how far guesses lie from readings, as Bland and Altman do (Lancet 1986): mean difference and 1.96 standard deviations', () => {
    // Differences 0.2, 0.4, 0.6, 0.8, 1.0: mean 0.6; standard deviation sqrt(0.4/4) = 0.3162, by hand.
    const pairs = [0.2, 0.4, 0.6, 0.8, 1].map((d) => ({ said_mm: 5 + d, was_mm: 5 }));
    const d = differencesOf(pairs)!;
    expect(d.bias_mm).toBeCloseTo(0.6, 9);
    expect(d.limits_mm!.from).toBeCloseTo(0.6 - 0.6198, 3);
    expect(d.limits_mm!.to).toBeCloseTo(0.6 + 0.6198, 3);
    expect(differencesOf(pairs.slice(0, 4))!.limits_mm).toBeNull();
    expect(differencesOf([])).toBeNull();
  });
});
