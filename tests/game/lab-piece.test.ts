import { expect, it } from 'vitest';
import { dealPiece, type Exercise, exerciseNamed } from '../../scoring/index.ts';
import { TestBench } from './support/test-bench.ts';

it('a piece that a lab dealt lies on the bench as it was dealt, whatever word and plate the bench itself knows', () => {
  const ready = exerciseNamed('tee-inverted-v')!;
  const varied: Exercise = {
    ...ready,
    name: 'dealt-tee',
    vary: { gap_mm: { from: 0, to: 2 }, startTemp_C: null, cuts_mm: 0 },
  };
  const dealt = dealPiece(varied, 'heron', 7);
  const bench = new TestBench();
  bench.session.takeExercise(dealt);
  expect(bench.state.exercise.value).toEqual(dealt);
});
