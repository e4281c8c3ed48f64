/**
 * Files of every wrong kind through the page: picked, dropped, as a folder, at the bench, the class, the editor, the shelf, the roster, and in a
 * link. Each is answered by its name, what was open stays, nothing in them runs. Needs the built game and a Chromium. Everybody is invented.
 */
import { existsSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { deflateRawSync } from 'node:zlib';
import { type Browser, chromium, type Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
// @ts-expect-error: a script without types, since it runs before anything is installed
import { serveFolder } from '../../game/tools/serve.mjs';
import { type AttemptRecording, exerciseNamed, profileNamed } from '../../scoring/index.ts';
import { steeringIn } from '../attacks/readers.ts';
import { BenchDriver } from '../browser/support/bench.ts';
import { chromiumPath, PLAINLY } from '../browser/support/chromium.ts';
import { shortTee } from '../scoring/class/short-tee.ts';

const GAME = fileURLToPath(new URL('../../dist/game/', import.meta.url));
const MARKUP = '<img src=x onerror=FORGED()><script>FORGED()</script>';

let browser: Browser;
let server: { close(): void; address(): unknown };
let address: string;
let honest: AttemptRecording;
let honestText: string;
let folder: string;

beforeAll(async () => {
  if (!existsSync(`${GAME}index.html`)) throw new Error('dist/game is missing: run `npm run build` first.');
  server = await serveFolder(GAME, 0);
  address = `http://localhost:${(server.address() as AddressInfo).port}/`;
  browser = await chromium.launch({ executablePath: chromiumPath(), args: PLAINLY });
  honest = shortTee(3);
  honestText = JSON.stringify(honest);
  folder = mkdtempSync(join(tmpdir(), 'toehold-hostile-'));
}, 60_000);
afterAll(async () => {
  await browser?.close();
  server?.close();
  rmSync(folder, { recursive: true, force: true });
});

const button = (page: Page, name: string) => page.getByRole('button', { name, exact: true });
const bytes = (text: string): Buffer => Buffer.from(text);

/** Runs what is done in a fresh page with an attempt on the bench; afterwards nothing hostile has run and the console is clean. */
async function atBench(work: (bench: BenchDriver, page: Page) => Promise<void>): Promise<void> {
  const bench = await BenchDriver.open(browser, address, { plain: true });
  const { page } = bench;
  const ran: string[] = [];
  page.on('dialog', (dialog) => {
    ran.push(dialog.message());
    void dialog.dismiss();
  });
  try {
    await page.exposeFunction('FORGED', () => void ran.push('FORGED'));
    await page
      .getByTestId('open-file')
      .setInputFiles({ name: 'kept.json', mimeType: 'application/json', buffer: bytes(honestText) });
    await bench.verdict();
    await work(bench, page);
    expect(ran).toEqual([]);
    expect(bench.complaints).toEqual([]);
  } finally {
    await bench.close();
  }
}

/** What the note says; it steers nothing, and is put away. */
async function answered(page: Page): Promise<string> {
  const note = page.locator('.problem:visible').last();
  await note.waitFor({ timeout: 30_000 });
  const said = (await note.locator('.why').textContent()) ?? '';
  expect(said.split('\n').map(steeringIn)).toEqual(said.split('\n').map(() => null));
  await note.getByRole('button', { name: 'Close', exact: true }).click();
  await page.locator('.problem').first().waitFor({ state: 'detached' });
  return said;
}

/** The attempt that lay on the bench still does. */
async function attemptStays(page: Page): Promise<void> {
  expect(await page.locator('.pane').getAttribute('data-state')).toBe('stopped');
  expect(await page.getByTestId('verdict').isVisible()).toBe(true);
}

/** Drops real files and folders on the page, as the desktop does. */
async function drop(bench: BenchDriver, paths: string[]): Promise<void> {
  const data = { items: [], files: paths, dragOperationsMask: 1 };
  for (const type of ['dragEnter', 'dragOver', 'drop'] as const)
    await bench.cdp.send('Input.dispatchDragEvent', { type, x: 500, y: 300, data });
}

const json = (value: unknown): Buffer => bytes(JSON.stringify(value));
const spoilt = (change: (r: Record<string, unknown>) => void): Buffer => {
  const copy = structuredClone(honest) as unknown as Record<string, unknown>;
  change(copy);
  return json(copy);
};

/** Name, bytes, and what has to be said besides the name. */
function hostileFiles(): [name: string, content: Buffer, says: RegExp][] {
  return [
    ['empty.json', bytes(''), /empty file/],
    ['spaces.json', bytes(' \n\t '), /empty file/],
    ['half.json', bytes(honestText.slice(0, 1500)), /the file is cut off/],
    ['nothing-but-zeros.json', Buffer.alloc(5000), /./],
    ['other-letters.json', Buffer.from([0xff, 0xfe, 0x41, 0x00]), /./],
    ['picture.json', Buffer.from('89504e470d0a1a0a0000000d49484452', 'hex'), /./],
    ['packed.json', Buffer.from('504b0304140000000800', 'hex'), /./],
    ['page.json', bytes(`<!doctype html><body>${MARKUP}`), /a page or a drawing/],
    ['deep.json', bytes('['.repeat(200_000)), /./],
    ['numbers.json', json(Array.from({ length: 20_000 }, (_, i) => i)), /./],
    ['null.json', bytes('null'), /./],
    ['proto.json', bytes('{"__proto__": {"format": "toehold-recording"}, "constructor": 1}'), /./],
    ['result.json', json({ format: 'toehold-result' }), /result/],
    ['limits.json', json(profileNamed('iso-5817-c')), /acceptance profile/],
    ['marks.coupon.json', json({ format: 'toehold-coupon' }), /./],
    ['book.json', json({ format: 'toehold-logbook', attempts: [] }), /logbook/],
    ['class.csv', bytes('name,plate\n=HYPERLINK("x"),1'), /table/],
    ['exercise.json', json({ format: 'toehold-exercise', title: MARKUP }), /./],
    ['version.json', spoilt((r) => Object.assign(r, { version: 999 })), /version/],
    ['negative.json', spoilt((r) => Object.assign(r.simulation as object, { cell_mm: -1 })), /cell_mm/],
    ['fields.json', spoilt((r) => Object.assign(r, { [MARKUP]: MARKUP })), /./],
    [
      'who.json',
      spoilt((r) => Object.assign(r, { trainee: { name: `${MARKUP}\u202egnp`.repeat(9), bench: 7 } })),
      /trainee/,
    ],
    [`${MARKUP.replaceAll('/', '')}.json`, bytes('{'), /cut off/],
    ['\u202egnp.nosj.json', bytes('{'), /u202e/],
    ['name\nFORGED: within.json', bytes('{'), /u000a/],
    ['=HYPERLINK("http:forged.example","x").json', bytes('{'), /cut off/],
    ['שרה לוי 🙂.json', bytes('{'), /cut off/],
    ['no-end', bytes('\u0000\u0001'), /./],
    [`${'long'.repeat(55)}.json`, bytes('{'), /cut off/],
  ];
}

/** The part of a name that has to be read in the answer: what steers in it is written out there. */
const nameSaid = (name: string): string => name.split(/\p{Cc}|\p{Cf}/u).at(-1)!;

describe('at the bench', () => {
  it(
    'each is answered by name, picked or dropped, and the attempt stays',
    () =>
      atBench(async (bench, page) => {
        for (const [name, content, says] of hostileFiles()) {
          await page.getByTestId('open-file').setInputFiles({ name, mimeType: 'application/json', buffer: content });
          const said = await answered(page);
          expect(said, name).toContain(nameSaid(name));
          expect(said, name).toMatch(says);
          await attemptStays(page);

          const path = join(folder, name.replaceAll('/', '').slice(0, 120));
          writeFileSync(path, content);
          await drop(bench, [path]);
          // Marks of a coupon open the coupon's sheet, which answers itself.
          if (name.endsWith('.coupon.json')) {
            const sheet = page.getByRole('dialog');
            await sheet.getByText(name, { exact: false }).first().waitFor();
            await sheet.getByRole('button', { name: 'Close' }).first().click();
          } else expect(await answered(page), name).toMatch(says);
          await attemptStays(page);
        }
      }),
    300_000,
  );

  it(
    'a file that is too large or vanishes while it is read is named',
    () =>
      atBench(async (bench, page) => {
        const large = join(folder, 'large.json');
        writeFileSync(large, Buffer.alloc(17_000_000, 0x20));
        await page.getByTestId('open-file').setInputFiles(large);
        expect(await answered(page)).toMatch(/^large\.json: found 17 MB/);

        await page.evaluate(() => {
          // A slow stick: what is pulled out in the meantime is no longer there.
          const read = Blob.prototype.arrayBuffer;
          Blob.prototype.arrayBuffer = async function () {
            await new Promise((resolve) => setTimeout(resolve, 700));
            return read.call(this);
          };
        });
        for (const way of ['picked', 'dropped']) {
          const path = join(folder, 'pulled-out.json');
          writeFileSync(path, honestText);
          if (way === 'picked') await page.getByTestId('open-file').setInputFiles(path);
          else await drop(bench, [path]);
          rmSync(path);
          expect(await answered(page), way).toMatch(/^pulled-out\.json: found a file that can no longer be read/);
          await attemptStays(page);
        }
      }),
    120_000,
  );

  it(
    'hostile words in a file that is whole are shown letter for letter',
    () =>
      atBench(async (bench, page) => {
        const title = `${MARKUP.slice(0, 34)} \u05e9\u05dc\u05d5\u05dd 🙂`;
        const exercise = { ...exerciseNamed('tee-inverted-v')!, name: 'own', title, story: MARKUP, teaches: MARKUP };
        const trainee = { name: '=HYPERLINK("x")<b>', bench: '\'>"b1' };
        await page.getByTestId('open-file').setInputFiles({
          name: 'words.json',
          mimeType: 'application/json',
          buffer: json({
            ...honest,
            exercise: { ...honest.exercise, title, story: MARKUP, teaches: MARKUP },
            trainee,
          }),
        });
        const chosen = page.locator('.exercise select option:checked');
        await expect.poll(() => page.locator('.exercise select').getAttribute('title')).toBe(MARKUP);
        await bench.verdict();
        await page
          .getByTestId('open-file')
          .setInputFiles({ name: 'own.exercise.json', mimeType: 'application/json', buffer: json(exercise) });
        await page.locator('.pane[data-state="idle"]').waitFor();
        expect(await chosen.textContent()).toBe(title);
        expect(await page.locator('.story').textContent()).toBe(MARKUP);
        await button(page, 'Attempts').click();
        await page.getByRole('dialog').getByText(title, { exact: false }).first().waitFor();
      }),
    120_000,
  );
});

describe('at the class', () => {
  it(
    'a stick of a thousand files with three attempts in it is sorted out, and every one that is none is named',
    () =>
      atBench(async (bench, page) => {
        const stick = join(folder, 'stick');
        mkdirSync(join(stick, 'older'), { recursive: true });
        const put = (name: string, content: Buffer | string): void => writeFileSync(join(stick, name), content);
        const people = ['ines-calder', 'שרה-לוי', 'tomas-okafor'];
        people.forEach((who, i) => {
          put(`2026-03-1${i}_b1_${who}_short-tee_01.json`, JSON.stringify(shortTee(3 + 0.4 * i)));
        });
        put('short-tee.exercise.json', JSON.stringify(honest.exercise));
        for (const [name, content] of hostileFiles()) put(name.replaceAll('/', '').slice(0, 120), content);
        for (let i = 0; i < 970; i++) put(`junk-${i}.json`, i % 3 === 0 ? '' : honestText.slice(0, 40 * (i % 50)));
        put('holiday.jpg', 'no picture');
        put('old.zip', 'PK');

        await drop(bench, [stick]);
        await page.getByText('3 trainees', { exact: false }).first().waitFor({ timeout: 120_000 });
        await page
          .getByRole('dialog')
          .getByRole('button', { name: 'Print', exact: true })
          .waitFor({ timeout: 240_000 });
        const lists = (await page.locator('.class-lists li, .class-lists p').allTextContents()).join('\n');
        for (const [name] of hostileFiles())
          if (name !== 'class.csv' && name !== 'no-end') expect(lists, name).toContain(nameSaid(name).slice(0, 60));
        for (const name of ['junk-0.json', 'junk-969.json', 'old.zip', 'older/', 'holiday.jpg', 'class.csv', 'no-end'])
          expect(lists).toContain(name);
        expect(lists).toContain('short-tee.exercise.json: an exercise');
        expect(lists.split('\n').filter((line) => steeringIn(line) !== null)).toEqual([]);
        expect(await page.locator('.class-table tbody tr').count()).toBe(3);

        // What was open is kept through further hostile drops; two files of one name from two folders are both named.
        for (const at of ['left', 'right']) {
          mkdirSync(join(folder, at), { recursive: true });
          writeFileSync(
            join(folder, at, '2026-03-12_b2_pia-lindqvist_short-tee_01.json'),
            JSON.stringify(shortTee(at === 'left' ? 4.4 : 5)),
          );
        }
        await drop(bench, [join(folder, 'left'), join(folder, 'right')]);
        await page.getByText('4 trainees', { exact: false }).first().waitFor({ timeout: 120_000 });
        await button(page, 'Pia Lindqvist').click();
        await expect.poll(() => page.locator('.attempts li').count(), { timeout: 30_000 }).toBe(2);
        await button(page, 'Back to the bench').click();
        await attemptStays(page);
      }),
    500_000,
  );

  it(
    'a folder that is empty, or of nothing that counts, is answered and takes nothing away',
    () =>
      atBench(async (bench, page) => {
        const empty = join(folder, 'empty');
        const notes = join(folder, 'notes');
        mkdirSync(empty, { recursive: true });
        mkdirSync(notes, { recursive: true });
        writeFileSync(join(notes, 'shopping.txt'), 'grinding discs');
        await drop(bench, [empty]);
        await page
          .getByRole('dialog')
          .locator('.problem')
          .waitFor()
          .catch(async () => {
            throw new Error(
              `no word of it: ${(await page.getByRole('dialog').allTextContents()).join().slice(0, 2000)}`,
            );
          });
        expect(await answered(page)).toMatch(/found no files, allowed: recordings saved by Toehold/);
        await drop(bench, [notes]);
        expect(await answered(page)).toMatch(/found 1 files?, none of them ending in \.json/);
        await page.getByTestId('class-folder').setInputFiles(notes);
        expect(await answered(page)).toMatch(/none of them ending in \.json/);
        await button(page, 'Back to the bench').click();
        await attemptStays(page);
      }),
    120_000,
  );
});

describe('at the rest of the desk and the shelf', () => {
  it(
    'limits, roster, readings and logbook answer a wrong file by name, and what was typed stays',
    () =>
      atBench(async (_, page) => {
        await button(page, 'Desk').click();
        await button(page, 'Exercise').click();
        await page.getByRole('textbox', { name: 'title', exact: true }).fill('Kept title');
        const give = (testid: string, name: string, content: Buffer) =>
          page.getByTestId(testid).setInputFiles({ name, mimeType: '', buffer: content });
        const all = hostileFiles().filter(([name]) => !/^limits/.test(name));
        for (const [name, content] of all) {
          await give('profile-file', name, content);
          expect(await answered(page), name).toContain(nameSaid(name));
        }
        expect(await page.getByRole('textbox', { name: 'title', exact: true }).inputValue()).toBe('Kept title');

        await button(page, 'Trainees').click();
        await page.getByRole('textbox', { name: 'Roster' }).fill('Ines Calder');
        await button(page, 'Use this roster').click();
        for (const [name, content] of all.filter(([n]) =>
          ['empty.json', 'nothing-but-zeros.json', 'other-letters.json'].includes(n),
        )) {
          await give('roster-file', name, content);
          expect(await answered(page), name).toContain(name);
        }
        await page.getByText('Ines Calder').first().waitFor();

        await button(page, 'Coupons').click();
        for (const [name, content] of all.filter(([n]) => /^(half|empty|deep|result|null)\.json$/.test(n))) {
          await give('readings-file', name, content);
          expect(await answered(page), name).toContain(name);
        }
        await button(page, 'Exercise').click();
        expect(await page.getByRole('textbox', { name: 'title', exact: true }).inputValue()).toBe('Kept title');
        await button(page, 'Back to the bench').click();

        await button(page, 'Attempts').click();
        await button(page, 'Logbook').click();
        for (const [name, content] of all.filter(([n]) => !/^book/.test(n))) {
          await give('take-logbook', name, content);
          expect(await answered(page), name).toContain(nameSaid(name));
        }
        await page.getByRole('dialog').getByRole('button', { name: 'Close' }).first().click();
        await attemptStays(page);
      }),
    200_000,
  );
});

describe('in a link', () => {
  const packed = (text: string | Buffer): string => deflateRawSync(text).toString('base64url');

  it.each([
    ['nothing', ''],
    ['letters that are none', '%E0%A4%A'],
    ['mere bytes', Buffer.from([1, 2, 3, 250]).toString('base64url')],
    ['half of one', packed(JSON.stringify(exerciseNamed('tee-inverted-v'))).slice(0, 300)],
    ['what unpacks to more than fits', packed(Buffer.alloc(60_000_000))],
    ['no UTF-8', packed(Buffer.from([0xff, 0xfe, 0xfd]))],
    ['text', packed(`<script>FORGED()</script>`)],
    ['another kind', packed(JSON.stringify({ format: 'toehold-profile' }))],
    ['an exercise with a field too much', packed(JSON.stringify({ ...exerciseNamed('tee-inverted-v'), [MARKUP]: 1 }))],
  ])(
    '%s is answered, and the attempt stays',
    (_, letters) =>
      atBench(async (_bench, page) => {
        await page.evaluate((hash) => {
          location.hash = hash;
        }, `#exercise=${letters}`);
        expect(await answered(page)).toMatch(/link/i);
        await attemptStays(page);
        expect(new URL(page.url()).hash).toBe('');
      }),
    60_000,
  );
});
