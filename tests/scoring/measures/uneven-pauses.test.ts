import { expect, it } from 'vitest';
import { defaultWeave, type HandFaults, noFaults, type Pose, weaveHand } from '../../../engine/index.ts';
import { spanBetween } from '../../../scoring/attempt/trace.ts';
import { readHand } from '../../../scoring/measures/hand/motion.ts';
import { readStops } from '../../../scoring/measures/hand/stops.ts';
import { recordingSchema } from '../../../scoring/schema/recording.ts';
import { weld } from '../welds.ts';
import { makeTrace } from './traces.ts';

const weave = { ...defaultWeave(), length_mm: 60, pauseA_s: 0.3, pauseB_s: 0.3 };
const hand = (faults: Partial<HandFaults>): Pose[] => [
  ...weaveHand(weave, { ...noFaults(3), tremor_mm: 0.2, ...faults }),
];

/** Pauses of a robot hand, read from its poses. */
function pauses(faults: Partial<HandFaults>) {
  const poses = hand({ tremor_mm: 0, ...faults }).filter((p) => p.trigger);
  const at = (t: number): Pose => poses[Math.min(poses.length - 1, Math.round(t * 100) - 1)]!;
  const trace = makeTrace({ seconds: Math.floor(poses.length / 100), u: (t) => at(t).u_mm, y: (t) => at(t).y_mm });
  const { motion } = readHand(trace, spanBetween(trace, 8, 60), {
    breaks: readStops(trace).breaks,
    device: { kind: 'robot', measures: { tipToWork: true, workAngle: true, travelAngle: true }, scale: 1 },
    lead: { from: -2, to: 2 },
    upperOnly: false,
  });
  const of = (toe: 'A' | 'B'): number[] => motion.toes.filter((v) => v.toe === toe).map((v) => v.pause_s);
  const spread = (x: number[]): number => {
    const mean = x.reduce((a, b) => a + b, 0) / x.length;
    return Math.sqrt(x.reduce((a, b) => a + (b - mean) ** 2, 0) / (x.length - 1)) / mean;
  };
  return { A: spread(of('A')), B: spread(of('B')), periodCv: motion.periodCv! };
}

it('the robot hand waits unevenly at one toe and evenly at the other, in its own beat', () => {
  const right = pauses({ pauseSpreadA: 0.5 });
  expect(right.A).toBeGreaterThan(0.3);
  expect(right.A).toBeLessThan(0.7);
  expect(right.B).toBeLessThan(0.1);
  const left = pauses({ pauseSpreadB: 0.5 });
  expect(left.B).toBeGreaterThan(0.3);
  expect(left.A).toBeLessThan(0.1);
  // The middle of a longer pause lies later, so the readings of the period spread a little though the beat is kept.
  for (const r of [right, left]) expect(r.periodCv).toBeLessThan(0.15);
});

it('every other hand keeps its bits: no spread is the same as none given, and no other fault draws from it', () => {
  expect(hand({ pauseSpreadA: 0, pauseSpreadB: 0 })).toEqual(hand({}));
  const uneven = hand({ pauseSpreadA: 0.5 });
  const even = hand({});
  expect(uneven).toHaveLength(even.length);
  // Tremor is the same; only where the weave itself stands differs.
  expect(uneven.some((p, i) => p.u_mm !== even[i]!.u_mm)).toBe(true);
  expect(uneven[0]).toEqual(even[0]);
});

it('a recording carries it', () => {
  const recording = weld({ joint: { length_mm: 20 }, weave: { length_mm: 3 }, faults: { pauseSpreadA: 0.4 } });
  expect(recordingSchema.parse(recording).origin.faults!.pauseSpreadA).toBe(0.4);
});
