import { beforeAll, describe, expect, it } from 'vitest';
import { type Recording, replay } from '../../../../engine/index.ts';
import { RESTRIKE_S } from '../../../../game/core/hand/torch-tool.ts';
import { type Exercise, readRecording, scoreAttempt } from '../../../../scoring/index.ts';
import { type Path, TestBench } from '../../support/test-bench.ts';

const LENGTH_MM = 40;

/** A bench with a short joint on it. */
function shortBench(options = {}): TestBench {
  const bench = new TestBench(options);
  bench.session.chooseExercise('straight-run');
  bench.session.edit({ joint: { length_mm: LENGTH_MM } });
  return bench.wait(0.1);
}

/** A shelf, then straight up. */
const climb: Path = (t_s) => ({ u_mm: 0, y_mm: 4 + 3 * Math.max(0, t_s - 1) });

describe('an attempt welded by hand', () => {
  let bench: TestBench;

  beforeAll(async () => {
    bench = shortBench();
    bench.press(0, 4).follow(climb, 11).release();
    expect(bench.state.torchState.value).toBe('out');
    bench.session.finish();
    await bench.result();
  });

  it('keeps the time of the hand: as many poses as hundredths of a second', async () => {
    const { recording } = bench.state.finished.value!;
    const on = recording.poses.trigger.filter((t) => t === 1).length;
    expect(on).toBeGreaterThanOrEqual(1099);
    expect(on).toBeLessThanOrEqual(1101);
    expect(recording.ended).toBe('stopped');
    expect(recording.device.kind).toBe('mouse');
  });

  it('records the path of the hand', () => {
    const { poses } = bench.state.finished.value!.recording;
    for (const t_s of [0.5, 2, 7, 10]) expect(poses.y[t_s * 100] / 100).toBeCloseTo(climb(t_s).y_mm, 1);
  });

  it('comes to a verdict with something to change or keep', () => {
    const { verdict, advice, lines } = bench.state.result.value!;
    expect(['within', 'outside', 'too close to call', 'no verdict']).toContain(verdict);
    expect(lines.length).toBeGreaterThan(0);
    expect(advice.length + bench.state.result.value!.reasons.length).toBeGreaterThan(0);
    expect(bench.state.announcement.value).toMatchObject({ code: 'verdict' });
  });

  it('gives the same verdict and digits when its file is scored', () => {
    bench.session.save();
    const { name, content } = bench.saved.at(-1)!;
    expect(name).toMatch(/^2026-03-14_[a-z-]+_\d{4}\.json$/);
    const recording = readRecording(JSON.stringify(content));
    const again = scoreAttempt(recording);
    expect(again.verdict).toBe(bench.state.result.value!.verdict);
    expect(again.lines).toEqual(bench.state.result.value!.lines);
    expect(replay(content as Recording).hash()).toBe(bench.state.finished.value!.hash);
  });

  it('opens the root and cuts where the line is dragged to', async () => {
    expect(bench.state.opened.value!.length).toBeGreaterThan(10);
    bench.session.cutAt(17.26);
    await bench.until(() => bench.state.cut.value?.y_mm === 17.3, 'the cut');
    expect(bench.state.cut.value?.station?.legA_mm).toBeGreaterThan(2);
    expect(bench.state.cut.value?.svg).toMatch(/^<svg/);
  });

  it('goes to the place of a line: cut and replay', async () => {
    const line = bench.state.result.value!.lines[0];
    bench.session.goTo(line.y_mm, null);
    expect(bench.state.cutAt.value).toBeCloseTo(line.y_mm, 1);
    expect(bench.state.shownTime.value).toBeGreaterThan(0);
    expect(bench.session.trace.value(bench.player.row, 'aimY_mm')).toBeCloseTo(line.y_mm, 0);
  });

  it('plays back at its own pace and ends on the finished piece', () => {
    const { state, session } = bench;
    session.seek(state.duration_s.value - 0.3);
    state.playing.value = true;
    bench.wait(0.2);
    expect(state.shownTime.value).toBeCloseTo(state.duration_s.value - 0.1, 1);
    bench.wait(0.2);
    expect(state.playing.value).toBe(false);
    expect(state.shownTime.value).toBeNull();
  });

  it('opens its own file again and reads the same numbers', async () => {
    const before = bench.state.result.value!;
    const file = bench.file(bench.saved.at(-1)!.content);
    bench.session.again();
    expect(bench.state.finished.value).toBeNull();
    await bench.session.opener.file(file);
    expect(bench.state.busy.value?.what).toBe('welding again');
    const after = await bench.result();
    expect(after.lines).toEqual(before.lines);
    expect(bench.state.finished.value).toMatchObject({ file: 'attempt.json' });
    expect(bench.state.finished.value!.hash).toBe(bench.state.finished.value!.recording.stateHash);
  });
});

