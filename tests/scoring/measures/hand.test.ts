import { describe, expect, it } from 'vitest';
import { createRandom } from '../../../engine/index.ts';
import { spanBetween } from '../../../scoring/attempt/trace.ts';
import type { Trace } from '../../../scoring/index.ts';
import { type HandReading, readHand } from '../../../scoring/measures/hand/motion.ts';
import { downwardShare, weldedTwice_mm } from '../../../scoring/measures/hand/passes.ts';
import { readStops } from '../../../scoring/measures/hand/stops.ts';
import { gapSaid } from '../../../scoring/words/gaps.ts';
import { makeTrace, trapezoid } from './traces.ts';

const all = { tipToWork: true, workAngle: true, travelAngle: true };

function read(trace: Trace, over: { measures?: typeof all; upperOnly?: boolean } = {}): HandReading {
  return readHand(trace, spanBetween(trace, 10, 60), {
    breaks: readStops(trace).breaks,
    device: { kind: 'mouse', measures: over.measures ?? all, scale: 1 },
    lead: { from: -1.2, to: 1.5 },
    upperOnly: over.upperOnly ?? false,
  });
}

const climb = (t: number): number => 5 + 2 * t;

describe('weave of known shape', () => {
  it.each([
    { period: 1.1, width: 5, pauseA: 0.25, pauseB: 0.25 },
    { period: 1.1, width: 5, pauseA: 0.4, pauseB: 0.1 },
    { period: 0.9, width: 4, pauseA: 0, pauseB: 0.2 },
    { period: 1.6, width: 7, pauseA: 0.5, pauseB: 0.3 },
  ])('$width mm wide, period $period s, pauses $pauseA and $pauseB s', ({ period, width, pauseA, pauseB }) => {
    const { motion } = read(makeTrace({ seconds: 25, u: trapezoid(period, width, pauseA, pauseB), y: climb }));
    expect(Math.abs(motion.period_s! - period)).toBeLessThan(0.01);
    expect(motion.periodCv!).toBeLessThan(0.02);
    expect(Math.abs(motion.width_mm! - width)).toBeLessThan(0.5);
    expect(Math.abs(motion.pauseA_s! - pauseA)).toBeLessThan(0.03);
    expect(Math.abs(motion.pauseB_s! - pauseB)).toBeLessThan(0.03);
    expect(Math.abs(motion.stepUp_mm! - 2 * period)).toBeLessThan(0.05);
    expect(Math.abs(motion.travel_mmps! - 2)).toBeLessThan(0.01);
    expect(motion.beatShare!).toBeGreaterThan(0.85);
    expect(motion.toeFilledShareA).toBe(1);
  });

  it('keeps its readings under tremor', () => {
    const random = createRandom(11);
    let wander = 0;
    const noise: number[] = [];
    for (let i = 0; i < 2600; i++) {
      wander += -0.07 * wander + 0.09 * random.normal();
      noise.push(wander);
    }
    const base = trapezoid(1.1, 5, 0.25, 0.25);
    const { motion } = read(makeTrace({ seconds: 25, u: (t) => base(t) + noise[Math.round(t * 100)]!, y: climb }));
    expect(Math.abs(motion.period_s! - 1.1)).toBeLessThan(0.03);
    expect(Math.abs(motion.pauseA_s! - 0.25)).toBeLessThan(0.1);
    expect(Math.abs(motion.width_mm! - 5)).toBeLessThan(0.7);
    expect(motion.cycles).toBeGreaterThan(18);
  });

  it('tells an uneven beat from an even one', () => {
    const random = createRandom(5);
    const starts = [0];
    for (let k = 0; k < 40; k++) starts.push(starts[k]! + 1.1 * (1 + 0.25 * random.normal()));
    const u = (t: number): number => {
      const k = Math.max(0, starts.findIndex((s) => s > t) - 1);
      const phase = (t - starts[k]!) / (starts[k + 1]! - starts[k]!);
      return trapezoid(1, 5, 0.2, 0.2)(phase);
    };
    const { motion } = read(makeTrace({ seconds: 25, u, y: climb }));
    expect(motion.periodCv!).toBeGreaterThan(0.15);
    expect(motion.beatShare!).toBeLessThan(0.8);
  });

  it('does not call a toe filled that is wetted too little, or by a film', () => {
    const u = trapezoid(1.1, 5, 0.25, 0.25);
    expect(read(makeTrace({ seconds: 25, u, y: climb, beyond: 1.2 })).motion.toeFilledShareA).toBe(0);
    expect(read(makeTrace({ seconds: 25, u, y: climb, beyond: 2, fill: 0.02 })).motion.toeFilledShareB).toBe(0);
  });
});

