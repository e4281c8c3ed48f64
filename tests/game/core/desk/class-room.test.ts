import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { ChosenFile } from '../../../../game/core/chosen-file.ts';
import { classHtml, type Exercise, exerciseDigest, MOST_FILES } from '../../../../scoring/index.ts';
import { classPaper, classSheet, rowsCsv, rowsJsonl, scoreFolder, sheetCsv } from '../../../../scoring/node/index.ts';
import { shortTee } from '../../../scoring/class/short-tee.ts';
import { chosen, TestBench } from '../../support/test-bench.ts';

// Tern Dock workshop and its trainees are invented. Welds of a few millimetres.
const PEOPLE = ['ines-calder', 'tomas-okafor', 'wren-hollis', 'שרה-לוי'];
let content: Record<string, string>;
let exercise: Exercise;
beforeAll(() => {
  const hands = [3, 4, 5, 6].map((length_mm) => JSON.stringify(shortTee(length_mm)));
  content = Object.fromEntries(hands.map((text, i) => [`2026-03-1${i}_b${i}_${PEOPLE[i]}_short-tee_01.json`, text]));
  exercise = JSON.parse(hands[0]!).exercise as Exercise;
  content['half.json'] = hands[0]!.slice(0, 1500);
  content['packed.zip'] = 'PK';
});

const files = (): ChosenFile[] => Object.entries(content).map(([name, text]) => chosen(name, text));

/** A desk at which the class's exercise was made. */
const desk = (hands = 2): TestBench => new TestBench({ hands, preferences: { exercises: [exercise] } });