describe('the end of an attempt', () => {
  it('comes by itself when the trigger has been off for a while, and a strike before that goes on', async () => {
    const bench = shortBench();
    bench.press(0, 5).wait(0.5).release().wait(1.1);
    expect(bench.state.restrikeLeft_s.value).toBe(RESTRIKE_S - 1);
    bench.press(0, 6).wait(0.5).release();
    expect(bench.state.finished.value).toBeNull();
    bench.wait(RESTRIKE_S + 0.1);
    const { recording } = await bench.finished();
    const on = recording.poses.trigger.join('');
    expect(on).toMatch(/^1+0+1+0+$/);
    expect(on.match(/01/g)?.length).toBe(1);
  });

  it('comes at the top of the joint while the trigger is down', async () => {
    const bench = shortBench();
    bench.press(0, 34).follow((t_s) => ({ u_mm: 0, y_mm: 34 + 6 * t_s }), 2.5);
    expect((await bench.finished()).recording.ended).toBe('length-reached');
    expect(bench.state.torchState.value).toBe('stopped');
    await bench.result();
  });

  it('is said when the machine cannot keep up; the attempt is not judged', async () => {
    const bench = shortBench({ slow_ms: 6 });
    bench.press(0, 5).wait(2);
    const { recording, lag_s } = await bench.finished();
    expect(recording.ended).toBe('too-slow');
    expect(lag_s).toBeGreaterThan(0.25);
    expect((await bench.result()).verdict).toBe('no verdict');
  });
});

describe('pictures of the surface', () => {
  it('are painted as the page draws them, two a frame at most, and the whole trace arrives all the same', async () => {
    const bench = shortBench();
    let pictures = 0;
    bench.session.onSurface = () => pictures++;
    const frames = bench.frames;
    bench.press(0, 5).follow((t_s) => ({ u_mm: 0, y_mm: 5 + 2 * t_s }), 2);
    const drawn = bench.frames - frames;
    expect(drawn).toBeGreaterThan(50);
    expect(pictures).toBeGreaterThanOrEqual(drawn - 2);
    expect(pictures).toBeLessThanOrEqual(2 * drawn + 2);
    bench.release();
    bench.session.finish();
    const { recording } = await bench.finished();
    expect(bench.session.trace.length).toBe(recording.poses.u.length);
  });
});

describe('the robot hand', () => {
  it('welds the exercise and is marked as a robot, with no aid of the hand’s', async () => {
    const bench = shortBench({ preferences: { handRig: { gun_g: 700, hose: 0.4 }, pacer: true } });
    bench.session.demonstrate();
    expect(bench.state.robotWelding.value).toBe(true);
    bench.wait(1);
    expect(bench.state.live.value?.t_s).toBeGreaterThan(0.5);
    bench.session.stopRobot();
    const { recording } = await bench.finished();
    expect(recording.origin.kind).toBe('robot');
    expect(recording.device.kind).toBe('robot');
    expect(recording.aids).toMatchObject({ handRig: null, beat: false, toeMarks: false });
    expect(bench.state.robotWelding.value).toBe(false);
  });
});

describe('files that cannot be opened', () => {
  it('leave the attempt on the bench and say what is wrong', async () => {
    const bench = shortBench();
    bench.press(0, 5).wait(0.6).release();
    bench.session.finish();
    await bench.result();
    const before = bench.state.finished.value;
    await bench.session.opener.file(bench.file({ format: 'something else' }));
    expect(bench.state.problem.value).toMatchObject({ code: 'input' });
    expect(bench.state.finished.value).toBe(before);
    await bench.session.opener.file({ ...bench.file({}, 'huge.json'), size: 20e6 });
    expect(bench.state.problem.value).toMatchObject({ code: 'file-too-large', bytes: 20e6 });
    expect(bench.state.finished.value).toBe(before);
  });
});

describe('settings in the sentence', () => {
  it('put a cold piece on the bench, and what cannot be welded is refused', () => {
    const bench = shortBench();
    const before = bench.state.balance.value;
    bench.session.edit({ process: { feed_mpmin: 6 } });
    expect(bench.state.balance.value.laid_mm2).toBeGreaterThan(before.laid_mm2);
    expect((bench.state.exercise.value as Exercise).process.feed_mpmin).toBe(6);
    bench.session.edit({ joint: { length_mm: -5 } });
    expect(bench.state.problem.value).not.toBeNull();
    expect(bench.state.exercise.value.joint.length_mm).toBe(LENGTH_MM);
  });
});
