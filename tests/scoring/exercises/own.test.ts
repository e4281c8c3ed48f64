/** What an exercise of a school's own may carry: settings free within ranges, attempts counted, limits of its own, a piece for everybody. */
import { describe, expect, it } from 'vitest';
import {
  classSheet,
  dealPiece,
  type Exercise,
  exerciseDigest,
  exerciseNamed,
  exercises,
  pieceSeed,
  platesOf,
  profileNamed,
  readExercise,
  readProfile,
  readRecording,
  readRoster,
  type Scored,
  scoreBytes,
} from '../../../scoring/index.ts';
import { exerciseOf, judge, MOUSE, record, weld } from '../welds.ts';

const read = (e: object): Exercise => readExercise(JSON.stringify(e), 'own.json');
const vee = exerciseNamed('tee-inverted-v')!;
const ranged = {
  ...vee,
  name: 'own',
  settings: 'within ranges' as const,
  free: { feed_mpmin: { from: 4.8, to: 5.6 }, volts_V: null },
};
const varied: Exercise = {
  ...vee,
  name: 'own',
  vary: { gap_mm: { from: 0, to: 1 }, startTemp_C: { from: 20, to: 60 }, cuts_mm: 4 },
};

/** A short weld by an exercise with something of its own. @param set settings that were really welded with */
function welded(own: Partial<Exercise>, set: Partial<Exercise['process']> = {}) {
  const base = exerciseOf({ joint: { length_mm: 30 }, weave: { length_mm: 3, shelf_s: 0 } });
  const exercise = { ...base, ...own };
  const still = Array.from({ length: 30 }, (_, i) => ({
    ...{ u_mm: 0, y_mm: 4 + i * 0.02, tipToWork_mm: 12, workAngle_deg: 45, travelAngle_deg: 8, trigger: true },
  }));
  return record(
    {
      simulation: { joint: exercise.joint, process: { ...exercise.process, ...set }, cell_mm: 0.75 },
      origin: { kind: 'hand' },
      device: MOUSE,
      aids: { pacer: false, beat: false, toeMarks: false, plainView: false, handRig: null },
      exercise,
    },
    still,
  );
}
const codes = (r: ReturnType<typeof welded>): string[] => judge(r).reasons.map((x) => x.code);

describe('settings free within ranges', () => {
  it.each([
    [{ ...ranged, free: { feed_mpmin: { from: 6, to: 5 }, volts_V: null } }, /free.feed_mpmin.*`from` is not above/],
    [
      { ...ranged, free: { feed_mpmin: { from: 4, to: 50 }, volts_V: null } },
      /free.feed_mpmin.to: found 50, allowed: 1 to/,
    ],
    [
      { ...ranged, free: { feed_mpmin: { from: 6, to: 7 }, volts_V: null } },
      /process.feed_mpmin: found 5.8, allowed: 6 to 7/,
    ],
    [{ ...ranged, settings: 'fixed' }, /free: .*left out, unless settings are "within ranges"/],
    [{ ...vee, settings: 'within ranges' }, /free: .*from and to/],
  ])('are refused where they cannot be: %#', (e, why) => {
    expect(() => read(e)).toThrow(why);
  });

  const free = { settings: 'within ranges' as const, free: { feed_mpmin: { from: 4.5, to: 5.5 }, volts_V: null } };
  it('may be set within the range and nowhere else', () => {
    expect(codes(welded(free, { feed_mpmin: 5.4 }))).not.toContain('settings-edited');
    expect(codes(welded(free, { feed_mpmin: 5.6 }))).toContain('settings-edited');
    expect(codes(welded(free, { volts_V: 19 }))).toContain('settings-edited');
  });

  it('are the same exercise however they were set; a machine set by ear too', () => {
    const set = { ...ranged, process: { ...ranged.process, feed_mpmin: 5.5 } };
    expect(exerciseDigest(set)).toBe(exerciseDigest(ranged));
    expect(exerciseDigest({ ...ranged, process: { ...ranged.process, volts_V: 20 } })).not.toBe(exerciseDigest(ranged));
    const ear = exerciseNamed('settings-by-ear')!;
    const louder = { ...ear, process: { ...ear.process, volts_V: 20 } };
    expect(exerciseDigest(louder)).toBe(exerciseDigest(ear));
  });

  it('a ready exercise that is set by ear is not called edited for being set', () => {
    const ear = exerciseNamed('settings-by-ear')!;
    const process = { ...ear.process, feed_mpmin: 5, volts_V: 19 };
    const r = welded({ ...ear, process });
    expect(codes(r)).not.toContain('exercise-edited');
    expect(codes(r)).not.toContain('settings-edited');
  });

  it('every other digest is as the exercise stands', () => {
    const digests = new Set(exercises.map(exerciseDigest));
    expect(digests.size).toBe(exercises.length);
  });
});

