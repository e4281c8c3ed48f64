import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import { parseHTML } from 'linkedom';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type AttemptPaper, type AttemptRecording, attemptHtml, attemptPaper } from '../../../scoring/index.ts';
import { run } from '../../../scoring/node/cli/run.ts';
import {
  attemptPdf,
  classHtml,
  classPaper,
  classPdf,
  classSheet,
  pngOf,
  scoreFolder,
} from '../../../scoring/node/index.ts';
import { byMouse, weld } from '../welds.ts';

// Tern Dock workshop and its trainees are invented.
const NAME = '2026-03-14_b2_ines-calder_inverted-v-tee_03.json';
let recording: AttemptRecording;
let paper: AttemptPaper;
let folder: string;
let asked: string;
beforeAll(() => {
  recording = weld({ joint: { length_mm: 30 }, weave: { length_mm: 24, shelf_s: 0.3 }, ...byMouse(2) });
  paper = attemptPaper(recording, NAME);
  folder = mkdtempSync(join(tmpdir(), 'toehold-report-'));
  writeFileSync(join(folder, NAME), JSON.stringify(recording));
  writeFileSync(join(folder, 'half.json'), '{');
  // The class is asked for this exercise; without a word only the ready ones count.
  asked = join(folder, '..', `${basename(folder)}.exercise.json`);
  writeFileSync(asked, JSON.stringify(recording.exercise));
});
afterAll(() => {
  rmSync(folder, { recursive: true });
  rmSync(asked);
});

const pages = (pdf: Uint8Array): number =>
  Buffer.from(pdf)
    .toString('latin1')
    .match(/\/Type \/Page\b/g)?.length ?? 0;

