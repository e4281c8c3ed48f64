import { describe, expect, it } from 'vitest';
import { Lesson } from '../../../../game/core/session/lesson.ts';
import { TestBench } from '../../support/test-bench.ts';

function lessonBench(preferences: unknown = null): { bench: TestBench; lesson: Lesson } {
  const bench = new TestBench({ preferences });
  return { bench, lesson: new Lesson(bench.session, bench.state) };
}

/** In a lesson the trainee judges first; where there is no verdict there is nothing to judge. */
async function judged(bench: TestBench): Promise<void> {
  await bench.until(() => bench.state.held.value !== null || bench.state.result.value !== null, 'the measuring');
  if (bench.state.held.value) bench.session.practice.judge([], null);
  await bench.result();
}

/** A shelf, then straight up. */
const climb = (t_s: number) => ({ u_mm: 0, y_mm: 4 + 3 * Math.max(0, t_s - 1) });

describe('the first lesson', () => {
  it('goes from the joint to the root on what the trainee does', async () => {
    const { bench, lesson } = lessonBench();
    const step = () => lesson.view.value?.step;
    lesson.begin();
    expect(step()).toBe('joint');
    expect(bench.state.exercise.value.name).toBe('tee-inverted-v');
    lesson.next();
    expect(step()).toBe('weave');
    lesson.next();

    lesson.showRobot();
    bench.wait(3);
    expect(step()).toBe('robot');
    bench.wait(3.5);
    expect(step()).toBe('straight');
    expect(bench.state.robotWelding.value).toBe(false);
    expect(bench.state.exercise.value.name).toBe('straight-run');
    expect(bench.state.finished.value).toBeNull();

    bench.session.edit({ joint: { length_mm: 30 } });
    bench.wait(0.1).press(0, 4).follow(climb, 2).release();
    bench.session.finish();
    await judged(bench);
    expect(lesson.view.value).toEqual({ step: 'straight', done: false, tooShort: true });

    bench.session.again();
    bench.wait(0.1).press(0, 4).follow(climb, 7).release();
    bench.session.finish();
    await judged(bench);
    expect(step()).toBe('cut');

    expect(lesson.view.value?.done).toBe(false);
    bench.session.cutAt(12);
    expect(lesson.view.value?.done).toBe(true);
    lesson.next();
    expect(step()).toBe('root');
    lesson.next();
    expect(lesson.view.value).toBeNull();
    expect(bench.kept).toMatchObject({ lesson: 'done', lessonOffered: true });
  });

  it('is taken up where it was left; cut and root want a run of their own', () => {
    const { bench, lesson } = lessonBench();
    lesson.begin();
    lesson.next();
    lesson.leave();
    expect(lesson.view.value).toBeNull();
    const later = lessonBench(bench.kept);
    later.lesson.begin();
    expect(later.lesson.view.value?.step).toBe('weave');

    const atCut = lessonBench({ lesson: 'cut' });
    atCut.lesson.begin();
    expect(atCut.lesson.view.value?.step).toBe('straight');
  });

  it('is offered once', () => {
    const { bench, lesson } = lessonBench();
    expect(bench.state.preferences.value.lessonOffered).toBe(false);
    lesson.decline();
    expect(bench.kept).toMatchObject({ lessonOffered: true, lesson: null });
  });

  it('a step nobody knows begins anew', () => {
    const { lesson } = lessonBench({ lesson: 'seventh' });
    lesson.begin();
    expect(lesson.view.value?.step).toBe('joint');
  });
});
