import { beforeAll, describe, expect, it } from 'vitest';
import {
  type Attempt,
  type AttemptRecording,
  endSentences,
  judgeAttempt,
  profileNamed,
  type Result,
  resultSchema,
} from '../../../scoring/index.ts';
import { seen, type Weld, weld } from '../welds.ts';
import { reStruck, restartFromAbove, restartOnCrater, tapped } from './technique.ts';

/**
 * Starts, stops and restarts of real welds: the robot's poses with the technique put in, welded by the engine. What they are held to
 * is common practice, no source.
 */

/** Each welded once, however often it is judged. */
const welded = new Map<string, { recording: AttemptRecording; attempt: Attempt }>();

function result(name: string, w: Weld, judge: { profile?: string; leg_mm?: number } = {}): Result {
  let made = welded.get(name);
  if (made === undefined) {
    const recording = weld(w);
    made = { recording, attempt: seen(recording) };
    welded.set(name, made);
  }
  const own = made.recording.exercise!;
  const exercise = { ...own, asked: { ...own.asked, size_mm: judge.leg_mm ?? own.asked.size_mm, atMost_mm: null } };
  return judgeAttempt(made.recording, made.attempt, {
    exercise,
    profile: profileNamed(judge.profile ?? own.profile)!,
  });
}

const STOP_MM = 32;
/** Stops 13 mm short of the top, with its crater in the judged length. */
const stopped = (hand?: Weld['hand']): Weld => ({
  joint: { length_mm: 45 },
  weave: { length_mm: 30 },
  ...(hand === undefined ? {} : { hand }),
});
const C = { profile: 'iso-5817-c' };
const whole = (): Result => result('whole', {});

const text = (r: Result): string => endSentences(r).join('\n');
const only = <T>(list: readonly T[]): T => {
  expect(list).toHaveLength(1);
  return list[0]!;
};

describe('crater', () => {
  let open: Result;
  let twice: Result;

  beforeAll(() => {
    open = result('open', stopped(), C);
    twice = result('twice', stopped(reStruck(2)), C);
  });

  it('is read in mm below the settled face, with its plus-minus', () => {
    expect(resultSchema.parse(open)).toEqual(open);
    const stop = only(open.motion.stops);
    expect(Math.abs(stop.y_mm - STOP_MM)).toBeLessThan(2.5);
    expect(stop).toMatchObject({ reStrikes: 0, restart: null, out_s: null });
    const bead = only(open.bead.stops);
    expect(bead.craterDepth_mm!).toBeGreaterThan(3 * bead.plusMinus_mm);
    expect(bead.filled).toBe(false);
    expect(bead.craterAt_mm!).toBeGreaterThan(stop.craterFrom_mm!);
    expect(bead.craterAt_mm!).toBeLessThan(stop.craterTo_mm!);
    expect(text(open)).toMatch(/open crater: 1\.\d ± 0\.\d mm below the settled face/);
  });

  it('is filled by two short re-strikes, which are technique and no tapping', () => {
    const stop = only(twice.motion.stops);
    expect(stop.reStrikes).toBe(2);
    expect(stop.reStrikeTime_s).toBeCloseTo(1, 1);
    expect(twice.motion.taps).toBe(0);
    const bead = only(twice.bead.stops);
    expect(bead.craterDepth_mm!).toBeLessThan(only(open.bead.stops).craterDepth_mm! - 1);
    expect(bead.filled).toBe(true);
    expect(text(twice)).toContain('crater filled with 2 short re-strikes');
    expect(text(twice)).not.toContain('tapped');
    // Nothing of the run below the crater is read otherwise.
    expect(twice.motion.travel_mmps).toBe(open.motion.travel_mmps);
    expect(twice.motion.periodCv).toBe(open.motion.periodCv);
  });

  it('is filled in part by one', () => {
    const one = result('one', stopped(reStruck(1)), C);
    const depth = only(one.bead.stops).craterDepth_mm!;
    expect(depth).toBeLessThan(only(open.bead.stops).craterDepth_mm! - 0.5);
    expect(depth).toBeGreaterThan(only(twice.bead.stops).craterDepth_mm!);
    expect(text(one)).toContain('crater filled with one short re-strike');
  });

  it('makes a line where it lies in the judged length: ISO 5817 2025', () => {
    const depth = (r: Result) => only(r.lines.filter((l) => l.measure === 'crater depth'));
    // h ≤ 0.1 t for level C, 6 mm plate.
    expect(depth(open)).toMatchObject({ verdict: 'outside', limit: 0.6, sense: 'at most' });
    expect(depth(twice).verdict).toBe('within');
  });

  it('makes no line where the run goes on past the judged length', () => {
    const strict = result('whole', {}, { profile: 'iso-5817-b' });
    expect(only(strict.bead.stops).craterDepth_mm!).toBeGreaterThan(1);
    expect(strict.lines.filter((l) => l.measure.includes('crater'))).toEqual([]);
  });
});

