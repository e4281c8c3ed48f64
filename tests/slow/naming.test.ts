/** Every coupon whose fault is to be named, welded: the engine's own first sentence names the fault that was done. */
import { describe, expect, it } from 'vitest';
import { COUPONS, couponRecording } from '../../game/core/practice/naming.ts';
import { attemptOf, checkRecording, judgeAttempt } from '../../scoring/index.ts';

describe('a coupon to be named', () => {
  it.each(COUPONS.map((c) => [c.level, c.exercise, c.fault, c.share, c] as const))(
    'level %i, %s, %s (%f) is told by its first sentence',
    (_level, _exercise, _fault, _share, c) => {
      const recording = checkRecording(couponRecording(c, 5), 'coupon');
      const { advice, verdict } = judgeAttempt(recording, attemptOf(recording));
      expect(verdict).not.toBe('within');
      expect(advice[0]?.code, advice[0]?.text).toBe(c.is);
    },
  );
});
