/** After the verdict: the first sentence with its proof, one thing tried on one's own attempt, and the logbook, as a user meets them. */
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { judge, weld } from '../scoring/welds.ts';
import { BenchDriver } from './support/bench.ts';
import { launchChromium } from './support/chromium.ts';
import { type Site, serveGame } from './support/site.ts';

let browser: Browser;
let site: Site;
let bench: BenchDriver;
let page: Page;

/** Too little metal for the size asked, by a hand as shown: more wire mends it, and a slower climb. */
const recording = weld({
  joint: { plateA_mm: 5, plateB_mm: 5, length_mm: 30 },
  process: { feed_mpmin: 4.4, volts_V: 18.5 },
  weave: { travel_mmps: 2.4, shelf_s: 0.4 },
  leg_mm: 5.5,
});
const hand = { ...recording, origin: { kind: 'hand' as const } };
const result = judge(recording);

beforeAll(async () => {
  [browser, site] = await Promise.all([launchChromium(), serveGame()]);
  bench = await BenchDriver.open(browser, site.address, { viewport: { width: 1366, height: 768 } });
  page = bench.page;
  await page.getByTestId('open-file').setInputFiles({
    name: 'attempt.json',
    mimeType: 'application/json',
    buffer: Buffer.from(JSON.stringify(recording)),
  });
  await bench.verdict();
});

afterAll(async () => {
  expect(bench.complaints).toEqual([]);
  await Promise.all([browser?.close(), site?.close()]);
});

describe('the first sentence', () => {
  it('is tried while the page goes on, and then stands with what came of it', async () => {
    const proof = page.getByTestId('proof');
    await proof.waitFor();
    // The bench answers meanwhile: the cutting line moves and the cut is drawn anew.
    const title = page.locator('title', { hasText: /^Cut A–A at/ }).first();
    const before = await title.textContent();
    await page.getByRole('slider', { name: /cut/i }).first().focus();
    await page.keyboard.press('ArrowUp');
    await page.waitForFunction(
      (was) =>
        [...document.querySelectorAll('title')].some((t) => /^Cut A–A at/.test(t.textContent) && t.textContent !== was),
      before,
    );
    await page.locator('[data-testid="proof"]:not([data-standing="trying"])').waitFor({ timeout: 90_000 });
    const standing = await proof.getAttribute('data-standing');
    const note = (await proof.textContent()) ?? '';
    const first = ((await page.getByTestId('first').textContent()) ?? '').trim();
    expect(note).toMatch(/Welded again with your own hand and one thing changed|No single change mends it/);
    // Sentence and proof never say opposite things: one that gave way is no longer on the page.
    const own = result.advice[0]!.text;
    expect(first.startsWith(own)).toBe(standing !== 'replaced');
  }, 120_000);

  it('leaves the foot of the joint free on a phone, and so does what is said about storage', async () => {
    await page.setViewportSize({ width: 390, height: 844 });
    const foot = (await bench.aim())({ u_mm: 0, y_mm: 2 });
    const note = page.locator('.notes .notice');
    await note.waitFor();
    const box = (await note.boundingBox())!;
    expect(box.y + box.height).toBeLessThan(foot.y - 40);
    await page.setViewportSize({ width: 1366, height: 768 });
  });

  it('goes with the piece', async () => {
    await page.locator('.exercise select').selectOption('straight-run');
    await page.locator('.pane[data-state="idle"]').waitFor();
    expect(await page.getByTestId('proof').count()).toBe(0);
  });
});

describe('what if', () => {
  it('welds the attempt again with what is chosen and lays cut and readings beside', async () => {
    await page.getByTestId('open-file').setInputFiles({
      name: 'attempt.json',
      mimeType: 'application/json',
      buffer: Buffer.from(JSON.stringify(recording)),
    });
    await bench.verdict();
    const select = page.getByLabel('What if');
    const options = await select.locator('option').allInnerTexts();
    expect(options).toContain('0.25 m/min more wire');
    await select.selectOption({ label: '0.25 m/min more wire' });
    // First the stretch about the cut, then the whole piece with its readings.
    await page.getByText(/welded so from 13 mm below the cut/).waitFor({ timeout: 30_000 });
    await page.getByTestId('beside').getByText('Yours, but 0.25 m/min more wire').waitFor({ timeout: 60_000 });
    await page.getByText(/hatched where the faces differ/).waitFor();
    expect(await page.locator('.lines thead th').allInnerTexts()).toContain('changed');
    await page.getByRole('button', { name: 'A step further' }).click();
    await page.getByTestId('beside').getByText('Yours, but 0.5 m/min more wire').waitFor({ timeout: 60_000 });
    await select.selectOption({ value: '' });
    await page.getByTestId('beside').waitFor({ state: 'detached' });
  }, 150_000);
});

describe('the logbook', () => {
  it('takes attempts in from a file, draws each reading with its limit, and opens one from its bar', async () => {
    const made = (n: number) => ({
      id: `own-${n}`,
      made_ms: Date.UTC(2026, 2, 2, 9, n),
      title: hand.exercise?.title ?? null,
      recording: hand,
      result,
    });
    const book = { format: 'toehold-logbook', version: 1, attempts: [made(1), made(2)] };
    await page.getByRole('button', { name: /^Attempts/ }).click();
    await page.getByText('Logbook', { exact: true }).click();
    await page.getByTestId('take-logbook').setInputFiles({
      name: 'book.json',
      mimeType: 'application/json',
      buffer: Buffer.from(JSON.stringify(book)),
    });
    await page.getByText('2 attempts taken in').waitFor();
    await page.getByText('2 attempts, 0 within.').waitFor();
    const charts = page.locator('.charts li');
    expect(await charts.count()).toBe(new Set(result.lines.map((l) => l.measure)).size + 1);
    expect(await charts.first().locator('a.bar').count()).toBe(2);
    await charts.first().locator('a.bar').last().click();
    expect(await page.locator('.logbook').count()).toBe(0);
    await bench.verdict();
  }, 120_000);
});
