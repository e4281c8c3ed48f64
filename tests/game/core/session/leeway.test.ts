import { describe, expect, it } from 'vitest';
import { editExercise } from '../../../../game/core/session/setup.ts';
import { type Exercise, exerciseNamed } from '../../../../scoring/index.ts';

const own: Exercise = {
  ...exerciseNamed('tee-inverted-v')!,
  name: 'own',
  settings: 'within ranges',
  free: { feed_mpmin: null, volts_V: null, gas: ['M21-ArC-18', 'C1'], tipToWork_mm: { from: 10, to: 16 } },
};

describe('a setting changed at the bench', () => {
  it('stays the exercise where it is left to the trainee, machine and gun alike', () => {
    const set = editExercise(editExercise(own, { process: { gas: 'C1' } }), { hold: { tipToWork_mm: 15 } });
    expect(set).toEqual({ ...own, process: { ...own.process, gas: 'C1' }, hold: { ...own.hold, tipToWork_mm: 15 } });
  });

  it.each([
    { process: { gas: 'M21-ArC-25' as const } },
    { process: { volts_V: 19 } },
    { hold: { tipToWork_mm: 17 } },
    { hold: { workAngle_deg: 40 } },
    { hold: { tipToWork_mm: 15 }, size_mm: 6 },
  ])('is an attempt of one’s own where it is not: %j', (edit) => {
    expect(editExercise(own, edit).name).toBe('free-attempt');
  });
});
