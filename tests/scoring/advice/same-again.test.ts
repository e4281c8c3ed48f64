/**
 * "Same again" is for a hand that did what was asked. Travel, width or beat far from it are spoken of in every ready exercise, whatever the
 * bead: from poses alone, nothing is welded.
 */
import { describe, expect, it } from 'vitest';
import { handOfAmount, weaveHand } from '../../../engine/index.ts';
import { besideShown, offFromAsked } from '../../../scoring/advice/off.ts';
import { spanBetween, traceOfHand } from '../../../scoring/attempt/trace.ts';
import { type Exercise, exercises } from '../../../scoring/index.ts';
import { curveOf } from '../../../scoring/measures/hand/curve.ts';
import { readStops } from '../../../scoring/measures/hand/stops.ts';

type Weave = Exercise['demonstration'];

const far: [string, (w: Weave) => Partial<Weave>, ('weaves' | 'all')?][] = [
  ['a climb of 0.7 times', (w) => ({ travel_mmps: 0.7 * w.travel_mmps }), 'all'],
  ['a climb of 1.4 times', (w) => ({ travel_mmps: 1.4 * w.travel_mmps }), 'all'],
  ['half the width', (w) => ({ width_mm: 0.5 * w.width_mm })],
  ['a weave 2 mm too wide', (w) => ({ width_mm: w.width_mm + 2 })],
  ['half the beat', (w) => ({ cyclesPerSecond: 0.5 * w.cyclesPerSecond })],
  // Waits that a beat of twice the speed leaves room for.
  ['twice the beat', (w) => ({ cyclesPerSecond: 2 * w.cyclesPerSecond, pauseA_s: 0.05, pauseB_s: 0.05 })],
];

function spokenOf(exercise: Exercise, change: Partial<Weave>, seed: number): string[] {
  const poses = weaveHand({ ...exercise.demonstration, ...change }, handOfAmount(seed, 0.15));
  const trace = traceOfHand(poses);
  const span = spanBetween(trace, exercise.judged.from_mm, exercise.judged.to_mm);
  if (span === null) throw new Error('the hand never came to the judged length');
  const upperOnly = exercise.demonstration.pattern === 'triangle';
  const curve = curveOf(trace, span, { breaks: readStops(trace).breaks, upperOnly });
  return offFromAsked(besideShown(curve, exercise)).map((o) => o.code);
}

describe.each(exercises.map((e) => [e.name, e] as const))('%s: "same again" is never said to', (_, exercise) => {
  const weaves = exercise.demonstration.pattern !== 'straight';
  it.each(far.filter(([, , whom]) => weaves || whom === 'all'))('%s', (_name, change) => {
    expect(spokenOf(exercise, change(exercise.demonstration), 2)).not.toEqual([]);
  });
});