describe('limits of the school’s own', () => {
  const limits = {
    ...profileNamed('tern-dock-first-runs')!,
    name: 'tern-dock-brackets',
    edition: '2',
    source: 'made up',
  };
  it('travel with the exercise and judge the attempt', () => {
    const r = judge(welded({ profile: 'tern-dock-brackets', limits }));
    expect(r.profile).toMatchObject({ name: 'tern-dock-brackets', edition: '2' });
    const [named] = [{ ...vee, name: 'own', profile: 'tern-dock-brackets', limits }];
    expect(read(named).limits).toEqual(limits);
    expect(exerciseDigest(named)).not.toBe(exerciseDigest({ ...named, limits: { ...limits, edition: '3' } }));
  });

  it('say whose and from where they are', () => {
    expect(() => read({ ...vee, profile: 'other', limits })).toThrow(/profile: .*"tern-dock-brackets"/);
    expect(() => read({ ...vee, profile: limits.name, limits: { ...limits, source: ' ' } })).toThrow(
      /limits.source: .*taken from/,
    );
  });
});

describe('a piece for everybody', () => {
  it('follows from word and plate number alone, within what may vary, and is put back whole', () => {
    const piece = dealPiece(varied, 'Heron', 7);
    expect(dealPiece(varied, ' heron ', 7)).toEqual(piece);
    expect(dealPiece(dealPiece(varied, 'swan', 3), 'heron', 7)).toEqual(piece);
    expect(piece.piece).toMatchObject({ number: 7, seed: pieceSeed(exerciseDigest(varied)!, 'heron', 7) });
    expect(exerciseDigest(piece)).toBe(exerciseDigest(varied));
    expect(JSON.stringify(piece)).not.toContain('heron');
    expect(read(piece)).toEqual(piece);
  });

  it('differs from plate to plate, and stays within the ranges, over a whole school', () => {
    const dealt = Array.from({ length: 200 }, (_, i) => dealPiece(varied, 'heron', i + 1));
    for (const { joint, cuts_mm, judged } of dealt) {
      expect(joint.gap_mm).toBeGreaterThanOrEqual(0);
      expect(joint.gap_mm).toBeLessThanOrEqual(1);
      expect(Math.round(joint.startTemp_C) % 5).toBe(0);
      expect(joint.startTemp_C).toBeLessThanOrEqual(60);
      for (const [i, y] of cuts_mm.entries()) expect(Math.abs(y - varied.cuts_mm[i]!)).toBeLessThanOrEqual(4);
      expect(cuts_mm.every((y) => y >= judged.from_mm && y <= judged.to_mm)).toBe(true);
    }
    expect(new Set(dealt.map((e) => e.joint.gap_mm)).size).toBe(11);
    const pieces = dealt.map((e) => JSON.stringify([e.joint.gap_mm, e.joint.startTemp_C, e.cuts_mm]));
    expect(new Set(pieces).size).toBeGreaterThan(190);
  });

  it('is refused without a word or a number, and is not dealt where nothing varies', () => {
    expect(() => dealPiece(varied, '  ', 7)).toThrow(/start word: found " {2}"/);
    expect(() => dealPiece(varied, 'heron', 0)).toThrow(/plate number: found 0/);
    expect(dealPiece(vee, 'heron', 7)).toBe(vee);
    expect(() => read({ ...vee, piece: dealPiece(varied, 'heron', 7).piece })).toThrow(/piece: .*nothing vary/);
  });
});

