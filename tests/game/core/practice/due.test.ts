import { describe, expect, it } from 'vitest';
import { dueOf, learntAt, practised } from '../../../../game/core/practice/due.ts';
import { type Retention, readPractice } from '../../../../game/core/practice/record.ts';
import type { PastAttempt } from '../../../../game/core/session/level.ts';
import { exerciseNamed } from '../../../../scoring/index.ts';
import { TestBench } from '../../support/test-bench.ts';

const HOUR = 3_600_000;
const DAY = 24 * HOUR;
const tee = exerciseNamed('tee-inverted-v')!;
const test = exerciseNamed('test-piece')!;
const past = (exercise: string, made_ms: number, verdict: PastAttempt['verdict']): PastAttempt => ({
  exercise,
  made_ms,
  verdict,
  own: true,
});
const learnt = [1, 2, 3].map((h) => past(tee.name, h * HOUR, 'within'));
const tested = (step: Retention['step'], attempt: string = step): Retention => ({
  kind: 'retention',
  id: `retention:${attempt}`,
  attempt,
  made_ms: 0,
  trainee: null,
  exercise: tee.name,
  step,
  base_ms: 3 * HOUR,
});
const due = (now_ms: number, tests: Retention[] = []) => dueOf(learnt, tests, [tee, test], null, now_ms);

describe('tests after a while', () => {
  it('are of what was learnt: guides gone, or a test passed', () => {
    expect(learntAt(learnt.slice(0, 2), tee, null)).toBeNull();
    expect(learntAt(learnt, tee, null)).toBe(3 * HOUR);
    expect(learntAt(learnt, tee, 'somebody else')).toBeNull();
    expect(learntAt([past(test.name, 5, 'outside'), past(test.name, 9, 'within')], test, null)).toBe(9);
  });

  it('are due next day, after a week and after a fortnight; one missed has lapsed when the next is due', () => {
    expect(due(4 * HOUR)).toMatchObject([{ step: 'day', now: false }]);
    expect(due(DAY)).toMatchObject([{ step: 'day', now: true }]);
    expect(due(DAY, [tested('day')])).toMatchObject([{ step: 'week', now: false, due_ms: 3 * HOUR + 7 * DAY }]);
    expect(due(8 * DAY)).toMatchObject([{ step: 'week', now: true }]);
    expect(due(90 * DAY)).toMatchObject([{ step: 'fortnight', now: true }]);
    expect(due(90 * DAY, [tested('fortnight')])).toEqual([]);
  });

  it('are left out of what level and charts are told from', () => {
    expect(practised([{ id: 'a' }, { id: 'b' }], [tested('day', 'b')])).toEqual([{ id: 'a' }]);
  });

  it('are welded without guides, counted apart and kept', async () => {
    const bench = new TestBench();
    bench.session.practice.weldTest({ exercise: tee, step: 'day', base_ms: 0, due_ms: 0, now: true });
    expect(bench.state.guides.value).toEqual({ pacer: false, beatSeen: false, beatHeard: false, toeMarks: false });
    bench
      .wait(0.1)
      .press(0, 2)
      .follow((t_s) => ({ u_mm: 0, y_mm: 2 + 3 * t_s }), 1.5)
      .release();
    bench.session.finish();
    await bench.result();
    await bench.until(() => bench.state.tests.value.length === 1, 'the test on the shelf');
    const { id, recording } = bench.state.finished.value!;
    expect(recording.aids).toMatchObject({ pacer: false, beat: false, toeMarks: false });
    expect(bench.state.tests.value[0]).toMatchObject({ attempt: id, step: 'day', exercise: tee.name });
    expect(bench.state.retention.value).toBeNull();
    expect(bench.state.guides.value.toeMarks).toBe(true);
    // Another exercise ends it too.
    bench.session.practice.weldTest({ exercise: tee, step: 'week', base_ms: 0, due_ms: 0, now: true });
    bench.session.chooseExercise('straight-run');
    expect(bench.state.retention.value).toBeNull();
  });

  it('are read with care: what is no record is none', () => {
    expect(readPractice(tested('day'))).toEqual(tested('day'));
    for (const bad of [null, 3, {}, { ...tested('day'), step: 'year' }, { ...tested('day'), made_ms: -1 }])
      expect(readPractice(bad)).toBeNull();
  });
});
