import { execFileSync } from 'node:child_process';
import {
  appendFileSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { AttemptRecording } from '../../../scoring/index.ts';
import { run } from '../../../scoring/node/cli/run.ts';
import {
  type FolderScores,
  JOURNAL_NAME,
  readAttemptName,
  rowsCsv,
  rowsJsonl,
  scoreFolder,
} from '../../../scoring/node/index.ts';
import { toehold } from '../../support/toehold.ts';
import { MOUSE, weld } from '../welds.ts';

// Tern Dock workshop, its trainees and their attempts are invented. Four hands over eight files; welds of a few millimetres.
const PEOPLE = ['ines-calder', 'tomas-okafor', 'wren-hollis', 'pia-lindqvist', 'sunniva-roe'];
const short = { joint: { length_mm: 30 }, device: MOUSE };
let root: string;
let folder: string;
let hands: string[];

beforeAll(() => {
  root = mkdtempSync(join(tmpdir(), 'toehold-batch-'));
  folder = join(root, 'monday');
  mkdirSync(folder);
  hands = [3, 3.5, 4, 4.5].map((length_mm) => JSON.stringify(weld({ ...short, weave: { length_mm, shelf_s: 0 } })));
  for (let i = 0; i < 8; i++) {
    const name = `2026-03-1${i % 3}_b${i % 5}_${PEOPLE[i % 5]}_inverted-v-tee_${String(1 + Math.floor(i / 5)).padStart(2, '0')}.json`;
    writeFileSync(join(folder, name), i === 7 ? hands[1]!.slice(0, 2000) : hands[i % 4]!);
  }
});
afterAll(() => rmSync(root, { recursive: true }));

/** Cells of a CSV as written by the library: quotes doubled, CRLF between rows. */
function cells(csv: string): string[][] {
  const rows: string[][] = [[]];
  for (const [, quoted, bare, end] of csv
    .replace(/^\ufeff/, '')
    .matchAll(/(?:"((?:[^"]|"")*)"|([^",\r\n]*))(,|\r\n|$)/g)) {
    rows.at(-1)!.push(quoted === undefined ? bare! : quoted.replaceAll('""', '"'));
    if (end === '\r\n') rows.push([]);
    if (end === '') break;
  }
  return rows.filter((row) => row.length > 1);
}

describe('a folder of eight files, one cut off', () => {
  let one: FolderScores;

  it('gives 7 rows and one named error', async () => {
    one = await scoreFolder(folder, { workers: 1, journal: null });
    expect(one.scored).toHaveLength(7);
    expect(one.bad).toHaveLength(1);
    expect(one.bad[0]!.reason).toMatch(/^2026-03-11_b2_wren-hollis_inverted-v-tee_02\.json: found .*cut off/);
    const names = one.scored.map((s) => s.file);
    expect(names).toEqual([...names].sort());
  });

  it('gives the same bytes with two workers', async () => {
    const two = await scoreFolder(folder, { workers: 2, journal: null });
    expect(rowsCsv(two.scored)).toBe(rowsCsv(one.scored));
    expect(rowsJsonl(two.scored)).toBe(rowsJsonl(one.scored));
    expect(two.bad).toEqual(one.bad);
  });

  it('writes the same rows as CSV and as JSON lines', () => {
    const [head, ...rows] = cells(rowsCsv(one.scored));
    const lines = rowsJsonl(one.scored).trimEnd().split('\n');
    expect(rows).toHaveLength(7);
    expect(lines).toHaveLength(7);
    const first = JSON.parse(lines[0]!) as Record<string, unknown>;
    expect(Object.keys(first)).toEqual(head);
    expect(head!.map((key, i) => [key, rows[0]![i]])).toEqual(
      Object.entries(first).map(([key, value]) => [key, value === null ? '' : String(value)]),
    );
    expect(first).toMatchObject({ date: '2026-03-10', bench: 'b0', trainee: 'ines-calder', attempt: 1 });
    expect(first.verdict).toBe('no verdict');
    expect(first.no_verdict_because).toMatch(/carry no weld/);
  });
});