describe('a class whose exercise deals pieces and counts attempts', () => {
  const vary = { gap_mm: { from: 0, to: 1 }, startTemp_C: null, cuts_mm: 0 };
  const base = exerciseOf({ joint: { length_mm: 30 }, weave: { length_mm: 3, shelf_s: 0 } });
  const own: Exercise = { ...base, name: 'own', vary, attempts: 2 };
  const roster = readRoster('name,plate\nInes Calder,7\nWren Hollis,3\nMara Voss,');
  const scored = (file: string, exercise: Exercise, n: number): Scored => {
    const bytes = new TextEncoder().encode(JSON.stringify(welded(exercise)));
    const s = scoreBytes(bytes, `2026-03-10_b1_${file}_own_0${n}.json`, { exercise: null, profile: null });
    return { ...s, hand: `${n}${file}`.padEnd(64, '0'), motion: '' };
  };
  const ines = dealPiece(own, 'heron', 7);
  const why = (files: Scored[], known = {}): string =>
    classSheet({ scored: files, bad: [] }, new Set([exerciseDigest(own)!]), known)
      .notCounted.map((e) => `${e.name.trainee} ${e.name.attempt}: ${e.notCounted.join('; ')}`)
      .join('\n');
  const [first, second, third] = [1, 2, 3].map((n) => scored('ines-calder', ines, n)) as [Scored, Scored, Scored];

  it('counts everybody’s own piece, as often as the exercise allows', () => {
    const known = { roster, word: 'heron' };
    expect(why([first, second, third], known)).toBe('ines-calder 3: attempt 3 at an exercise that allows 2');
  });

  it('says whose piece it is, that it is of another word, or none', () => {
    const known = { roster, word: 'heron' };
    const borrowed = { ...second, file: second.file.replace('ines-calder', 'wren-hollis') };
    expect(why([first, borrowed], known)).toBe(
      "wren-hollis 2: welded on plate 7, which is Ines Calder's; the roster gives plate 3",
    );
    expect(why([first], { word: 'swan' })).toMatch(/ines-calder 1: seed [0-9a-f]{16} is not what the start word deals/);
    expect(why([scored('mara-voss', own, 1)], known)).toMatch(/mara-voss 1: no plate number/);
    const sheet = classSheet({ scored: [first, borrowed], bad: [] }, new Set([exerciseDigest(own)!]));
    expect(sheet.mismatched.map((e) => e.mismatches.join())).toEqual([
      expect.stringContaining('the same piece as Wren Hollis (plate 7'),
      expect.stringContaining('the same piece as Ines Calder (plate 7'),
    ]);
  });

  it('a roster gives plates by number, or by place where it numbers nobody', () => {
    expect(platesOf(roster).map((p) => [p.name, p.plate])).toEqual([
      ['Ines Calder', 7],
      ['Wren Hollis', 3],
    ]);
    expect(platesOf(readRoster('Ines\nWren')).map((p) => p.plate)).toEqual([1, 2]);
    expect(() => readRoster('name,plate\nInes,2\nWren,2')).toThrow(/line 3, plate: found plate 2, as on line 2/);
    expect(() => readRoster('name,plate\nInes,x')).toThrow(/line 2, plate: found "x"/);
  });
});

describe('a file of another kind', () => {
  it('is named in one sentence, with what it is good for', () => {
    const profile = JSON.stringify(profileNamed('iso-5817-c'));
    const sentence =
      'p.json: format: found "toehold-profile", an acceptance profile, allowed: "toehold-exercise", an exercise; with this file you can';
    expect(() => readExercise(profile, 'p.json')).toThrow(sentence);
    expect(() => readRecording(profile, 'p.json')).toThrow(/found "toehold-profile", an acceptance profile/);
    expect(() =>
      readProfile(JSON.stringify(weld({ joint: { length_mm: 30 }, weave: { length_mm: 2, shelf_s: 0 } }))),
    ).toThrow(/found "toehold-recording", a recording of an attempt/);
  });
});
