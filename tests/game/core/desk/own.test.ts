/** What an exercise made at the desk may carry, and how a bench with several trainees takes it. Everybody here is invented. */
import { describe, expect, it } from 'vitest';
import { type Exercise, exerciseNamed, profileNamed, readExercise, readProfile } from '../../../../scoring/index.ts';
import { TestBench } from '../../support/test-bench.ts';

function shortEditor(bench: TestBench) {
  const { editor } = bench.session.desk;
  editor.begin(exerciseNamed('tee-inverted-v')!);
  editor.set('joint.length_mm', 30);
  return editor;
}
const said = (bench: TestBench): string[] =>
  bench.session.desk.editor.problems.value.map((p) => `${p.path}: found ${p.found}, allowed: ${p.allowed}`);

describe('settings free within ranges', () => {
  it('begin round those given, are checked as they are typed, and are all the sentence may change', () => {
    const bench = new TestBench();
    const editor = shortEditor(bench);
    editor.set('settings', 'within ranges');
    expect(editor.draft.value.free).toEqual({ feed_mpmin: { from: 5.4, to: 6.2 }, volts_V: { from: 19.5, to: 21.5 } });
    editor.set('free.feed_mpmin', { from: 6, to: 5 });
    expect(said(bench)).toEqual([expect.stringContaining('free.feed_mpmin: found')]);
    editor.set('free.feed_mpmin', { from: 5, to: '' });
    expect(said(bench)).toEqual(['free.feed_mpmin.to: found "", allowed: a number']);
    editor.set('free.feed_mpmin', { from: 5.2, to: 6.4 });
    editor.set('free.volts_V', null);
    expect(said(bench)).toEqual([]);
    editor.tryIt();
    const { name } = editor.draft.value;
    bench.session.edit({ process: { feed_mpmin: 6.4 } });
    expect(bench.state.exercise.value).toMatchObject({ name, process: { feed_mpmin: 6.4 } });
    bench.session.edit({ process: { volts_V: 18 } });
    expect(bench.state.exercise.value.name).toBe('free-attempt');
    editor.set('settings', 'fixed');
    expect(editor.draft.value).not.toHaveProperty('free');
  });
});

describe('limits of the school’s own', () => {
  it('begin from those judged by, are edited and checked as typed, saved as a file, and opened again', async () => {
    const bench = new TestBench();
    const editor = shortEditor(bench);
    editor.ownLimits();
    expect(editor.draft.value).toMatchObject({ profile: 'own-aws-d11-static-si', limits: { edition: '2026-03-14' } });
    expect(said(bench)).toEqual([]);
    editor.set('limits.edition', '');
    editor.set('limits.rules.0.clause', '');
    const problems = said(bench);
    expect(problems).toHaveLength(2);
    expect(problems).toContain('limits.rules[0].clause: found "", allowed: at least 1 characters');
    expect(problems).toContain('limits.edition: found "", allowed: which edition or day these limits are of');
    expect(() => readExercise(JSON.stringify(editor.draft.value), 'exercise')).toThrow(
      problems.map((p) => `exercise: ${p}`).join('\n'),
    );
    editor.set('limits.edition', 'spring');
    editor.set('limits.rules.0.clause', 'Tern Dock 1');
    editor.set('limits.name', 'tern-dock-brackets');
    editor.dropRule(1);
    editor.addRule();
    editor.set(`limits.rules.${editor.draft.value.limits!.rules.length - 1}.clause`, 'Tern Dock 9');
    editor.setRule(0, { limit: { form: 'floor', value: 0.5 } });
    expect(said(bench)).toEqual([]);
    editor.saveProfile();
    const [{ name, content }] = bench.saved;
    expect(name).toBe('tern-dock-brackets.profile.json');
    expect(readProfile(JSON.stringify(content))).toEqual(editor.draft.value.limits);
    editor.save();
    expect(readExercise(JSON.stringify(bench.saved[1]!.content))).toEqual(editor.exercise());
    editor.chooseProfile('iso-5817-c');
    expect(editor.draft.value).not.toHaveProperty('limits');
    await editor.profileFile(bench.file(content, name));
    expect(editor.draft.value).toMatchObject({ profile: 'tern-dock-brackets', limits: { edition: 'spring' } });
    await editor.profileFile(bench.file(profileNamed('iso-5817-c'), 'iso.profile.json'));
    expect(editor.draft.value.profile).toBe('iso-5817-c');
    await editor.profileFile(bench.file(editor.draft.value, 'an.exercise.json'));
    expect(bench.state.problem.value).toMatchObject({ code: 'input' });
    expect(editor.draft.value.profile).toBe('iso-5817-c');
  });
});

describe('the map beside the proof', () => {
  it('is welded point by point, and stops when the exercise changes', async () => {
    const bench = new TestBench({ hands: 1 });
    const editor = shortEditor(bench);
    const drawing = editor.drawMap();
    while (editor.map.value.done < 1) await new Promise((resolve) => setImmediate(resolve));
    expect(editor.map.value).toMatchObject({ stage: 'welding', total: 25 });
    editor.set('process.volts_V', 18);
    await drawing;
    expect(editor.map.value.stage).toBe('none');
    expect(bench.hands.every((hand) => hand.closed)).toBe(true);
  });
});

describe('a piece for everybody', () => {
  const varied: Exercise = {
    ...exerciseNamed('tee-inverted-v')!,
    name: 'bracket',
    vary: { gap_mm: { from: 0, to: 1 }, startTemp_C: { from: 20, to: 60 }, cuts_mm: 3 },
    attempts: 2,
  };

  it('is dealt from start word and plate number, to the next trainee anew, and put back without them', () => {
    const bench = new TestBench();
    const piece = (): Exercise['piece'] => bench.state.exercise.value.piece;
    bench.session.useMade(varied);
    expect(piece()).toBeUndefined();
    bench.session.trainees.roster('name,plate\nInes Calder,7\nWren Hollis,3');
    bench.session.trainees.word('Heron');
    bench.session.trainees.next('Ines Calder', 'b1');
    const first = piece();
    expect(first).toMatchObject({ number: 7 });
    bench.session.trainees.next('Wren Hollis', 'b1');
    expect(piece()).toMatchObject({ number: 3 });
    expect(piece()!.seed).not.toBe(first!.seed);
    bench.session.trainees.next('Ines Calder', 'b1', 12);
    expect(piece()).toMatchObject({ number: 12 });
    const later = new TestBench({ preferences: bench.kept });
    expect(later.state.exercise.value.piece).toEqual(piece());
    void bench.session.trainees.forget(false);
    expect(bench.state.exercise.value).toEqual(varied);
  });

  it('counts the attempts of each trainee', () => {
    const bench = new TestBench();
    bench.session.useMade(varied);
    bench.session.trainees.next('Ines Calder', 'b1', 7);
    const past = {
      id: 'a',
      made_ms: 1,
      title: '',
      exercise: 'bracket',
      verdict: null,
      own: true,
      helped: 'with guides',
    };
    bench.state.shelf.value = [
      { ...past, trainee: 'Ines Calder' },
      { ...past, trainee: 'Wren Hollis' },
      { ...past, trainee: 'Ines Calder', own: false },
    ] as typeof bench.state.shelf.value;
    expect(bench.state.used.value).toEqual({ used: 1, allowed: 2 });
  });
});