describe('tapping', () => {
  it('is counted apart from crater fill: a third re-strike, and arcs in turn all the way up', () => {
    const thrice = result('thrice', stopped(reStruck(3, 0.3)));
    expect(thrice.motion.taps).toBe(3);
    expect(only(thrice.motion.stops).reStrikes).toBe(0);
    const all = result('tapped', { joint: { length_mm: 45 }, hand: tapped(0.6, 0.5) });
    expect(all.motion.taps).toBeGreaterThan(12);
    expect(all.motion.stops).toEqual([]);
    expect(text(all)).toContain(`Trigger tapped: ${all.motion.taps} short arcs`);
  });
});

describe('restart in mid length', () => {
  let above: Result;
  let onCrater: Result;

  beforeAll(() => {
    // Hot enough that the run beside the restart ties in: else its root is what is said first.
    const process = { volts_V: 19, feed_mpmin: 5.4 };
    above = result('above', { process, hand: restartFromAbove(30) });
    onCrater = result('on the crater', { process, hand: restartOnCrater(30) });
  });

  it('reads where the strike was, and whether the arc came back into the crater', () => {
    const [good] = above.motion.stops;
    const [bad] = onCrater.motion.stops;
    expect(above.motion.stops).toHaveLength(2);
    expect(good!.out_s).toBeCloseTo(12, 0);
    expect(good!.restart).toMatchObject({ way: 'above and back' });
    expect(Math.abs(good!.restart!.above_mm - 8.5)).toBeLessThan(1);
    expect(good!.restart!.back_mm).toBeLessThan(-1.5);
    expect(good!.restart!.inCrater_s).toBeGreaterThan(1.2);
    expect(bad!.restart).toMatchObject({ way: 'on the crater' });
    expect(Math.abs(bad!.restart!.above_mm)).toBeLessThan(1.5);
    for (const r of [above, onCrater]) expect(r.motion.taps).toBe(0);
  });

  it('ties in from above and back; on the cold crater it leaves a flaw within 10 mm of the stop', () => {
    const good = above.bead.stops[0]!;
    const bad = onCrater.bead.stops[0]!;
    // A slice at most, which the reading itself may be off.
    expect(good.flaw!.rootShort_mm).toBeLessThan(good.flaw!.plusMinus_mm);
    expect(bad.flaw!.rootShort_mm).toBeGreaterThan(bad.flaw!.plusMinus_mm);
    expect(Math.abs(bad.flaw!.rootFusionAt_mm - bad.y_mm)).toBeLessThan(10);
    expect(bad.flaw!.rootFusion_mm).toBeLessThan(-0.8);
    expect(good.filled).toBe(true);
    expect(good.craterDepth_mm!).toBeLessThan(bad.craterDepth_mm! - 1);
    expect(text(above)).toMatch(/restarted \d+(\.\d)? mm above it and brought back into the crater/);
    expect(text(onCrater)).toMatch(/restarted on the crater itself, 12 s later; flaw over \d+ ± 1\.5 mm within 10 mm/);
  });

  it('is held to the size asked by D1.1 (craters filled): full after a proper restart, in doubt after the other', () => {
    const leg = (r: Result) => only(r.lines.filter((l) => l.measure === 'leg at the crater'));
    const good = leg(result('above, cooler', { hand: restartFromAbove(30) }, { leg_mm: 6 }));
    const bad = leg(result('on the crater, cooler', { hand: restartOnCrater(30) }, { leg_mm: 6 }));
    expect(good).toMatchObject({ limit: 6, sense: 'at least', status: 'verified', verdict: 'within' });
    expect(bad.reading).toBeLessThan(good.reading);
    expect(bad.verdict).not.toBe('within');
  });

  it('is no second pass and no climb down, and the run beside it is read as ever', () => {
    for (const r of [above, onCrater]) expect(r.reasons).toEqual([]);
    const { motion } = whole();
    for (const r of [above, onCrater]) {
      expect(Math.abs(r.motion.period_s! - motion.period_s!)).toBeLessThan(0.05);
      expect(r.motion.periodCv!).toBeLessThan(0.05);
      expect(Math.abs(r.motion.travel_mmps! - motion.travel_mmps!)).toBeLessThan(0.25);
    }
  });

  it('has its own advice instead of more volts', () => {
    expect(onCrater.advice[0]!.code).toBe('restart-on-crater');
    expect(onCrater.advice[0]!.text).toContain('Strike about 10 above it');
    expect(onCrater.advice[0]!.t_s).toBe(onCrater.motion.stops[0]!.restart!.t_s);
    expect(above.advice.map((a) => a.code)).not.toContain('restart-on-crater');
    // This hand waits until the crater runs over a little: that is said, and never that the run is cold.
    expect(above.advice.map((a) => a.code)).toContain('restart-overfilled');
    for (const { advice } of [above, onCrater]) expect(advice.map((a) => a.code)).not.toContain('cold-root');
  });
});