describe('interrupted and started again', () => {
  it('finished files are not welded again, changed and unfinished ones are', async () => {
    const place = join(root, 'resume');
    mkdirSync(place);
    for (const [i, text] of hands.entries()) writeFileSync(join(place, `${i}.json`), text);
    const first = await scoreFolder(place, { workers: 1 });
    expect(first.known).toBe(0);
    const journal = join(place, JOURNAL_NAME);
    const lines = readFileSync(journal, 'utf8').trimEnd().split('\n');
    expect(lines).toHaveLength(4);
    // As an interruption leaves it: two files done, the third line half written.
    writeFileSync(journal, `${lines[0]}\n${lines[1]}\n${lines[2]!.slice(0, 900)}`);
    writeFileSync(join(place, '0.json'), hands[3]!);
    const again = await scoreFolder(place, { workers: 1 });
    expect(again.known).toBe(1);
    expect(again.scored[0]!.hand).toBe(again.scored[3]!.hand);
    expect(rowsCsv(again.scored.slice(1))).toBe(rowsCsv(first.scored.slice(1)));
    expect((await scoreFolder(place, { workers: 1 })).known).toBe(4);
    expect((await scoreFolder(place, { workers: 1, fresh: true })).known).toBe(0);
  });

  it('another judge does not take over the scores, and a journal of rubbish only costs time', async () => {
    const place = join(root, 'judge');
    mkdirSync(place);
    writeFileSync(join(place, 'a.json'), hands[0]!);
    expect((await toehold('score', place, '--workers', '1')).code).toBe(0);
    const other = await toehold('score', place, '--workers', '1', '--profile', 'iso-5817-b', '--json');
    expect(JSON.parse(other.out)).toMatchObject({ profile: 'iso-5817-b' });
    appendFileSync(join(place, JOURNAL_NAME), '\u0000{"judge":1}\n[]\nnull\n"x"\n');
    const third = await toehold('score', place, '--workers', '1');
    expect(third.out).toContain('(1 of them before)');
  });
});

describe('what a folder can hold besides', () => {
  it('is refused by name and reason, and the rest is scored', async () => {
    const place = join(root, 'tricks');
    mkdirSync(join(place, 'deeper'), { recursive: true });
    const put = (name: string, text: string | Uint8Array): void => writeFileSync(join(place, name), text);
    const good = hands[0]!;
    put('=1+1|x.json', good);
    put('zz.json', good.replace('"version":2', '"version":3'));
    put('units.json', good.replace(/"volts_V":[\d.]+/, '"volts_V":18000'));
    put('inch.json', good.replace('"plateA_mm"', '"plateA_in"'));
    put('nan.json', good.replace('"u":[', '"u":[NaN,'));
    put('infinite.json', good.replace('"u":[', '"u":[1e999,'));
    put('packed.json', Uint8Array.from([0x1f, 0x8b, 8, 0, 0, 0]));
    put('attempt.json.gz', Uint8Array.from([0x1f, 0x8b, 8, 0, 0, 0]));
    put('latin.json', Uint8Array.from([0x7b, 0xe9, 0x7d]));
    put('huge.json', Buffer.alloc(16_000_001, 0x20));
    put('deep.json', '['.repeat(200_000));
    put('notes.txt', 'not a recording, passed over');
    put('exercise.json', '{"format":"toehold-exercise"}');
    writeFileSync(join(root, 'outside.json'), good);
    symlinkSync(join(root, 'outside.json'), join(place, 'link.json'));
    symlinkSync('/dev/zero', join(place, 'device.json'));
    symlinkSync('nowhere', join(place, 'broken.json'));
    symlinkSync('loop.json', join(place, 'loop.json'));
    execFileSync('mkfifo', [join(place, 'pipe.json')]);
    const { scored, bad, folders, others } = await scoreFolder(place, { workers: 1, journal: null });
    expect(scored.map((s) => s.file)).toEqual(['=1+1|x.json']);
    expect(others).toEqual([{ file: 'exercise.json', kind: 'exercise' }]);
    expect(folders).toEqual(['deeper']);
    const why = Object.fromEntries(bad.map((b) => [b.file, b.reason]));
    const expected: Record<string, RegExp> = {
      'zz.json': /version: found 3, allowed: 1, 2; .*newer/,
      'units.json': /volts_V: found 18000, allowed: .*12 to 30/,
      'inch.json': /plateA_in: found .*no such field/,
      'nan.json': /not JSON/,
      'infinite.json': /poses\.u\[0\]: found Infinity/,
      'packed.json': /packed file \(gzip\)/,
      'attempt.json.gz': /packed file/,
      'latin.json': /not UTF-8/,
      'huge.json': /16000001 bytes, allowed: at most 16000000/,
      'deep.json': /not JSON/,
      'link.json': /link out of the folder/,
      'device.json': /link out of the folder/,
      'broken.json': /no such file/,
      'loop.json': /link/,
      'pipe.json': /device, pipe or socket/,
    };
    expect(Object.keys(why).sort()).toEqual(Object.keys(expected).sort());
    for (const [file, reason] of Object.entries(expected)) expect(why[file], file).toMatch(reason);
    // A name that a spreadsheet would calculate becomes text.
    expect(cells(rowsCsv(scored))[1]![0]).toBe("'=1+1|x.json");
  });

  it('a valid file that would take hours is named and left out, and the rest is scored', async () => {
    const place = join(root, 'huge');
    mkdirSync(place);
    const huge = JSON.parse(hands[0]!) as AttemptRecording;
    huge.simulation.joint = { ...huge.simulation.joint, length_mm: 300, plateA_mm: 20, plateB_mm: 20 };
    huge.simulation.cell_mm = 0.4;
    huge.exercise = null;
    const column = (value: (i: number) => number): number[] => Array.from({ length: 20_000 }, (_, i) => value(i));
    const none = column(() => 0);
    huge.poses = {
      u: none,
      y: column((i) => (i % 2) * 29_000),
      tip: none,
      work: none,
      travel: none,
      trigger: column(() => 1),
    };
    writeFileSync(join(place, 'huge.json'), JSON.stringify(huge));
    writeFileSync(join(place, 'short.json'), hands[0]!);
    const began = await toehold('score', place, '--workers', '1', '--no-journal');
    expect(began.code).toBe(2);
    expect(began.err).toMatch(
      /^huge\.json: found some [\d.]+ (min|h) of work on one core \(20000 poses, 300 mm of joint in cells of 0\.4 mm\), allowed: at most 5 min; --max-work/,
    );
    expect(began.out).toMatch(/^short\.json: no verdict/);
    const short = await toehold('score', join(place, 'short.json'), '--max-work', '0.0001');
    expect(short.err).toMatch(/short\.json: found some [\d.]+ s of work .* allowed: at most 0\.006 s/);
  });

  it('settings that are not the exercise’s are a named mismatch', async () => {
    const place = join(root, 'edited');
    mkdirSync(place);
    const edited = JSON.parse(hands[0]!) as { simulation: { process: { volts_V: number } } };
    edited.simulation.process.volts_V = 21;
    writeFileSync(join(place, 'a.json'), JSON.stringify(edited));
    const { scored } = await scoreFolder(place, { workers: 1, journal: null });
    const codes = scored[0]!.result.reasons.map((r) => r.code);
    expect(scored[0]!.result.verdict).toBe('no verdict');
    expect(codes).toContain('settings-edited');
    expect(codes).toContain('header-edited');
  });
});

