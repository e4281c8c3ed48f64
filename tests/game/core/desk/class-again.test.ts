/** A class taken up again, over weeks, side by side, and on paper with the command line's bytes. Everybody here is invented. */
import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { attemptFileName, exerciseDigest, rowsJsonl, sheetCsv } from '../../../../scoring/index.ts';
import { classPaper, classPdf, classSheet, scoreFolder } from '../../../../scoring/node/index.ts';
import { shortTee } from '../../../scoring/class/short-tee.ts';
import { MapStores } from '../../support/map-stores.ts';
import { chosen, TestBench } from '../../support/test-bench.ts';

const recordings = [3, 3.4, 3.8].map(shortTee);
const exercise = recordings[0]!.exercise!;
const files = recordings.map((recording, i) => ({
  name: attemptFileName({
    date: ['2026-03-12', '2026-03-16', '2026-03-17'][i]!,
    bench: 'b1',
    trainee: 'Ines Calder',
    exercise: 'short-tee',
    attempt: 1,
  }),
  text: JSON.stringify(recording),
}));
const handed = () => files.map(({ name, text }) => chosen(name, text));
const preferences = { exercises: [exercise] };
/** Scored once; every bench after the first takes the scores over. */
const stores = new MapStores();

describe('a class scored before', () => {
  it('is taken over byte for byte, unless a file, the program or what was kept is another', async () => {
    const first = new TestBench({ stores, preferences });
    await first.session.desk.addClass({ files: handed(), folders: [] });
    const again = new TestBench({ stores, preferences });
    const room = again.session.desk.classRoom;
    await again.session.desk.addClass({ files: handed(), folders: [] });
    expect(room.view.value).toMatchObject({ stage: 'done', known: 3, done: 3 });
    expect(again.hands).toHaveLength(1);
    expect(sheetCsv(room.view.value.sheet!)).toBe(sheetCsv(first.session.desk.classRoom.view.value.sheet!));

    const [key] = [...stores.scoreRecords.keys()];
    stores.scoreRecords.set(key!, { made: 'up' });
    const third = new TestBench({ stores, preferences });
    await third.session.desk.addClass({ files: handed(), folders: [] });
    expect(third.session.desk.classRoom.view.value.known).toBe(2);
  });
});

describe('a class on its sheet', () => {
  it('is saved with the bytes of the command line, as PDF too, and shows the change over weeks', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'toehold-class-'));
    for (const { name, text } of files) writeFileSync(join(folder, name), text);
    const scores = await scoreFolder(folder, { journal: null, workers: 1 });
    const sheet = classSheet(scores, new Set([exerciseDigest(exercise)!]));
    const bench = new TestBench({ stores, preferences });
    await bench.session.desk.addClass({ files: handed(), folders: [] });
    for (const kind of ['csv', 'jsonl', 'pdf'] as const) await bench.session.desk.saveClass(kind);
    const [csv, jsonl, pdf] = bench.saved.map((s) => s.content);
    expect(csv).toBe(sheetCsv(sheet));
    expect(jsonl).toBe(rowsJsonl(scores.scored));
    const paper = classPaper(sheet, folder);
    expect(paper.weeks?.head).toEqual(['trainee', 'exercise', 'device', 'from 2026-03-09', 'from 2026-03-16']);
    expect(paper.weeks!.rows[0]!.slice(3)).toEqual([
      expect.stringMatching(/; \d of 1$/),
      expect.stringMatching(/; \d of 2$/),
    ]);
    expect(Buffer.from(pdf as Uint8Array).equals(Buffer.from(await classPdf(paper)))).toBe(true);
  }, 60_000);

  it('lays any two of its attempts side by side', async () => {
    const bench = new TestBench({ stores, preferences });
    await bench.session.desk.addClass({ files: handed(), folders: [] });
    const both = bench.session.desk.openBoth(files[2]!.name, files[0]!.name);
    await bench.until(() => bench.state.other.value !== null, 'the one beside');
    await both;
    expect(bench.state.finished.value?.file).toBe(files[2]!.name);
    expect(bench.state.other.value?.id).toBe(files[0]!.name);
    await bench.session.trainees.forget(false);
    expect(stores.scoreRecords.size).toBe(0);
  });
});