describe('a class from its files', () => {
  let folder: string;
  beforeAll(() => {
    folder = mkdtempSync(join(tmpdir(), 'toehold-desk-'));
    for (const [name, text] of Object.entries(content)) writeFileSync(join(folder, name), text);
  });
  afterAll(() => rmSync(folder, { recursive: true }));

  it('is the command line’s class of the same folder, byte for byte, whatever the number of hands', async () => {
    const scores = await scoreFolder(folder, { workers: 1, journal: null });
    const sheet = classSheet(scores, new Set([exerciseDigest(exercise)!]));
    const wanted: Record<string, string> = {
      '.csv': sheetCsv(sheet),
      '-attempts.csv': rowsCsv(scores.scored),
      '-attempts.jsonl': rowsJsonl(scores.scored),
      '.html': classHtml(classPaper(sheet, folder)),
    };
    for (const hands of [1, 3]) {
      const bench = desk(hands);
      await bench.session.desk.addClass({ files: files().reverse(), folders: [] });
      expect(bench.session.desk.classRoom.view.value).toMatchObject({ stage: 'done', done: 6, total: 6 });
      for (const kind of ['csv', 'rows', 'jsonl', 'html'] as const) await bench.session.desk.classRoom.save(kind);
      const saved = Object.fromEntries(bench.saved.map(({ name, content }) => [name, content]));
      for (const [end, text] of Object.entries(wanted)) {
        expect(saved[`class-2026-03-10-to-2026-03-13${end}`], end).toBe(text);
      }
      expect(bench.hands.length).toBeGreaterThanOrEqual(hands);
      expect(bench.hands.every((hand) => hand.closed)).toBe(true);
    }
  });

  it('names what cannot be read and keeps the rest', async () => {
    const bench = desk();
    const gone: ChosenFile = {
      ...chosen('2026-03-10_b9_pia_lap-5_01.json', '{}'),
      arrayBuffer: () => Promise.reject(new Error('the stick was pulled out')),
    };
    const large = { ...chosen('large.json', '{}'), size: 20e6 };
    const note = chosen('notes.txt', 'buy grinding discs');
    await bench.session.desk.addClass({ files: [...files(), gone, large, note], folders: ['old'] });
    const { sheet, passedOver } = bench.session.desk.classRoom.view.value;
    expect(sheet!.bad.map((b) => b.file)).toEqual([
      '2026-03-10_b9_pia_lap-5_01.json',
      'half.json',
      'large.json',
      'packed.zip',
    ]);
    expect(sheet!.bad[0]!.reason).toContain('the stick was pulled out');
    expect(sheet!.bad[2]!.reason).toBe('large.json: found 20000000 bytes, allowed: at most 16000000 bytes');
    expect(sheet!.counted).toBe(4);
    expect(sheet!.folders).toEqual(['old']);
    expect(passedOver).toEqual(['notes.txt']);
  });

  it('draws the cuts of those to see first, and puts them on the paper it prints', async () => {
    const bench = desk();
    await bench.session.desk.addClass({ files: files(), folders: [] });
    const { sheet, cuts } = bench.session.desk.classRoom.view.value;
    expect(sheet!.firstThree.length).toBe(3);
    expect(cuts.map((cut) => cut!.cut!.slice(0, 4))).toEqual(['<svg', '<svg', '<svg']);
    bench.session.desk.printClass();
    expect(bench.printed[0]!.match(/<svg/g)!.length).toBe(3);
    bench.state.onTop.value = 'class';
    bench.printKey();
    expect(bench.printed[1]).toBe(bench.printed[0]);
  });

  it('counts attempts at exercises made here or chosen with the files, and calls the rest practice', async () => {
    const bench = new TestBench();
    const { classRoom } = bench.session.desk;
    await bench.session.desk.addClass({ files: files(), folders: [] });
    expect(classRoom.view.value.sheet!.counted).toBe(0);
    expect(classRoom.view.value.sheet!.notCounted[0]!.notCounted.join()).toContain('practice');
    const handed = chosen('short-tee.exercise.json', JSON.stringify(exercise));
    const spoilt = chosen('spoilt.exercise.json', '{"format": "toehold-exercise"}');
    await bench.session.desk.addClass({ files: [handed, spoilt], folders: [] });
    expect(classRoom.view.value.counted).toEqual(['Short tee']);
    expect(classRoom.view.value.sheet!.counted).toBe(4);
    expect(classRoom.view.value.sheet!.bad.map((b) => b.file)).toContain('spoilt.exercise.json');
  });

  it('costs nothing where a file was scored before; new ones are added', async () => {
    const bench = desk(1);
    const [one, two] = files();
    await bench.session.desk.addClass({ files: [one!], folders: [] });
    const scored = bench.session.desk.classRoom.view.value.sheet!.rows[0]!.first.scored;
    await bench.session.desk.addClass({ files: [one!, two!], folders: [] });
    const { rows, files: count } = bench.session.desk.classRoom.view.value.sheet!;
    expect(count).toBe(2);
    expect(rows.find((r) => r.first.file === one!.name)!.first.scored).toBe(scored);
  });

  it('keeps both of two attempts that two laptops saved under one name, and one of two copies', async () => {
    const bench = desk(1);
    const { classRoom } = bench.session.desk;
    const [name, other] = Object.keys(content) as [string, string];
    await bench.session.desk.addClass({
      files: [chosen(name, content[name]!, 1), chosen(name, content[other]!, 2), chosen(name, content[name]!, 3)],
      folders: [],
    });
    const both = [name, name.replace('.json', ' (2).json')];
    const files = (): string[] => classRoom.view.value.sheet!.rows[0]!.attempts.map((e) => e.file).sort();
    expect(files()).toEqual([...both].sort());
    expect(classRoom.view.value).toMatchObject({ done: 2, total: 2 });
    await bench.session.desk.addClass({ files: [chosen(name, content[other]!, 4)], folders: [] });
    expect(files()).toEqual([...both].sort());
    await bench.session.desk.openOfClass(both[1]!, null);
    await bench.result();
    expect(bench.state.finished.value!.recording).toEqual(JSON.parse(content[other]!));
  });

  it('scores a file anew that could not be read before, and names a folder that cannot be looked into', async () => {
    const bench = desk(1);
    const [name] = Object.keys(content) as [string];
    await bench.session.desk.addClass({
      files: [chosen(name, content[name]!.slice(0, 900), 1)],
      folders: [],
      lost: ['b2'],
    });
    const { classRoom } = bench.session.desk;
    expect(classRoom.view.value.sheet!.bad.map((b) => b.reason)).toEqual([
      expect.stringMatching(/the file is cut off/),
      'b2/: found a folder that can no longer be read, allowed: a folder that can be read',
    ]);
    await bench.session.desk.addClass({ files: [chosen(name, content[name]!, 2)], folders: [] });
    expect(classRoom.view.value.sheet!.counted).toBe(1);
    expect(classRoom.view.value.sheet!.bad.map((b) => b.file)).toEqual(['b2/']);
  });

  it('names whole files that are no attempts, and counts attempts at an exercise whatever its file is called', async () => {
    const bench = new TestBench({ hands: 2 });
    const result = chosen('result.json', '{"format": "toehold-result"}');
    const handed = chosen('monday.json', JSON.stringify(exercise));
    await bench.session.desk.addClass({ files: [...files(), result, handed], folders: [] });
    const { sheet, counted, done, total } = bench.session.desk.classRoom.view.value;
    expect(sheet!.others).toEqual([
      { file: 'monday.json', kind: 'exercise' },
      { file: 'result.json', kind: 'result' },
    ]);
    expect(sheet!.bad.map((b) => b.file)).toEqual(['half.json', 'packed.zip']);
    expect(counted).toEqual(['Short tee']);
    expect(sheet!.counted).toBe(4);
    expect(done).toBe(total);
  });

  it('goes on where it was stopped', async () => {
    const bench = desk(1);
    const { classRoom } = bench.session.desk;
    const working = bench.session.desk.addClass({ files: files(), folders: [] });
    while (classRoom.view.value.done < 2) await new Promise((resolve) => setImmediate(resolve));
    classRoom.stop();
    await working;
    expect(classRoom.view.value).toMatchObject({ stage: 'stopped', done: 2, total: 6 });
    expect(bench.hands.every((hand) => hand.closed)).toBe(true);
    await classRoom.goOn();
    expect(classRoom.view.value).toMatchObject({ stage: 'done', done: 6 });
  });

  it('goes on with another hand where one breaks, and names the file it broke at', async () => {
    const bench = desk(1);
    const [one, two] = files();
    const heavy = chosen('2026-03-10_b9_heavy_lap-5_01.json', '\0');
    await bench.session.desk.addClass({ files: [heavy, one!, two!], folders: [] });
    const { sheet } = bench.session.desk.classRoom.view.value;
    expect(sheet!.bad).toEqual([{ file: heavy.name, reason: `${heavy.name}: scoring broke off (out of memory)` }]);
    expect(sheet!.counted).toBe(2);
  });

  it.each([
    ['nothing', [], /found no files, allowed: recordings saved by Toehold/],
    ['no recordings', [chosen('a.txt', ''), chosen('b.jpg', '')], /found 2 files, none of them ending in \.json/],
    [
      'too many',
      Array.from({ length: MOST_FILES + 1 }, (_, i) => chosen(`${i}.json`, '')),
      /found 5001 files, allowed: at most 5000/,
    ],
  ])('is refused with the reason: %s', async (_, all, why) => {
    const bench = desk();
    await bench.session.desk.addClass({ files: all, folders: [] });
    const problem = bench.state.problem.value;
    expect(problem?.code === 'input' ? problem.error.message : '').toMatch(why);
    expect(bench.session.desk.classRoom.view.value.stage).toBe('empty');
  });

  it('opens an attempt on the bench and lays another beside it; the class stays on the desk', async () => {
    const bench = desk();
    await bench.session.desk.addClass({ files: files(), folders: [] });
    const [one, two] = Object.keys(content) as [string, string];
    await bench.session.desk.openOfClass(one, 3);
    await bench.result();
    expect(bench.state.finished.value!.file).toBe(one);
    expect(bench.state.cutAt.value).toBe(3);
    await bench.session.desk.besideOfClass(two);
    await bench.until(() => bench.state.otherCut.value !== null, 'the cut beside');
    expect(bench.state.other.value!.id).toBe(two);
    expect(bench.session.desk.classRoom.view.value.stage).toBe('done');
  });
});