describe('the report of one attempt', () => {
  it('carries everything an instructor needs, in words', () => {
    const { document } = parseHTML(attemptHtml(paper));
    const text = document.body.textContent ?? '';
    expect(document.querySelector('.verdict')!.textContent).toContain(paper.verdict);
    expect(document.querySelector('.first')!.textContent).toContain(paper.first!.text);
    expect(document.querySelectorAll('tbody tr')).toHaveLength(paper.lines.length);
    expect(paper.lines.length).toBeGreaterThan(4);
    for (const line of paper.lines) {
      for (const piece of [line.what, line.reading, line.limit, line.rule]) expect(text).toContain(piece);
    }
    expect(text).toContain('tip-to-work, work angle, travel angle: not measured with this device (mouse)');
    for (const piece of ['Ines Calder', '2026-03-14, b2', 'porosity', 'A study aid', 'Read by, initials', 'tied in']) {
      expect(text).toContain(piece);
    }
    expect(document.querySelectorAll('td.blank')).toHaveLength(paper.lines.length);
  });

  it('is black and white, and asks for nothing from elsewhere', () => {
    const html = attemptHtml(paper);
    for (const [colour] of html.matchAll(/#[0-9a-f]{6}\b/gi)) {
      expect(colour.slice(1, 3) === colour.slice(3, 5) && colour.slice(3, 5) === colour.slice(5, 7), colour).toBe(true);
    }
    expect(html).not.toMatch(/<script|<link|<img|url\(["']?http|@import/);
    expect(html).toContain('@page { size: A4');
  });

  it('cannot be written into by a file name', () => {
    const html = attemptHtml({ ...paper, file: '<script>alert(1)</script>"\'', notes: ['<b onclick="x">'] });
    expect(html).not.toContain('<script');
    expect(html).not.toContain('<b onclick');
  });

  it('is one page of PDF, the same bytes each time', async () => {
    const pdf = await attemptPdf(paper);
    expect(Buffer.from(pdf.slice(0, 5)).toString()).toBe('%PDF-');
    expect(pages(pdf)).toBe(1);
    expect(Buffer.compare(pdf, await attemptPdf(attemptPaper(recording, NAME)))).toBe(0);
    const long = await attemptPdf({ ...paper, lines: Array.from({ length: 40 }, () => paper.lines[0]!) });
    expect(pages(long)).toBeGreaterThan(1);
  });

  it('cuts where it is told to, and refuses a cut off the joint', () => {
    expect(attemptPaper(recording, NAME, { at_mm: 7 }).cut).toMatchObject({ y_mm: 7, why: 'as asked for' });
    expect(() => attemptPaper(recording, NAME, { at_mm: 31 })).toThrow(/--at: found 31, allowed: 0 to 30 mm/);
  });

  it('draws its cut as a PNG', async () => {
    const png = Buffer.from(await pngOf(paper.cut.svg, 1));
    const [, width, height] = /viewBox="0 0 ([\d.]+) ([\d.]+)"/.exec(paper.cut.svg)!.map(Number);
    expect(png.subarray(1, 4).toString()).toBe('PNG');
    expect(Math.abs(png.readUInt32BE(16) - width!)).toBeLessThanOrEqual(1);
    expect(Math.abs(png.readUInt32BE(20) - height!)).toBeLessThanOrEqual(1);
  });
});

describe('the class report', () => {
  it('is set as HTML and PDF with bad files named, the same bytes each time', async () => {
    const scores = await scoreFolder(folder, { workers: 1, journal: null });
    const counted = new Set([scores.scored[0]!.exercise!]);
    const set = classPaper(classSheet(scores, counted), folder);
    expect(set.first.map((f) => f.who)).toEqual(['1. Ines Calder']);
    const { document } = parseHTML(classHtml(set));
    const text = document.body.textContent ?? '';
    for (const piece of ['Ines Calder', 'half.json: found text that is not JSON', 'Nobody is ranked', 'A study aid']) {
      expect(text).toContain(piece);
    }
    const pdf = await classPdf(set);
    expect(pages(pdf)).toBe(1);
    expect(Buffer.compare(pdf, await classPdf(classPaper(classSheet(scores, counted), folder)))).toBe(0);
  });
});

describe('toehold report, sheet and schema', () => {
  const toehold = async (...args: string[]): Promise<{ code: number; out: string; err: string }> => {
    const said = { out: '', err: '' };
    const code = await run(args, {
      out: (text) => {
        said.out += text;
      },
      err: (text) => {
        said.err += text;
      },
    });
    return { code, ...said };
  };

  it('write what they are asked for', async () => {
    const [pdf, strip, csv] = ['r.pdf', 's.svg', 'c.csv'].map((n) => join(folder, n)) as [string, string, string];
    expect((await toehold('report', join(folder, NAME), '--out', pdf, '--strip', strip)).code).toBe(0);
    expect(readFileSync(pdf).subarray(0, 5).toString()).toBe('%PDF-');
    expect(readFileSync(strip, 'utf8')).toMatch(/^<svg .*<\/svg>$/s);
    // half.json cannot be read: named, the sheet written all the same, exit code 2.
    const sheet = await toehold('sheet', folder, '--no-journal', '--workers', '1', '--out', csv, '--count', asked);
    expect(sheet.code).toBe(2);
    expect(sheet.err).toContain('half.json');
    expect(readFileSync(csv, 'utf8')).toContain('Ines Calder');
    expect(JSON.parse((await toehold('schema', 'profile')).out)).toMatchObject({ $id: 'urn:toehold:profile:1' });
  });

  it.each([
    [['report', 'a.json'], /at least one of --out, --cut, --strip/],
    [['report', 'a.json', '--out', 'a.doc'], /--out: found "a\.doc", allowed: .*\.html or \.pdf/],
    [['report', 'a.json', '--cut', 'constructor'], /--cut: found/],
    [['report', 'gone.json', '--out', 'a.pdf'], /gone\.json: found no such file/],
    [['sheet', 'gone'], /gone: found no such file or folder/],
    [['sheet', '.', '--out', 'a.docx'], /--out: found .*\.html, \.pdf or \.csv/],
    [['schema', 'everything'], /allowed: recording, exercise, profile, result/],
  ])('refuse %j with 2', async (args, message) => {
    const { code, err } = await toehold(...args);
    expect(code).toBe(2);
    expect(err).toMatch(message);
  });
});
