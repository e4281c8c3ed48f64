import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import {
  attemptFileName,
  classHtml,
  type Exercise,
  exerciseDigest,
  exerciseFileName,
  readExercise,
} from '../../scoring/index.ts';
import { classPaper, classSheet, rowsCsv, scoreFolder, sheetCsv } from '../../scoring/node/index.ts';
import { shortTee } from '../scoring/class/short-tee.ts';
import { BenchDriver, keep } from './support/bench.ts';
import { launchChromium } from './support/chromium.ts';
import { type Site, serveGame } from './support/site.ts';

// Tern Dock workshop and its trainees are invented.
const PEOPLE = [
  'Ines Calder',
  'Tomás Okafor',
  'Wren Hollis',
  'Pia Lindqvist',
  'Dov Arkady',
  'Sunniva Roe',
  '17',
  'שרה לוי',
];

let browser: Browser;
let site: Site;
let folder: string;
let paths: string[];
let exercise: Exercise;
let exercisePath: string;

beforeAll(async () => {
  [browser, site] = await Promise.all([launchChromium(), serveGame()]);
  folder = mkdtempSync(join(tmpdir(), 'toehold-week-'));
  const hands = Array.from({ length: 2 * PEOPLE.length }, (_, i) => shortTee(3 + 0.25 * i));
  exercise = hands[0]!.exercise!;
  exercisePath = join(folder, exerciseFileName(exercise));
  writeFileSync(exercisePath, JSON.stringify(exercise));
  paths = PEOPLE.flatMap((trainee, i) =>
    [1, 2].map((attempt) => {
      const day = { date: `2026-03-1${attempt}`, bench: `b${1 + (i % 2)}`, exercise: 'short-tee' };
      const path = join(folder, attemptFileName({ ...day, trainee, attempt }));
      writeFileSync(path, JSON.stringify(hands[2 * i + attempt - 1]));
      return path;
    }),
  );
  writeFileSync(paths[5]!, readFileSync(paths[5]!, 'utf8').slice(0, 3000));
}, 120_000);

afterAll(async () => {
  await Promise.all([browser?.close(), site?.close()]);
});

async function withBench(test: (bench: BenchDriver) => Promise<void>): Promise<void> {
  const bench = await BenchDriver.open(browser, site.address, { plain: true });
  try {
    await test(bench);
    expect(bench.complaints).toEqual([]);
  } finally {
    await bench.close();
  }
}

const button = (page: Page, name: string) => page.getByRole('button', { name, exact: true });

async function saved(page: Page, name: string): Promise<string> {
  const download = page.waitForEvent('download');
  await button(page, name).click();
  return readFileSync(await keep(await download), 'utf8');
}

describe('sixteen files on a stick', () => {
  it(
    'are two clicks from the three to see first; what is saved has the command line’s bytes, what is printed is one sheet',
    () =>
      withBench(async ({ page }) => {
        await button(page, 'Desk').click();
        const picker = page.waitForEvent('filechooser');
        await button(page, 'Choose files').click();
        await (await picker).setFiles([...paths, exercisePath]);
        const three = page.getByTestId('first-three');
        await three.waitFor({ timeout: 120_000 });
        const print = page.getByRole('dialog').getByRole('button', { name: 'Print', exact: true });
        await print.waitFor({ timeout: 240_000 });
        await page.getByText(/^Welding the three/).waitFor({ state: 'detached', timeout: 60_000 });

        const scores = await scoreFolder(folder, { journal: null });
        const sheet = classSheet(scores, new Set([exerciseDigest(exercise)!]));
        expect(await three.locator('h4').allInnerTexts()).toEqual(
          sheet.firstThree.map((first, i) => `${i + 1}. ${first.trainee}`),
        );
        expect(await three.locator('.first-cut:not(.waiting)').count()).toBe(sheet.firstThree.length);
        await page.getByText(/found text that is not JSON .*the file is cut off/).waitFor();
        expect(await saved(page, 'class table, CSV')).toBe(sheetCsv(sheet));
        expect(await saved(page, 'attempts, CSV')).toBe(rowsCsv(scores.scored));
        expect(await saved(page, 'class sheet, page')).toBe(classHtml(classPaper(sheet, folder)));

        await page.evaluate(() => {
          window.print = () => undefined;
        });
        await print.click();
        const printed = (await page.pdf({ preferCSSPageSize: true })).toString('latin1');
        expect(printed.match(/\/Type\s*\/Page\b/g)).toHaveLength(1);
        await page.evaluate(() => dispatchEvent(new Event('afterprint')));
        expect(await page.locator('#paper').count()).toBe(0);

        // Sorted, filtered, opened.
        await button(page, 'attempts').click();
        await page.getByPlaceholder('name, exercise, device, fault').fill('hollis');
        await button(page, 'Wren Hollis').click();
        expect(await page.locator('.class-table tbody tr:not(.attempts)').count()).toBe(1);
        await page.locator('.attempts li').first().getByRole('button', { name: 'Open' }).click();
        await page.getByTestId('verdict').waitFor({ timeout: 60_000 });
        await button(page, 'Desk').click();
        await three.waitFor();
      }),
    400_000,
  );
});

