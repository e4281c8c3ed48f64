import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { BenchDriver } from './support/bench.ts';
import { launchChromium } from './support/chromium.ts';
import { polyline } from './support/paths.ts';
import { SINGLE_FILE } from './support/site.ts';

const PATH = [
  { u_mm: 0, y_mm: 3 },
  { u_mm: 0, y_mm: 20 },
];

let browser: Browser;

beforeAll(async () => {
  browser = await launchChromium();
});

afterAll(async () => {
  await browser?.close();
});

describe('the single file, opened by double click with no network', () => {
  it('asks for nothing from anywhere', () => {
    const page = readFileSync(fileURLToPath(SINGLE_FILE), 'utf8');
    expect(page).not.toMatch(/<(script|link|img)[^>]+(src|href)="(?!data:)/);
    // What sets PDF asks whether there is one; made is none, since a page opened from a file may not.
    expect(page.match(/\bnew SharedArrayBuffer\b/)).toBeNull();
  });

  it('welds, cuts, saves and opens again to the same digits', async () => {
    const bench = await BenchDriver.open(browser, SINGLE_FILE, { exercise: 'straight-run', offline: true });
    const asked: string[] = [];
    bench.page.on('request', (request) => {
      if (!/^(file|blob|data):/.test(request.url())) asked.push(request.url());
    });
    await bench.setNumber('length of joint', 25);
    await bench.weld(polyline(PATH, 2.6, 1.2));
    await bench.finish();
    const verdict = await bench.verdict();
    const lines = await bench.lines();
    expect(lines.length).toBeGreaterThan(5);
    await bench.page.locator('.readings').waitFor();
    const { path } = await bench.save();
    await bench.page.getByRole('button', { name: 'Weld another' }).click();
    await bench.openFile(path);
    expect(await bench.verdict()).toBe(verdict);
    expect(await bench.lines()).toEqual(lines);
    // Both languages lie in the file, for the page and for its Worker.
    await bench.page.getByRole('button', { name: 'Aids' }).click();
    await bench.page.getByTestId('language').selectOption('de');
    await bench.page.locator('html[lang="de"]').waitFor();
    await bench.page.keyboard.press('Escape');
    expect(await bench.verdict()).toMatch(/^(innerhalb|außerhalb|zu knapp|ohne Urteil)$/);
    await bench.page
      .locator('.plates svg text', { hasText: /Schnitt bei/ })
      .first()
      .waitFor();
    expect(asked).toEqual([]);
    expect(bench.complaints).toEqual([]);
    await bench.close();
  }, 180_000);
});
