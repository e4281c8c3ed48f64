import { describe, expect, it } from 'vitest';
import type { Pose } from '../../../../engine/index.ts';
import { type PoseSource, runRealTime, TOO_SLOW_S } from '../../../../game/core/bench/real-time.ts';
import { CrankClock } from '../../support/crank-clock.ts';

const POSE: Pose = { u_mm: 0, y_mm: 5, tipToWork_mm: 12, workAngle_deg: 45, travelAngle_deg: 8, trigger: true };

/** A source that makes a pose due every 10 ms of the (fake) clock. */
function source(start: number): PoseSource & { count: number } {
  return {
    count: 0,
    take(now) {
      if (this.lag_ms(now) < 0) return null;
      this.count += 1;
      return POSE;
    },
    lag_ms(now) {
      return now - start - this.count * 10;
    },
  };
}

/** Runs for a while on a machine that needs `cost_ms` for a pose. */
function run(cost_ms: number, seconds: number): { welded: number; slow: number | null } {
  const clock = new CrankClock();
  const poses = source(clock.now_ms());
  let welded = 0;
  let slow: number | null = null;
  const stop = runRealTime(
    poses,
    {
      weld: () => {
        welded += 1;
        clock.spend(cost_ms);
      },
      spell: () => false,
      tooSlow: (lag) => {
        slow = lag;
      },
    },
    clock,
  );
  const end = clock.now_ms() + seconds * 1000;
  while (clock.now_ms() < end && slow === null) clock.crank(4);
  stop();
  return { welded, slow };
}

describe('real time', () => {
  it('welds a hundred poses a second on a machine that is fast enough', () => {
    const { welded, slow } = run(3, 5);
    expect(slow).toBeNull();
    expect(welded).toBeGreaterThan(490);
    expect(welded).toBeLessThan(510);
  });

  it('stops and says by how much when the machine cannot keep up', () => {
    const { welded, slow } = run(14, 20);
    expect(slow).toBeGreaterThan(TOO_SLOW_S);
    expect(slow).toBeLessThan(1);
    expect(welded).toBeLessThan(500);
  });
});
