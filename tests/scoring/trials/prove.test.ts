import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { replay } from '../../../engine/index.ts';
import {
  type AttemptRecording,
  type Change,
  checkRecording,
  type ProvedResult,
  proveAdvice,
  provedResultSchema,
  type Result,
} from '../../../scoring/index.ts';
import { applyChange } from '../../../scoring/trials/apply.ts';
import { readRecordedHand } from '../../../scoring/trials/hand.ts';
import { RERUNS } from '../../../scoring/trials/prove-advice.ts';
import { backToMiddle, outOfBand } from '../../../scoring/trials/sized.ts';
import { steps } from '../../../scoring/trials/steps.ts';
import { exerciseOf, judge, MOUSE, weld } from '../welds.ts';

const short = { joint: { length_mm: 36, plateA_mm: 5, plateB_mm: 5 }, process: { feed_mpmin: 4.6, volts_V: 19 } };
const knobs = Object.keys(steps) as Change['what'][];
let steady: AttemptRecording;

beforeAll(() => {
  steady = weld({ ...short, faults: { tremor_mm: 0.2 } });
}, 60_000);

describe('a change to a recorded hand', () => {
  it('of nothing at all leaves every pose, and so the check number', () => {
    for (const what of knobs) {
      const same = applyChange(steady, { what, by: 0 });
      if (same !== null) expect(same.poses, what).toEqual(steady.poses);
    }
    const same = applyChange(steady, { what: 'pauseA_s', by: 0 })!;
    expect(replay(same).hash()).toBe(steady.stateHash);
  });

  it('gives a recording that reads like any other, or nothing', () => {
    fc.assert(
      fc.property(fc.constantFrom(...knobs), fc.integer({ min: -4, max: 4 }), (what, count) => {
        const changed = applyChange(steady, { what, by: count * steps[what].step });
        if (changed === null) return;
        expect(() => checkRecording(JSON.parse(JSON.stringify(changed)), 'changed')).not.toThrow();
        expect(changed.poses.u.length).toBeGreaterThan(steady.poses.u.length / 3);
        const on = changed.poses.trigger.lastIndexOf(1);
        const was = steady.poses.trigger.lastIndexOf(1);
        expect(changed.poses.y[on]! - steady.poses.y[was]!).toBeGreaterThan(-300);
      }),
      { seed: 5, numRuns: 60 },
    );
  });

  it('does what it says, and nothing else', () => {
    const was = readRecordedHand(steady);
    const read = (what: Change['what'], by: number) => readRecordedHand(applyChange(steady, { what, by })!);
    const wait = (h: typeof was, toe: 'A' | 'B'): number => {
      const stays = h.stays.filter((s) => s.toe === toe);
      return stays.reduce((sum, s) => sum + s.to - s.from, 0) / stays.length;
    };
    const longer = read('pauseA_s', 0.1);
    expect(wait(longer, 'A') - wait(was, 'A')).toBeGreaterThan(6);
    expect(Math.abs(wait(longer, 'B') - wait(was, 'B'))).toBeLessThan(4);
    expect(Math.abs(longer.period - was.period)).toBeLessThanOrEqual(3);
    expect(2 * (read('width_mm', 1).half_mm - was.half_mm)).toBeCloseTo(1, 1);
    expect(read('centre_mm', -0.5).centre_mm - was.centre_mm).toBeCloseTo(-0.5, 1);
    for (const by of [0.4, -0.4]) {
      const climb = read('travel_mmps', by);
      expect(climb.travel_mmps! - was.travel_mmps!).toBeCloseTo(by, 1);
      expect(Math.abs(climb.period - was.period)).toBeLessThanOrEqual(4);
      expect(climb.half_mm).toBeCloseTo(was.half_mm, 0);
    }
    const ahead = applyChange(steady, { what: 'lead_mm', by: 1 })!;
    const lifted = ahead.poses.y.map((y, i) => y - steady.poses.y[i]!);
    expect(Math.max(...lifted)).toBeGreaterThan(95);
    expect(Math.max(...lifted)).toBeLessThanOrEqual(100);
    expect(Math.min(...lifted)).toBe(0);
  });

  it('is none for what a device never measured, a weave that is not there, a machine past its end', () => {
    const mouse = { ...steady, device: MOUSE };
    expect(applyChange(mouse, { what: 'tipToWork_mm', by: -3 })).toBeNull();
    expect(applyChange(mouse, { what: 'travelAngle_deg', by: 5 })).toBeNull();
    const straight = { ...steady, poses: { ...steady.poses, u: steady.poses.u.map(() => 0) } };
    expect(applyChange(straight, { what: 'width_mm', by: 1 })).toBeNull();
    expect(applyChange(steady, { what: 'volts_V', by: 30 })).toBeNull();
  });
});

