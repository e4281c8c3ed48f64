import { mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import pino from 'pino';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openLab } from '../../scoring/lab/lab.ts';
import { serve } from '../../scoring/lab/serve.ts';
import { freePort } from '../lab/support/postgres.ts';
import { PASSWORD, SETTINGS, SETUP_CODE } from '../lab/support/school.ts';
import { BenchDriver } from './support/bench.ts';
import { launchChromium } from './support/chromium.ts';

let browser: Browser;
let folder: string;
let port: number;
let stop: () => Promise<void>;

/** The lab as `npm run lab` serves it, on a folder that outlives it. */
async function start(): Promise<void> {
  const lab = await openLab({
    folder,
    databaseUrl: null,
    threads: 1,
    slowest_s: 120,
    settings: SETTINGS,
    log: pino({ level: 'silent' }),
  });
  const served = await serve(lab, { host: '127.0.0.1', port, tls: null });
  stop = async () => {
    await served.close();
    await lab.stop();
  };
}

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'toehold-lab-'));
  port = await freePort();
  [browser] = await Promise.all([launchChromium(), start()]);
});
afterAll(async () => {
  await browser?.close();
  await stop?.();
  rmSync(folder, { recursive: true, force: true });
});

/** A short stroke up the joint. */
const stroke = (t_s: number) => (t_s < 1.5 ? { u_mm: 0, y_mm: 6 + t_s } : null);

// Tern Dock, its instructors and trainees are invented.
describe('a school lab from an empty folder', () => {
  it('takes an instructor to the first scored attempt, and a bench through an outage', async () => {
    const address = `http://127.0.0.1:${port}/`;
    const desk = await (await browser.newContext({ viewport: { width: 1100, height: 800 } })).newPage();
    const complaints: string[] = [];
    desk.on('pageerror', (error) => complaints.push(error.message));
    desk.on('console', (message) => {
      if (message.type() === 'error') complaints.push(message.text());
    });
    await desk.goto(`${address}lab/`);
    await desk.getByLabel('Code').fill(SETUP_CODE);
    await desk.getByLabel('Name').fill('Maud Tarrant');
    await desk.getByLabel(/Password/).fill(PASSWORD);
    await desk.getByRole('button', { name: 'Begin' }).click();
    await desk.getByLabel('New class').fill('Tern Dock, mornings');
    await desk.getByRole('button', { name: 'Make' }).click();
    const code = (await desk.locator('.classcode').textContent()) ?? '';
    await desk.getByRole('tab', { name: 'Roster' }).click();
    await desk.getByLabel(/One name a line/).fill('Ines Calder\nWren Hollis');
    await desk.getByRole('button', { name: 'Add to the roster' }).click();
    await desk.getByText('2 added, 0 there already.').waitFor();
    await desk.getByRole('tab', { name: 'Handed out' }).click();
    await desk.getByLabel('Exercise').selectOption('tee-inverted-v');
    await desk.getByRole('button', { name: 'Hand out' }).click();
    await desk.getByTestId('assignments').waitFor();
    await desk.getByRole('tab', { name: 'Attempts' }).click();

    const bench = await BenchDriver.open(browser, address, { plain: true });
    const { page } = bench;
    const joinAs = async (name: string): Promise<void> => {
      await page.getByRole('button', { name: 'Join your class' }).click();
      await page.getByLabel('Class code').fill(code.toLowerCase());
      await page.getByLabel(/Your name/).fill(name);
      await page.getByRole('button', { name: 'Join', exact: true }).click();
      await page.getByText(`Tern Dock, mornings · ${name}`).waitFor();
    };
    const take = () => page.locator('.classbar select').selectOption({ index: 1 });
    const state = page.getByTestId('class-state');
    await joinAs('Ines Calder');
    await take();
    await bench.weld(stroke);
    await bench.finish();
    await expect.poll(() => state.textContent(), { timeout: 60_000 }).toContain('1 attempt has arrived, 1 scored.');
    // The instructor's page hears of it by itself.
    await desk.getByText('1 attempt handed in, 1 scored. live').waitFor({ timeout: 30_000 });
    await expect.poll(() => desk.getByTestId('attempts').locator('tbody tr').allInnerTexts()).toHaveLength(1);
    expect(await desk.getByTestId('attempts').textContent()).toContain('Ines Calder');
    expect(bench.complaints).toEqual([]);
    expect(complaints).toEqual([]);

    // The lab goes; the bench welds on, and the page may even be closed to the trainee.
    await stop();
    await page.getByRole('button', { name: 'Weld another' }).click();
    await bench.weld(stroke);
    await bench.finish();
    await expect.poll(() => state.textContent(), { timeout: 60_000 }).toContain('1 attempt waits');
    await start();
    await expect.poll(() => state.textContent(), { timeout: 90_000 }).toContain('2 attempts have arrived, 2 scored.');
    await desk.getByText('2 attempts handed in, 2 scored. live').waitFor({ timeout: 60_000 });
    const receipts = join(folder, 'receipts');
    expect(readdirSync(receipts).flatMap((shard) => readdirSync(join(receipts, shard)))).toHaveLength(2);

    // On a shared computer nobody sends another's: Wren's stays nobody's until she comes.
    await page.getByRole('button', { name: 'Leave' }).click();
    await joinAs('Wren Hollis');
    await take();
    await expect.poll(() => state.textContent()).not.toContain('arrived');

    await desk.getByRole('tab', { name: 'Marks' }).click();
    const row = desk.getByTestId('marks').locator('tr').filter({ hasText: 'Ines Calder' });
    await row.getByLabel('Mark, 0 to 100').fill('70');
    await row.getByLabel('Reason').fill('Seen at the booth');
    await row.getByRole('button', { name: 'Set' }).click();
    await row.getByText('Seen at the booth (Maud Tarrant)').waitFor();
    await bench.close();
    await desk.context().close();
  }, 300_000);
});
