import { describe, expect, it } from 'vitest';
import { exerciseNamed, exercises, type ProofRow, proofOf, readExercise } from '../../../../scoring/index.ts';
import { chosen, TestBench } from '../../support/test-bench.ts';

/** A short exercise, so that a whole proof is welded in seconds. */
function shortEditor(bench: TestBench) {
  const { editor } = bench.session.desk;
  editor.begin(exerciseNamed('tee-inverted-v')!);
  editor.set('joint.length_mm', 30);
  return editor;
}

describe('an exercise being made', () => {
  it('begins from another under a name of its own, and what follows from a change follows', () => {
    const { editor } = new TestBench().session.desk;
    editor.begin(exerciseNamed('lap-5')!);
    expect(editor.draft.value.name).toBe('lap-2');
    expect(editor.problems.value).toEqual([]);
    editor.set('joint.length_mm', 60);
    editor.set('demonstration.pauseA_s', 0.4);
    const made = editor.exercise()!;
    expect(made.judged).toEqual({ from_mm: 20, to_mm: 50 });
    expect(made.demonstration.length_mm).toBe(56);
    expect(made.target.pauseA_s).toEqual({ from: 0.28, to: 0.52 });
  });

  it.each(exercises.map((e) => [e.name, e] as const))('can begin from %s', (_, e) => {
    const { editor } = new TestBench().session.desk;
    editor.begin(e);
    expect(editor.problems.value).toEqual([]);
  });

  it.each([
    ['process.volts_V', 99, 'found 99, allowed: 12 to 30 V'],
    ['joint.length_mm', '', 'found "", allowed: a number'],
    ['joint.length_mm', 'long', 'found "long", allowed: a number'],
    ['demonstration.width_mm', 20, 'found 20, allowed: 0 to 14 mm'],
    ['cuts_mm', [5], 'found 5, allowed: a height inside the judged length (10 to 20 mm)'],
    [
      'judged.to_mm',
      300,
      'found an object with 2 fields, allowed: from_mm below to_mm, both on the joint (0 to 30 mm)',
    ],
    ['name', 'tee-inverted-v', 'found "tee-inverted-v", allowed: a name of its own'],
    ['name', 'Tee 6', 'found "Tee 6", allowed: text matching'],
    ['asked.size_mm', 1, 'found 1, allowed: at least 2'],
  ])('says as it is typed what is wrong with %s %j, as the command line does', (path, value, says) => {
    const editor = shortEditor(new TestBench());
    editor.set(path, value);
    const [problem] = editor.problems.value;
    expect(`found ${problem!.found}, allowed: ${problem!.allowed}`).toContain(says);
    expect(editor.exercise()).toBeNull();
    if (path === 'name' && value === 'tee-inverted-v') return;
    const read = () => readExercise(JSON.stringify(editor.draft.value), 'exercise');
    expect(read).toThrow(`${problem!.path}: found ${problem!.found}, allowed: ${problem!.allowed}`);
  });

  it('goes on the bench, into a file and a link, and comes back from each', async () => {
    const bench = new TestBench();
    const editor = shortEditor(bench);
    editor.set('title', 'Short tee');
    editor.tryIt();
    expect(bench.state.exercise.value.title).toBe('Short tee');
    editor.save();
    const [{ name, content }] = bench.saved;
    expect(name).toBe('tee-inverted-v-2.exercise.json');
    const other = new TestBench();
    await other.session.opener.file(other.file(content, name));
    expect(other.state.exercise.value).toEqual(bench.state.exercise.value);
    const link = (await editor.link())!;
    const carried = decodeURIComponent(link.slice(link.indexOf('=') + 1));
    const third = await new TestBench({ carried }).settle();
    expect(third.state.exercise.value).toEqual(bench.state.exercise.value);
    const later = new TestBench({ preferences: third.kept });
    expect(later.state.exercise.value).toEqual(bench.state.exercise.value);
    later.session.chooseExercise('lap-5');
    later.session.chooseExercise('tee-inverted-v-2');
    expect(later.state.exercise.value.title).toBe('Short tee');
  });

  it('is refused from a link that carries something else, and the bench stays as it was', async () => {
    const bench = await new TestBench({ carried: '{"format":"toehold-exercise"' }).settle();
    expect(bench.state.problem.value).toMatchObject({ code: 'input' });
    expect(bench.state.exercise.value.name).toBe('tee-inverted-v');
  });
});

describe('proving an exercise', () => {
  it('welds it with every hand, shows each as it comes, and can be stopped', async () => {
    const bench = new TestBench({ hands: 2 });
    const editor = shortEditor(bench);
    editor.set('joint.length_mm', 22);
    const proving = editor.prove();
    while (editor.proof.value.rows.filter((row) => row !== null).length < 3) {
      await new Promise((resolve) => setImmediate(resolve));
    }
    editor.stop();
    await proving;
    const { stage, rows, hands } = editor.proof.value;
    expect(stage).toBe('stopped');
    expect(hands.filter((hand) => hand.group === 'named fault')).toHaveLength(12);
    expect(rows.filter((row) => row !== null)[0]!.says).not.toBe('');
    expect(bench.hands.every((hand) => hand.closed)).toBe(true);
    editor.set('process.volts_V', 20);
    expect(editor.proof.value.stage).toBe('none');
  });

  it('sums up: good hands within, faults told by name, how wide a hand may be', () => {
    const row = (hand: Partial<ProofRow['hand']>, verdict: ProofRow['verdict']): ProofRow => ({
      hand: { group: 'good hand', fault: null, amount: 0, seed: 1, ...hand },
      verdict,
      advice: null,
      says: null,
      nearest: null,
    });
    expect(
      proofOf([
        row({}, 'within'),
        row({ amount: 0.15 }, 'within'),
        row({ group: 'named fault', fault: 'fast' }, 'outside'),
        row({ group: 'named fault', fault: 'slow' }, 'within'),
        row({ group: 'named fault', fault: 'uneven' }, 'too close to call'),
        row({ group: 'named fault', fault: 'stopped-early' }, 'no verdict'),
        row({ group: 'wider hand', amount: 0.3 }, 'within'),
        row({ group: 'wider hand', amount: 0.45 }, 'too close to call'),
        row({ group: 'wider hand', amount: 0.6 }, 'within'),
      ]),
    ).toEqual({
      good: { within: 2, of: 2, least: null },
      faults: { told: 2, of: 4, close: ['uneven'], missed: ['slow'] },
      tolerates: 0.3,
    });
  });
});

describe('a file of another kind', () => {
  it.each([
    ['{"format": "toehold-profile", "version": 1}', 'profile'],
    ['{"format": "toehold-coupon"}', 'coupon'],
    ['{"format": "toehold-result", "verdict": "within"}', 'result'],
    ['{"format": "toehold-logbook", "attempts": []}', 'logbook'],
    ['{"kept": {}}', 'damaged'],
    ['Name;Bench\nInes;b2', 'table'],
    ['<!doctype html><p>', 'page'],
    ['buy grinding discs', 'other'],
  ])('%j is told what it is', async (text, kind) => {
    const bench = new TestBench();
    const before = bench.state.exercise.value;
    await bench.session.opener.file(chosen('some.json', text));
    expect(bench.state.problem.value).toMatchObject({ code: 'other-kind', kind });
    expect(bench.state.exercise.value).toBe(before);
  });
});