describe('arc on the front of the puddle', () => {
  it('counts root crossings only', () => {
    const u = trapezoid(1.1, 5, 0.25, 0.25);
    // On the front when crossing, far back at the toes: the toes must not count.
    const { motion } = read(makeTrace({ seconds: 25, u, y: climb, lead: (t) => (Math.abs(u(t)) < 0.6 ? 0 : -5) }));
    expect(motion.arcOnFrontShare).toBe(1);
    expect(Math.abs(motion.lead_mm!)).toBeLessThan(0.01);
    expect(motion.crossings.length).toBeGreaterThan(35);
  });

  it('reads how far back it sat', () => {
    const { motion } = read(makeTrace({ seconds: 25, u: trapezoid(1.1, 5, 0.25, 0.25), y: climb, lead: () => -2.5 }));
    expect(motion.arcOnFrontShare).toBe(0);
    expect(motion.lead_mm).toBeCloseTo(-2.5, 3);
  });

  it('takes the upper crossing of a looping triangle', () => {
    const u = trapezoid(1.1, 5, 0.25, 0.25);
    const low = (t: number): boolean => (t % 1.1) / 1.1 < 0.5;
    const made = makeTrace({ seconds: 25, u, y: climb, lead: (t) => (low(t) ? -3 : 0.5) });
    expect(read(made).motion.arcOnFrontShare).toBeCloseTo(0.5, 1);
    expect(read(made, { upperOnly: true }).motion.arcOnFrontShare).toBe(1);
  });
});

describe('what is not there to read', () => {
  it('is null with a reason on a straight run, not 0', () => {
    const { motion, notMeasured } = read(
      makeTrace({ seconds: 25, u: (t) => 0.1 * Math.sin(t), y: climb, lead: () => -0.5 }),
    );
    for (const name of ['reachA_mm', 'pauseA_s', 'period_s', 'width_mm', 'stepUp_mm', 'toeFilledShareB'] as const)
      expect(motion[name]).toBeNull();
    expect(notMeasured.some((n) => n.why.includes('straight run'))).toBe(true);
    expect(motion.arcOnFrontShare).toBe(1);
    expect(motion.travel_mmps).toBeCloseTo(2, 2);
  });

  it('is null with a reason where the device does not measure it', () => {
    const mouse = { tipToWork: false, workAngle: false, travelAngle: false };
    const { motion, notMeasured } = read(makeTrace({ seconds: 25, u: trapezoid(1.1, 5, 0.2, 0.2), y: climb }), {
      measures: mouse,
    });
    expect([motion.tipToWork_mm, motion.workAngle_deg, motion.travelAngle_deg]).toEqual([null, null, null]);
    expect(notMeasured.map((n) => n.what)).toEqual(['tip to work', 'work angle', 'travel angle']);
    expect(gapSaid(notMeasured[0]!).why).toContain('not measured with this device');
  });

  it('reads tip-to-work and its drift where the device does', () => {
    const { motion } = read(
      makeTrace({ seconds: 25, u: trapezoid(1.1, 5, 0.2, 0.2), y: climb, tip: (t) => 10 + 0.1 * t }),
    );
    expect(Math.abs(motion.tipToWork_mm! - 11.5)).toBeLessThan(0.3);
    expect(motion.tipToWorkDrift_mm!).toBeGreaterThan(1);
  });
});

describe('passes', () => {
  it('tells a second pass from a restart that drops back on its crater', () => {
    const twice = makeTrace({ seconds: 40, u: () => 0, y: (t) => 10 + 2 * (t % 20) });
    expect(weldedTwice_mm(twice, 15, 45)).toBeGreaterThan(25);
    // Stops at 30, strikes at 40, drops back to 30 and goes on.
    const restart = makeTrace({
      seconds: 40,
      u: () => 0,
      y: (t) => (t < 10 ? 10 + 2 * t : t < 20 ? 30 : t < 20.6 ? 40 - 16 * (t - 20) : 30 + 2 * (t - 20.6)),
      arcOn: (t) => t < 10 || t >= 20,
    });
    expect(weldedTwice_mm(restart, 15, 45)).toBeLessThan(6);
    // The same, held to be technique: nothing of it counts.
    const { technique } = readStops(restart);
    expect(technique).toHaveLength(1);
    expect(weldedTwice_mm(restart, 15, 45, technique)).toBe(0);
    // A restart 25 mm below its stop is a pass over the bead and never technique.
    const below = makeTrace({
      seconds: 60,
      u: () => 0,
      y: (t) => (t < 20 ? 10 + 2 * t : t < 30 ? 50 : 25 + 2 * (t - 30)),
      arcOn: (t) => t < 20 || t >= 30,
    });
    const passed = readStops(below);
    expect(passed.technique).toEqual([]);
    expect(weldedTwice_mm(below, 15, 49, passed.technique)).toBeGreaterThan(20);
    const once = makeTrace({ seconds: 20, u: trapezoid(1.1, 5, 0.2, 0.2), y: climb });
    expect(weldedTwice_mm(once, 10, 40)).toBe(0);
  });

  it('sees downhill through a weave that dips', () => {
    const dips = (t: number): number => 10 + 2 * t + 2 * Math.sin(6 * t);
    const up = makeTrace({ seconds: 20, u: trapezoid(1.1, 5, 0.2, 0.2), y: dips });
    expect(downwardShare(up, { from: 0, to: up.length })).toBe(0);
    const down = makeTrace({ seconds: 20, u: trapezoid(1.1, 5, 0.2, 0.2), y: (t) => 60 - dips(t) });
    expect(downwardShare(down, { from: 0, to: down.length })).toBeGreaterThan(0.9);
  });
});
