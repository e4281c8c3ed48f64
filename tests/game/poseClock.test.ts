import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { TorchSample } from '../../game/input/sample.ts';
import { POSE_MS, PoseClock, WAIT_MS } from '../../game/worker/poseClock.ts';

const held = { tipToWork_mm: 12, workAngle_deg: 45, travelAngle_deg: 8 };

function sample(at_ms: number, u_mm: number, y_mm: number, trigger = true): TorchSample {
  return { at_ms, u_mm, y_mm, ...held, trigger };
}

/** Takes every pose that is due at a time. */
function drain(clock: PoseClock, now_ms: number): { u: number; y: number; trigger: boolean }[] {
  const out = [];
  for (let pose = clock.take(now_ms); pose; pose = clock.take(now_ms))
    out.push({ u: pose.u_mm, y: pose.y_mm, trigger: pose.trigger });
  return out;
}

describe('pose clock', () => {
  it('interpolates readings by their time stamps', () => {
    const clock = new PoseClock(1000);
    clock.add([sample(1000, 0, 0), sample(1016, 1.6, 3.2), sample(1032, 0, 6.4)]);
    expect(drain(clock, 1000)).toEqual([
      { u: 0, y: 0, trigger: true },
      { u: expect.closeTo(1, 9), y: expect.closeTo(2, 9), trigger: true },
      { u: expect.closeTo(1.2, 9), y: expect.closeTo(4, 9), trigger: true },
      { u: expect.closeTo(0.2, 9), y: expect.closeTo(6, 9), trigger: true },
    ]);
  });

  it('gives the same poses however the same readings are bundled and whenever they are asked for', () => {
    const times = fc.array(fc.integer({ min: 4, max: 18 }), { minLength: 5, maxLength: 60 });
    fc.assert(
      fc.property(times, fc.integer({ min: 1, max: 7 }), (gaps, bundle) => {
        let at = 0;
        const readings = [sample(0, 0, 0)];
        for (const [i, gap] of gaps.entries()) {
          at += gap;
          readings.push(sample(at, Math.sin(i), i * 0.1));
        }
        const once = new PoseClock(0);
        once.add(readings);
        const whole = drain(once, at);
        const bits = new PoseClock(0);
        const got = [];
        for (let i = 0; i < readings.length; i += bundle) {
          const part = readings.slice(i, i + bundle);
          bits.add(part);
          got.push(...drain(bits, part[part.length - 1].at_ms));
        }
        expect(got).toEqual(whole);
      }),
      { seed: 11 },
    );
  });

  it('holds still through a rest and does not creep towards the next reading', () => {
    const clock = new PoseClock(0);
    clock.add([sample(0, 0, 0)]);
    const before = drain(clock, 400);
    expect(before.length).toBe(Math.floor((400 - WAIT_MS) / POSE_MS) + 1);
    expect(before.every((p) => p.u === 0)).toBe(true);
    clock.add([sample(420, 4, 0)]);
    const after = drain(clock, 420);
    expect(after.slice(0, 2).map((p) => p.u)).toEqual([0, 0]);
    expect(after.at(-1)?.u).toBeCloseTo(4, 9);
  });

  it('carries the trigger of the last reading', () => {
    const clock = new PoseClock(0);
    clock.add([sample(0, 0, 0), sample(25, 0, 0, false), sample(60, 0, 0, false)]);
    expect(drain(clock, 60).map((p) => p.trigger)).toEqual([true, true, true, false, false, false, false]);
  });

  it('says how far it is behind', () => {
    const clock = new PoseClock(0);
    clock.add([sample(0, 0, 0)]);
    expect(clock.lag_ms(500)).toBe(500 - WAIT_MS);
    drain(clock, 500);
    expect(clock.lag_ms(500)).toBeLessThanOrEqual(0);
  });

  it('survives a device clock that steps back', () => {
    const clock = new PoseClock(0);
    clock.add([sample(0, 0, 0), sample(30, 3, 0), sample(20, 5, 0), sample(50, 5, 1)]);
    for (const pose of drain(clock, 50)) expect(Number.isFinite(pose.u)).toBe(true);
  });
});
