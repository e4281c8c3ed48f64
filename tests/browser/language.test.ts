import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { AXE, against } from './support/axe.ts';
import { launchChromium } from './support/chromium.ts';
import { type Site, serveGame } from './support/site.ts';

let browser: Browser;
let site: Site;

beforeAll(async () => {
  [browser, site] = await Promise.all([launchChromium(), serveGame()]);
});

afterAll(async () => {
  await Promise.all([browser?.close(), site?.close()]);
});

it('opens in the language the browser asks for, changes it on its first sheet, and has nothing against it by axe', async () => {
  const context = await browser.newContext({ locale: 'de-AT', serviceWorkers: 'block', bypassCSP: true });
  const page = await context.newPage();
  await page.goto(site.address);
  await page.getByRole('button', { name: 'Verstanden' }).waitFor();
  expect(await page.locator('html').getAttribute('lang')).toBe('de');
  await page.addScriptTag({ path: AXE });
  expect(await against(page)).toEqual([]);
  await page.getByTestId('language').selectOption('en');
  await page.getByRole('button', { name: 'Understood' }).waitFor();
  expect(await page.locator('html').getAttribute('lang')).toBe('en');
  await context.close();
});