describe('toehold score FOLDER', () => {
  it('writes whole files or none, and leaves with 2, 1 or 0', async () => {
    const place = join(root, 'codes');
    mkdirSync(place);
    writeFileSync(join(place, 'a.json'), hands[0]!);
    const out = join(root, 'rows.csv');
    expect((await toehold('score', place, '--out', out, '--workers', '1')).code).toBe(0);
    expect((await toehold('score', place, '--strict')).code).toBe(1);
    writeFileSync(join(place, 'b.json'), '');
    const bad = await toehold('score', place, '--out', out, '--strict');
    expect(bad.code).toBe(2);
    expect(bad.err).toBe('b.json: found an empty file, allowed: JSON text\n');
    expect(cells(readFileSync(out, 'utf8'))[1]![0]).toBe('a.json');
    const before = readFileSync(out, 'utf8');
    for (const [args, message] of [
      [['--out', join(root, 'rows.xlsx')], /--out: found .*\.csv or \.jsonl/],
      [['--workers', '0'], /--workers.*1 to 64/],
      [['--workers', '1.5'], /--workers/],
      [['--exercise', 'mine'], /--exercise: found "mine"/],
      [['--out', join(root, 'gone', 'rows.csv')], /no such file or folder/],
    ] as const) {
      const { code, err } = await toehold('score', place, ...args);
      expect(code).toBe(2);
      expect(err).toMatch(message);
    }
    expect(readFileSync(out, 'utf8')).toBe(before);
    expect(readdirSync(root).filter((name) => name.endsWith('.part'))).toEqual([]);
    mkdirSync(join(root, 'empty'));
    expect((await toehold('score', join(root, 'empty'))).err).toMatch(/folder without \.json files/);
  });

  it('shows how far it is on a terminal and keeps control characters out of it', async () => {
    const place = join(root, 'terminal');
    mkdirSync(place);
    writeFileSync(join(place, '\u001b[2Jevil.json'), '');
    writeFileSync(join(place, 'a.json'), hands[0]!);
    let err = '';
    let out = '';
    await run(['score', place, '--no-journal', '--workers', '1'], {
      out: (text) => {
        out += text;
      },
      err: (text) => {
        err += text;
      },
      live: true,
    });
    expect(err).toMatch(/\r=+ 2 of 2/);
    expect(err + out).not.toContain('\u001b');
    expect(err).toContain('\\u001b[2Jevil.json: found an empty file');
    expect(readdirSync(place)).not.toContain(JOURNAL_NAME);
  });
});

describe('a file name', () => {
  it.each([
    ['2026-03-14_b2_ines-calder_inverted-v-tee_03.json', ['2026-03-14', 'b2', 'ines-calder', 'inverted-v-tee', 3]],
    ['2026-02-30_b2_zoë-åkesson_lap_12.JSON', [null, 'b2', 'zoë-åkesson', 'lap', 12]],
    ['2026-03-14_b2_=cmd_lap_0.json', ['2026-03-14', 'b2', null, 'lap', null]],
    ['attempt.json', [null, null, null, null, null]],
    ['a_b_c_d_e_f.json', [null, null, null, null, null]],
  ])('%s', (file, parts) => {
    const n = readAttemptName(file);
    expect([n.date, n.bench, n.trainee, n.exercise, n.attempt]).toEqual(parts);
  });
});