describe('an exercise made at the desk', () => {
  it(
    'is checked as it is typed, proved by robot hands, handed on as a link and a file, and printed on one sheet',
    () =>
      withBench(async ({ page }) => {
        await button(page, 'Desk').click();
        await button(page, 'Exercise').click();
        const field = (name: string) => page.getByRole('textbox', { name, exact: true });
        await field('title').fill('Short tee <b>5</b>');
        await field('joint long, mm').fill('30');
        await field('volts').fill('99');
        await page.getByText('found 99, allowed: 12 to 30 V').waitFor();
        expect(await button(page, 'Save as a file').isDisabled()).toBe(true);
        await field('volts').fill('19,5');
        await page.getByText('An exercise.', { exact: true }).waitFor();

        await button(page, 'Link').click();
        const link = await field('Link').inputValue();
        expect(link).toMatch(/#exercise=[\w-]+$/);
        await page.evaluate(() => {
          window.print = () => undefined;
        });
        await button(page, 'its sheet').click();
        const printed = (await page.pdf({ preferCSSPageSize: true })).toString('latin1');
        expect(printed.match(/\/Type\s*\/Page\b/g)).toHaveLength(1);
        await page.evaluate(() => dispatchEvent(new Event('afterprint')));

        const download = page.waitForEvent('download');
        await button(page, 'Save as a file').click();
        const path = await keep(await download);
        const exercise = readExercise(readFileSync(path, 'utf8'), path);
        expect(exercise.process.volts_V).toBe(19.5);

        await button(page, 'Prove it with robot hands').click();
        await page.locator('.proof .verdict').nth(1).waitFor({ timeout: 120_000 });
        await button(page, 'Stop').click();
        await page.getByText('Stopped.').waitFor();

        // Another page, as a trainee opens it.
        const other = await page.context().newPage();
        await other.goto(link);
        await other.locator('.pane[data-state="idle"]').waitFor();
        const shown = other.locator('.exercise select option:checked');
        await expect.poll(() => shown.textContent()).toBe('Short tee <b>5</b>');
        await other.getByTestId('open-file').setInputFiles({
          name: 'limits.json',
          mimeType: 'application/json',
          buffer: Buffer.from('{"format": "toehold-profile"}'),
        });
        await other.getByText(/limits\.json is an acceptance profile/).waitFor();
        expect(await shown.textContent()).toBe('Short tee <b>5</b>');
      }),
    300_000,
  );
});

describe('the next trainee', () => {
  it(
    'comes from a roster, stands on the screen and in what is saved, and is forgotten when asked',
    () =>
      withBench(async (bench) => {
        const { page } = bench;
        await bench.setNumber('length of joint', 20);
        await button(page, 'Desk').click();
        await button(page, 'Trainees').click();
        await page.getByRole('textbox', { name: 'Roster' }).fill('Ines Calder\nInes Calder');
        await button(page, 'Use this roster').click();
        await page
          .getByRole('dialog')
          .getByText(/line 2: found "Ines Calder", as on line 1/)
          .waitFor();
        await page.getByRole('dialog').getByRole('button', { name: 'Close' }).click();
        await page.getByRole('textbox', { name: 'Roster' }).fill('Name;Bench\nInés Calder;b2\nPia Lindqvist;\n');
        await button(page, 'Use this roster').click();
        await button(page, 'Next on the roster: Inés Calder').click();
        expect(await page.getByTestId('who').textContent()).toBe('Inés Calder, b2');

        await bench.weld((t_s) => (t_s > 1.2 ? null : { u_mm: 0, y_mm: 3 + 2 * t_s }));
        await bench.finish();
        await bench.verdict();
        const { path, recording } = await bench.save();
        expect(recording.trainee).toEqual({ name: 'Inés Calder', bench: 'b2' });
        expect(path).toMatch(/\d{4}-\d\d-\d\d_b2_inés-calder_free-attempt_01\.json$/);

        await page.getByTestId('who').click();
        await button(page, 'Next on the roster: Pia Lindqvist').waitFor();
        await button(page, 'Forget them, and remove the attempt that carries a name').click();
        await page.getByText('Nobody is named').waitFor();
        await page.reload();
        await page.locator('.pane[data-state="idle"]').waitFor();
        expect(await page.getByTestId('who').count()).toBe(0);
        const kept = await page.evaluate(() => JSON.stringify(localStorage));
        expect(kept).not.toContain('Calder');
      }),
    120_000,
  );
});
