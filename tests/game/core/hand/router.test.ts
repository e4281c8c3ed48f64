import { beforeEach, describe, expect, it } from 'vitest';
import type { TorchSample } from '../../../../game/core/hand/sample.ts';
import { TestBench } from '../../support/test-bench.ts';

let bench: TestBench;
const sample = (u_mm: number, y_mm: number, trigger = false): TorchSample => ({
  at_ms: bench.clock.now_ms(),
  u_mm,
  y_mm,
  ...bench.router.hold(),
  trigger,
});
const tool = () => bench.session.tool;

beforeEach(() => {
  bench = new TestBench();
});

describe('input', () => {
  it('of the keyboard: the space bar strikes where the arrows have brought the torch, at once or latched', () => {
    bench.router.nudge(1.5, 2);
    bench.router.key(true);
    expect(bench.state.deviceKind.value).toBe('keyboard');
    expect(bench.state.torchState.value).toBe('welding');
    expect(tool().last).toMatchObject({ u_mm: 1.5, y_mm: 5 });
    bench.wait(0.1).router.key(false);
    expect(bench.state.torchState.value).toBe('out');
    bench.session.again();
    bench.state.setPreference('latchTrigger', true);
    bench.router.key(true);
    bench.router.key(false);
    expect(bench.state.torchState.value).toBe('welding');
    bench.wait(0.1).router.key(true);
    expect(bench.state.torchState.value).toBe('out');
  });

  it('of a gamepad: its trigger stays down while the pointer aims', () => {
    bench.router.near('mouse', [sample(2, 8)]);
    bench.router.pad(true);
    expect(bench.state.deviceKind.value).toBe('gamepad');
    bench.wait(0.05).router.near('mouse', [sample(3, 9)]);
    expect(tool().last).toMatchObject({ u_mm: 3, y_mm: 9, trigger: true });
    // A key let go is not the gamepad's trigger.
    bench.router.key(false);
    expect(bench.state.torchState.value).toBe('welding');
    bench.router.pad(false);
    expect(bench.state.torchState.value).toBe('out');
  });

  it('is not taken while the robot hand welds or a piece is finished; a press then cuts', async () => {
    expect(bench.router.ready()).toBe(true);
    bench.session.demonstrate();
    expect(bench.router.ready()).toBe(false);
    bench.router.key(true);
    expect(bench.state.torchState.value).toBe('idle');
    bench.wait(0.5);
    bench.session.stopRobot();
    await bench.result();
    expect(bench.router.ready()).toBe(false);
    bench.router.point(sample(0, 33.33));
    expect(bench.state.cutAt.value).toBe(33.3);
  });

  it('leaves the pane: the torch goes with the pointer, but not from an arc that burns', () => {
    bench.router.near('mouse', [sample(0, 5)]);
    expect(tool().last).not.toBeNull();
    bench.router.leave();
    expect(tool().last).toBeNull();
    bench.press(0, 5);
    bench.router.leave();
    expect(tool().last).not.toBeNull();
  });

  it('goes through the rig where it is on: the gun lags behind the hand and swings on while it rests', async () => {
    bench.state.setPreference('handRig', { gun_g: 1200, hose: 0.8 });
    bench.press(0, 5);
    bench.clock.crank(8);
    bench.router.near('mouse', [sample(6, 5, true)]);
    const behind = tool().last!.u_mm;
    expect(behind).toBeLessThan(6);
    bench.wait(0.3);
    expect(tool().last!.u_mm).toBeGreaterThan(behind);
    bench.release();
    bench.session.finish();
    const { recording } = await bench.finished();
    expect(recording.aids.handRig).toEqual({ gun_g: 1200, hose: 0.8 });
    expect(Math.max(...recording.poses.u)).toBeGreaterThan(300);
  });
});
