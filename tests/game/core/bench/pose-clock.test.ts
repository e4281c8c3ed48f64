import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { MOVE_MS, PAGE_MAY_LAG_MS, POSE_MS, PoseClock } from '../../../../game/core/bench/pose-clock.ts';
import type { TorchSample } from '../../../../game/core/hand/sample.ts';

const held = { tipToWork_mm: 12, workAngle_deg: 45, travelAngle_deg: 8 };

function sample(at_ms: number, u_mm: number, y_mm: number, trigger = true): TorchSample {
  return { at_ms, u_mm, y_mm, ...held, trigger };
}

/** Takes every pose that can be made. */
function drain(clock: PoseClock): { u: number; y: number; trigger: boolean }[] {
  const out = [];
  for (let pose = clock.take(); pose; pose = clock.take())
    out.push({ u: pose.u_mm, y: pose.y_mm, trigger: pose.trigger });
  return out;
}

describe('pose clock', () => {
  it('interpolates readings by their time stamps', () => {
    const clock = new PoseClock(1000);
    clock.add([sample(1000, 0, 0), sample(1016, 1.6, 3.2), sample(1032, 0, 6.4)], 1032);
    expect(drain(clock)).toEqual([
      { u: 0, y: 0, trigger: true },
      { u: expect.closeTo(1, 9), y: expect.closeTo(2, 9), trigger: true },
      { u: expect.closeTo(1.2, 9), y: expect.closeTo(4, 9), trigger: true },
      { u: expect.closeTo(0.2, 9), y: expect.closeTo(6, 9), trigger: true },
    ]);
  });

  it('gives the same poses however late and however bundled the readings come', () => {
    const gaps = fc.array(fc.integer({ min: 3, max: 120 }), { minLength: 5, maxLength: 60 });
    fc.assert(
      fc.property(
        gaps,
        fc.integer({ min: 1, max: 9 }),
        fc.array(fc.integer({ min: 0, max: 50 })),
        (times, bundle, words) => {
          let at = 0;
          const readings = [sample(0, 0, 0)];
          for (const [i, gap] of times.entries()) {
            at += gap;
            readings.push(sample(at, Math.sin(i), i * 0.1));
          }
          const once = new PoseClock(0);
          once.add(readings, at + MOVE_MS);
          const whole = drain(once);
          const bits = new PoseClock(0);
          const got = [];
          for (let i = 0; i < readings.length; i += bundle) {
            const part = readings.slice(i, i + bundle);
            bits.add(part, part[part.length - 1].at_ms);
            got.push(...drain(bits));
            // Between bundles the page says, frame by frame, that nothing has come.
            const next = readings[i + bundle]?.at_ms ?? at;
            for (const word of words) {
              bits.add([], Math.min(next, part[part.length - 1].at_ms + word));
              got.push(...drain(bits));
            }
          }
          bits.add([], at + MOVE_MS);
          got.push(...drain(bits));
          expect(got).toEqual(whole);
        },
      ),
      { seed: 11 },
    );
  });

  it('waits while it does not know whether the hand rests or the page is slow', () => {
    const clock = new PoseClock(0);
    clock.add([sample(0, 0, 0)], 0);
    expect(drain(clock)).toHaveLength(1);
    clock.add([], 100);
    expect(drain(clock)).toHaveLength((100 - MOVE_MS) / POSE_MS);
  });

  it('holds still through a rest and does not creep towards the next reading', () => {
    const clock = new PoseClock(0);
    clock.add([sample(0, 0, 0)], 410);
    expect(drain(clock).every((p) => p.u === 0)).toBe(true);
    clock.add([sample(420, 4, 0)], 420);
    expect(drain(clock).map((p) => p.u)).toEqual([0, expect.closeTo(2, 9), expect.closeTo(4, 9)]);
  });

  it('carries the trigger of the last reading', () => {
    const clock = new PoseClock(0);
    clock.add([sample(0, 0, 0), sample(25, 0, 0, false), sample(60, 0, 0, false)], 60);
    expect(drain(clock).map((p) => p.trigger)).toEqual([true, true, true, false, false, false, false]);
  });

  it('is behind by what it could have made and has not, not by what the page has yet to say', () => {
    const clock = new PoseClock(0);
    clock.add([sample(0, 0, 0)], 500);
    expect(clock.lag_ms(500)).toBe(500 - MOVE_MS);
    drain(clock);
    expect(clock.lag_ms(600)).toBeLessThanOrEqual(0);
    expect(clock.lag_ms(500 + PAGE_MAY_LAG_MS + 300)).toBe(300);
  });

  it('survives a device clock that steps back', () => {
    const clock = new PoseClock(0);
    clock.add([sample(0, 0, 0), sample(30, 3, 0), sample(20, 5, 0), sample(50, 5, 1)], 50);
    for (const pose of drain(clock)) expect(Number.isFinite(pose.u)).toBe(true);
  });
});
