import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { attemptFileName, classHtml } from '../../scoring/index.ts';
import { classPaper, classSheet, rowsCsv, scoreFolder, sheetCsv } from '../../scoring/node/index.ts';
import { MOUSE, weld } from '../scoring/welds.ts';
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

beforeAll(async () => {
  [browser, site] = await Promise.all([launchChromium(), serveGame()]);
  folder = mkdtempSync(join(tmpdir(), 'toehold-week-'));
  const hands = Array.from({ length: 2 * PEOPLE.length }, (_, i) =>
    weld({ joint: { length_mm: 30 }, device: MOUSE, weave: { length_mm: 4 + 0.5 * i, shelf_s: 0 } }),
  );
  paths = PEOPLE.flatMap((trainee, i) =>
    [1, 2].map((attempt) => {
      const day = { date: `2026-03-1${attempt}`, bench: `b${1 + (i % 2)}`, exercise: 'tee-inverted-v' };
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
        await (await picker).setFiles(paths);
        const three = page.getByTestId('first-three');
        await three.waitFor({ timeout: 120_000 });
        await button(page, 'Print').waitFor({ timeout: 240_000 });
        await page.getByText(/^Welding the three/).waitFor({ state: 'detached', timeout: 60_000 });

        const scores = await scoreFolder(folder, { journal: null });
        const sheet = classSheet(scores);
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
        await button(page, 'Print').click();
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
