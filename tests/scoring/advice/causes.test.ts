/**
 * The hand against its demonstration, from poses alone: a decent hand is never spoken of, and a hand with one thing wrong is told that thing.
 * Nothing is welded, so nothing here rests on the model.
 */
import { describe, expect, it } from 'vitest';
import { handOfAmount, type Pose, weaveHand } from '../../../engine/index.ts';
import { besideShown, offFromAsked } from '../../../scoring/advice/off.ts';
import { spanBetween, traceOfHand } from '../../../scoring/attempt/trace.ts';
import { type Exercise, exercises } from '../../../scoring/index.ts';
import { curveOf } from '../../../scoring/measures/hand/curve.ts';
import { readStops } from '../../../scoring/measures/hand/stops.ts';
import type { Cause } from '../../studies/causes/causes.ts';
import { nameOf } from '../../studies/causes/grade.ts';
import { MADE_ON } from '../../studies/causes/made-on.ts';
import { exerciseOf, posesOf } from '../../studies/causes/set.ts';
import { runs, share } from '../../support/share.ts';

function offOf(exercise: Exercise, poses: Iterable<Pose>): ReturnType<typeof offFromAsked> {
  const trace = traceOfHand(poses);
  const span = spanBetween(trace, exercise.judged.from_mm, exercise.judged.to_mm);
  if (span === null) throw new Error('the hand never came to the judged length');
  const upperOnly = exercise.demonstration.pattern === 'triangle';
  return offFromAsked(besideShown(curveOf(trace, span, { breaks: readStops(trace).breaks, upperOnly }), exercise));
}

describe('a decent hand (amount 0.25)', () => {
  it.each(exercises.map((e) => [e.name, e] as const))(
    '%s: is spoken of with none of its seeds, from 1 on',
    (_, exercise) => {
      for (let seed = 1; seed <= runs(6, 2); seed++) {
        const found = offOf(exercise, weaveHand(exercise.demonstration, handOfAmount(seed, 0.25)));
        expect(found.map((o) => `${o.code}, seed ${seed}`)).toEqual([]);
      }
    },
  );
});

/** Causes that are not the hand's strokes: the arc's, the machine's, or the way itself. */
const ELSEWHERE: readonly Cause[] = [
  'arc lost',
  'restart not taken back',
  'restart on the cold crater',
  'gives up early',
  'downhill',
  'settings too cold',
  'settings too hot',
  'too much wire',
  'too little wire',
  'a gap not allowed for',
];
const strokes = MADE_ON.filter((a) => !a.truth.some((t) => ELSEWHERE.includes(t)));

describe('a hand with one thing wrong', () => {
  it.each(strokes.map((a) => [`${a.bench}, ${a.name}`, a] as const))(
    '%s: is told it, whatever the seed',
    (_, attempt) => {
      const exercise = exerciseOf(attempt);
      for (const seed of share([3, 8], 1)) {
        const [first] = offOf(exercise, posesOf(attempt, exercise, seed));
        expect(first, `seed ${seed}`).toBeDefined();
        const named = nameOf(first!.code, first!.side);
        expect(
          attempt.truth.some((t) => named.includes(t)),
          `seed ${seed}: ${first!.code}`,
        ).toBe(true);
      }
    },
  );

  it('is told nothing else of its own demonstration', () => {
    for (const exercise of exercises) expect(offOf(exercise, weaveHand(exercise.demonstration))).toEqual([]);
  });
});
