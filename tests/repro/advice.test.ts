/** First sentences that were wrong, each as it was heard. Short welds through the whole judgement; what the hand did is known. */
import { describe, expect, it } from 'vitest';
import type { Pose } from '../../engine/index.ts';
import type { Result } from '../../scoring/index.ts';
import { judge, type Weld, weld } from '../scoring/welds.ts';

/** The workshop's settings and hand, on a joint short enough for a test. */
const short: Weld = {
  joint: { length_mm: 44 },
  process: { feed_mpmin: 5.2, volts_V: 19 },
  leg_mm: 6,
};
const shown = { cyclesPerSecond: 0.9, width_mm: 6, travel_mmps: 2.2, pauseA_s: 0.25, pauseB_s: 0.25, apex_mm: 2.5 };

/** The exercise asks for the workshop's hand; the poses are another's. */
function judged(hand: (poses: Pose[]) => Pose[]): Result {
  return judge(weld({ ...short, weave: shown, hand }));
}

/** Each pose's way off the root times this. */
const wider = (factor: number) => (poses: Pose[]) => poses.map((p) => ({ ...p, u_mm: factor * p.u_mm }));

/** The weave's strokes that many times as fast, the climb as it was. */
function faster(poses: Pose[], times: number): Pose[] {
  const climb = (p: Pose, n: number): number => p.y_mm - (shown.travel_mmps * n) / 100;
  return poses.map((p, n) => {
    const from = poses[Math.min(poses.length - 1, Math.floor((n * times) % poses.length))]!;
    if (!p.trigger || !from.trigger) return p;
    const ahead = climb(from, Math.floor((n * times) % poses.length)) - climb(poses[200]!, 200);
    return { ...p, u_mm: from.u_mm, y_mm: poses[200]!.y_mm + (shown.travel_mmps * (n - 200)) / 100 + ahead };
  });
}

const codes = (r: Result): string[] => r.advice.map((a) => a.code);

describe('the first sentence', () => {
  it('"climb faster or turn the wire down" was said to a hand that did what was shown', () => {
    const r = judged((poses) => poses);
    expect(codes(r)).not.toContain('too-much-metal');
    expect(codes(r).some((c) => c.startsWith('climbed'))).toBe(false);
  });

  it('"widen 1 mm and wait" was said to a weave that was too wide', () => {
    const r = judged(wider(1.5));
    expect(r.advice[0]!.code).toBe('too-wide');
    expect(r.advice[0]!.text).not.toMatch(/widen|carry it out/i);
  });

  it('"more wire and volts, same hand" was said to a beat of twice the speed', () => {
    const r = judged((poses) => faster(poses, 2.2));
    expect(r.advice[0]!.code).toBe('beat-fast');
    expect(r.advice.every((a) => a.change?.what !== 'volts_V' && a.change?.what !== 'feed_mpmin')).toBe(true);
  });

  it('"n mm are bare" hid a jump up the joint', () => {
    const at = (poses: Pose[], y_mm: number): number => poses.findIndex((p) => p.y_mm > y_mm);
    const r = judged((poses) => [...poses.slice(0, at(poses, 24)), ...poses.slice(at(poses, 34))]);
    expect(r.advice[0]!.code).toBe('jumped');
  });

  it('"n mm are bare" hid a restart that never came back', () => {
    const at = (poses: Pose[], y_mm: number): number => poses.findIndex((p) => p.y_mm > y_mm);
    const r = judged((poses) => {
      const stop = at(poses, 22);
      const rest = Array.from({ length: 500 }, () => ({ ...poses[stop]!, trigger: false }));
      return [...poses.slice(0, stop), ...rest, ...poses.slice(at(poses, 30))];
    });
    expect(r.advice[0]!.code).toBe('restart-not-back');
  });
});