describe('what is tried first', () => {
  let result: Result;
  const exercise = exerciseOf(short);
  const first = (motion: Partial<Result['motion']>) =>
    outOfBand({ ...result, motion: { ...result.motion, ...motion } }, exercise);

  beforeAll(() => {
    result = judge(steady);
  });

  it('is back to what was asked where the hand was off, farthest out first, never more than a hand is asked at once', () => {
    expect(first({})).toEqual([]);
    expect(first({ travelAngle_deg: 35 })).toEqual([{ what: 'travelAngle_deg', by: -15 }]);
    expect(first({ width_mm: 1.5 })[0]).toEqual({ what: 'width_mm', by: steps.width_mm.most });
    const both = first({ tipToWork_mm: 21, travel_mmps: exercise.target.travel_mmps!.to + 0.1, pauseA_s: 0.05 });
    expect(both.map((c) => c.what)).toEqual(['tipToWork_mm', 'pauseA_s']);
    expect(both[0]!.by).toBe(-9);
  });

  it('leaves alone what no device measured and an arc ahead of the front', () => {
    expect(first({ tipToWork_mm: null, travelAngle_deg: null, lead_mm: 3 })).toEqual([]);
    expect(first({ lead_mm: -2.5 })).toEqual([{ what: 'lead_mm', by: steps.lead_mm.most }]);
  });

  it('brings a bead that lies to one side back to the middle, on a lap only where it is more than the edge does', () => {
    const r = result;
    const lying = (legA_mm: number, legB_mm: number, edgeMeltedBack_mm: number | null = null): Result => ({
      ...r,
      bead: { ...r.bead, mean: { ...r.bead.mean!, legA_mm, legB_mm, edgeMeltedBack_mm } },
    });
    expect(backToMiddle(lying(6, 5.7))).toBeNull();
    expect(backToMiddle(lying(7.4, 4.6))).toEqual({ what: 'centre_mm', by: -1 });
    expect(backToMiddle(lying(4.6, 7.4))).toEqual({ what: 'centre_mm', by: 1 });
    expect(backToMiddle(lying(6.2, 5, 0.5))).toBeNull();
  });
});

describe('advice', () => {
  let far: ProvedResult;
  beforeAll(() => {
    const recording = weld({ ...short, weave: { tipToWork_mm: 22 } });
    far = proveAdvice(recording, judge(recording));
  }, 120_000);

  it('is proved where the re-run mends that fault and spoils nothing', () => {
    expect(provedResultSchema.parse(far)).toEqual(far);
    expect(far.reruns).toBeLessThanOrEqual(RERUNS);
    const first = far.advice[0]!;
    expect(first.fault!.measure).toBe('root fusion');
    expect(first.before!.verdict).not.toBe('within');
    expect(first.proved).toBe(true);
    expect(first.change!.what).toBe('tipToWork_mm');
    expect(first.after!.verdict).toBe('within');
    expect(first.tried.at(-1)).toMatchObject({ mends: true, again: true, spoils: [] });
    expect(first.cuts!.after.rootFusion_mm!).toBeGreaterThan(first.cuts!.before.rootFusion_mm!);
    expect(first.text).toContain('Welded again with your own hand');
  });

  it('that no single change bears out names a drill and asks for nothing', () => {
    const recording = weld({ ...short, weave: { pattern: 'straight' } });
    const r = proveAdvice(recording, judge(recording), { reruns: 3 });
    expect(r.reruns).toBeLessThanOrEqual(3);
    const first = r.advice.find((a) => a.tried.length > 0)!;
    expect(first.proved).toBe(false);
    expect(first.change).toBeNull();
    expect(first.drill!.name).toBe('two-toe-pause');
    expect(first.text).toContain('No single change mends it');
  }, 60_000);

  it('goes back to what was asked first, where the hand was far from it', () => {
    const recording = weld({ ...short, weave: { width_mm: 1.5, travel_mmps: 2 } });
    const asked = exerciseOf({ ...short, weave: { width_mm: 5, travel_mmps: 2 } });
    const result = judge(recording, { exercise: asked });
    const first = proveAdvice(recording, result, { exercise: asked, enough: 1 }).advice[0]!;
    expect(result.advice[0]!.code).toBe('too-narrow');
    expect(first.tried[0]!.change).toEqual({ what: 'width_mm', by: 3 });
    expect(first.text).not.toMatch(/before any skill/);
  }, 60_000);

  it('on a weld within its limits is left as a habit, and nothing is welded again', () => {
    const result = judge(steady);
    const held = { ...result, lines: result.lines.map((l) => ({ ...l, verdict: 'within' as const })) };
    const r = proveAdvice(steady, held);
    expect(r.reruns).toBe(0);
    expect(r.advice.every((a) => !a.proved && a.tried.length === 0)).toBe(true);
  });
});
