/** Settings of machine and gun that an exercise leaves to the trainee: refused where they cannot be, and held by judge and papers alike. */
import { describe, expect, it } from 'vitest';
import {
  boothPaper,
  checkMade,
  type Exercise,
  exerciseDigest,
  exerciseNamed,
  exercisePaper,
  leftToTrainee,
  readExercise,
  withConsequences,
  withOptions,
} from '../../../scoring/index.ts';
import { exerciseOf, judge, MOUSE, record } from '../welds.ts';

const vee = exerciseNamed('tee-inverted-v')!;
const AS_GIVEN = { feed_mpmin: null, volts_V: null };
const leaving = (free: object): Exercise =>
  ({ ...vee, name: 'own', settings: 'within ranges', free: { ...AS_GIVEN, ...free } }) as Exercise;
const refused =
  (free: object): (() => Exercise) =>
  () =>
    readExercise(JSON.stringify(leaving(free)), 'own.json');

describe('what is left to the trainee', () => {
  it.each([
    [{ tipToWork_mm: { from: 2, to: 14 } }, /free.tipToWork_mm.from: found 2, allowed: 5 to 40 mm/],
    [{ tipToWork_mm: { from: 14, to: 18 } }, /demonstration.tipToWork_mm: found 12, allowed: 14 to 18, the range/],
    [{ travelAngle_deg: { from: 0, to: 60 } }, /free.travelAngle_deg.to: found 60, allowed: -45 to 45°/],
    [{ nozzle_mm: { from: 8, to: 18 } }, /free.nozzle_mm.from: found 8, allowed: 10 to 26 mm/],
    [{ gas: ['C1', 'M21-ArC-25'] }, /process.gas: found "M21-ArC-18", allowed: one of those left free: C1, M21-ArC-25/],
    [{ gas: ['M21-ArC-18'] }, /free.gas: found a list of 1, allowed: at least 2/],
    [{ wire_mm: [0.9, 0.9] }, /free.wire_mm: .*each of them once/],
    [{ wire_mm: [0.9, 1.1] }, /free.wire_mm/],
    [{}, /free: .*from and to of at least one setting/],
  ])('is refused where it cannot be: %#', (free, why) => {
    expect(refused(free)).toThrow(why);
  });

  it('asks everybody the same however it was set', () => {
    const own = leaving({ gas: ['M21-ArC-18', 'C1'], wire_mm: [0.9, 1.2], tipToWork_mm: { from: 10, to: 16 } });
    const set: Exercise = {
      ...own,
      process: { ...own.process, gas: 'C1', wire_mm: 1.2 },
      hold: { ...own.hold, tipToWork_mm: 15 },
    };
    expect(exerciseDigest(set)).toBe(exerciseDigest(own));
    const angle = { ...own, hold: { ...own.hold, workAngle_deg: 40 } };
    expect(exerciseDigest(angle)).not.toBe(exerciseDigest(own));
    expect(leftToTrainee(own)).toEqual(['wire 0.9 mm or 1.2 mm', 'gas M21-ArC-18 or C1', 'tip-to-work 10 to 16 mm']);
  });

  it('stands on its sheet and on the booth card', () => {
    const own = leaving({ gas: ['M21-ArC-18', 'C1'], tipToWork_mm: { from: 10, to: 16 } });
    expect(Object.fromEntries(exercisePaper(own).settings)['Tip-to-work']).toBe('12 mm, free from 10 to 16 mm');
    expect(Object.fromEntries(boothPaper(own).asks).Gas).toContain(', free: M21-ArC-18 or C1');
  });

  it('widens what the hand is held to, and reads the same once it is taken away again', () => {
    const far = withConsequences(
      leaving({ tipToWork_mm: { from: 11, to: 19 }, travelAngle_deg: { from: -10, to: 10 } }),
    );
    expect(far.target.tipToWork_mm).toEqual({ from: 9, to: 19 });
    expect(far.target.travelAngle_deg).toEqual({ from: -10, to: 15 });
    expect(checkMade(far)).toEqual(far);
    const away = withOptions(leaving({ feed_mpmin: { from: 5, to: 6 }, gas: null, tip_mm: null }));
    expect(away.free).toEqual({ feed_mpmin: { from: 5, to: 6 }, volts_V: null });
  });
});

/** Thirty poses of a still arc on a short tee, with a mouse: it holds the gun as the exercise says. */
function welded(
  own: Partial<Exercise>,
  set: { process?: Partial<Exercise['process']>; hold?: Partial<Exercise['hold']> },
) {
  const base = exerciseOf({ joint: { length_mm: 30 }, weave: { length_mm: 3, shelf_s: 0 } });
  const exercise: Exercise = { ...base, ...own, hold: { ...base.hold, ...set.hold } };
  const { hold } = exercise;
  const poses = Array.from({ length: 30 }, (_, i) => ({ u_mm: 0, y_mm: 4 + i * 0.02, ...hold, trigger: true }));
  const recording = record(
    {
      simulation: { joint: exercise.joint, process: { ...exercise.process, ...set.process }, cell_mm: 0.75 },
      origin: { kind: 'hand' },
      device: MOUSE,
      aids: { pacer: false, beat: false, toeMarks: false, plainView: false, handRig: null },
      exercise,
    },
    poses,
  );
  return judge(recording).reasons.filter((reason) => reason.code === 'settings-edited');
}

describe('an attempt', () => {
  const own = {
    settings: 'within ranges' as const,
    free: {
      ...AS_GIVEN,
      gas: ['M21-ArC-18' as const, 'C1' as const],
      tip_mm: { from: -3, to: 0 },
      tipToWork_mm: { from: 10, to: 16 },
    },
  };
  it('may set what is left to it, as far as it is left', () => {
    expect(welded(own, { process: { gas: 'C1', tip_mm: -2 }, hold: { tipToWork_mm: 16 } })).toEqual([]);
    expect(welded(own, { process: { gas: 'M21-ArC-25' } })[0]?.text).toContain('one of M21-ArC-18, C1');
    expect(welded(own, { process: { tip_mm: 1 } })[0]?.text).toContain('anything from -3 to 0');
    expect(welded(own, { process: { nozzle_mm: 18 } })[0]?.text).toContain('the nozzle is 18 mm instead of 16 mm');
    expect(welded(own, { hold: { tipToWork_mm: 17 } })[0]?.text).toContain('tip-to-work is 17 mm instead of anything');
  });
});