describe('start', () => {
  const run = (shelf_s: number, pattern: 'straight' | 'inverted-v') =>
    result(`${pattern} ${shelf_s}`, {
      joint: { length_mm: 45 },
      weave: { pattern, shelf_s, start_mm: 6, length_mm: 34 },
    });

  it.each(['straight', 'inverted-v'] as const)('%s: an immediate climb against a built shelf', (pattern) => {
    const off = run(0, pattern);
    const built = run(1.2, pattern);
    expect(off.motion.start!.shelfShare!).toBeLessThan(0.9);
    expect(built.motion.start!.shelfShare!).toBeGreaterThan(0.95);
    expect(off.motion.start!.fullWidth_mm!).toBeGreaterThan(1);
    expect(built.motion.start!.fullWidth_mm!).toBeLessThan(0.5);
    // Full width comes lower on the joint where the shelf was waited for, or no higher (a straight run is read to ±1 mm there).
    const lower = off.bead.start!.fullWidthFrom_mm! - built.bead.start!.fullWidthFrom_mm!;
    expect(lower).toBeGreaterThanOrEqual(pattern === 'straight' ? 0 : 1);
    expect(text(off)).toContain('before the shelf was there');
    expect(text(built)).toContain('shelf built');
  });

  it('reads the lump of a cold start over the settled face', () => {
    const lump = whole();
    const start = lump.bead.start!;
    expect(start.lump_mm).toBeGreaterThan(start.plusMinus_mm);
    expect(start.lumpAt_mm - start.bottom_mm).toBeLessThanOrEqual(10);
    expect(text(lump)).toMatch(/lump \d(\.\d)? ± 0\.\d mm over the settled face/);
    // Struck higher up with room below, the same metal runs down instead of standing up.
    expect(run(0, 'inverted-v').bead.start!.lump_mm).toBeLessThan(start.lump_mm / 2);
  });

  it('is not measured on a bead too short to have settled, with the reason', () => {
    const short = result('short', { joint: { length_mm: 45 }, weave: { length_mm: 14 } });
    expect(short.bead.start).toBeNull();
    expect(short.motion.start!.shelfShare).toBeNull();
    expect(only(short.bead.stops).craterDepth_mm).toBeNull();
    expect(short.notMeasured.some((n) => n.what.includes('crater'))).toBe(true);
  });
});
