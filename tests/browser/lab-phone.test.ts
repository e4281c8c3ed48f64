import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import pino from 'pino';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Lab, openLab } from '../../scoring/lab/lab.ts';
import { type Served, serve } from '../../scoring/lab/serve.ts';
import { bytesOf, shortAttempt, shortExercise } from '../lab/support/attempts.ts';
import { joined, PASSWORD, Person, SETTINGS, SETUP_CODE } from '../lab/support/school.ts';
import { launchChromium } from './support/chromium.ts';

const CLASS = 'Tern Dock, mornings';
const PHONE = { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true };

let browser: Browser;
let folder: string;
let lab: Lab;
let served: Served;
let address: string;
let code: string;

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'toehold-lab-'));
  const log = pino({ level: 'silent' });
  const settings = { ...SETTINGS, requestsAMinute: 6000 };
  lab = await openLab({ folder, databaseUrl: null, threads: 1, slowest_s: 120, settings, log });
  served = await serve(lab, { host: '127.0.0.1', port: 0, tls: null });
  address = `http://127.0.0.1:${served.port}/`;
  const maud = new Person(lab);
  await maud.must('POST', '/api/setup', { code: SETUP_CODE, name: 'Maud Tarrant', password: PASSWORD });
  await maud.must('POST', '/api/instructors', { name: 'Ottoline Wetherfield-Aske', password: PASSWORD });
  const klass = await maud.must('POST', '/api/classes', { name: CLASS });
  code = String(klass.code);
  const names = ['Ines Calder', 'Bartholomew Featherstonehaugh-Penrose', 'Wren Hollis'];
  await maud.must('POST', `/api/classes/${klass.id}/roster`, { csv: names.join('\n') });
  const given = { opens: new Date(Date.now() - 1000).toISOString(), closes: null, mostAttempts: null };
  const out = await maud.must('POST', `/api/classes/${klass.id}/assignments`, { exercise: shortExercise(), ...given });
  for (const [n, name] of names.entries()) {
    const trainee = await joined(lab, code, name);
    expect((await trainee.hand(String(out.id), bytesOf(shortAttempt(n)))).status).toBe(200);
  }
  browser = await launchChromium();
}, 120_000);
afterAll(async () => {
  await browser?.close();
  await served?.close();
  await lab?.stop();
  rmSync(folder, { recursive: true, force: true });
});

/** What is wider than the screen, and what a thumb would miss; the page's own words for each. */
async function faultsOf(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const named = (e: Element): string =>
      `${e.tagName} ${(e.getAttribute('aria-label') ?? e.textContent ?? '').slice(0, 40)}`;
    const found = document.documentElement.scrollWidth > innerWidth ? ['the page is wider than the screen'] : [];
    for (const e of document.querySelectorAll('.labdesk *')) {
      const { width, right, height } = e.getBoundingClientRect();
      if (width === 0) continue;
      if (right > innerWidth + 1) found.push(`${named(e)} ends at ${Math.round(right)}`);
      // 24 px is the least by WCAG 2.2, 2.5.8.
      if (e.matches('button, a, input, select, textarea, summary') && height < 24)
        found.push(`${named(e)} is ${height} high`);
    }
    return found;
  });
}

// The school is invented.
describe('the lab on a telephone', () => {
  let phone: BrowserContext;
  it('every page of an instructor fits, and everything on it can be found by a thumb', async () => {
    phone = await browser.newContext(PHONE);
    const page = await phone.newPage();
    await page.goto(`${address}lab/`);
    await page.getByLabel('Name').fill('Maud Tarrant');
    await page.getByLabel(/Password/).fill(PASSWORD);
    expect(await faultsOf(page)).toEqual([]);
    await page.getByRole('button', { name: 'Sign in' }).tap();
    const staff = page.getByTestId('instructors');
    await staff.getByRole('button', { name: 'New password' }).tap();
    await staff.getByRole('button', { name: 'Remove' }).tap();
    await page.getByText('Change your password').tap();
    expect(await faultsOf(page)).toEqual([]);
    await page.getByRole('button', { name: CLASS }).tap();
    await page.getByText('3 attempts handed in, 3 scored.').waitFor({ timeout: 60_000 });
    for (const tab of ['Roster', 'Handed out', 'Marks', 'Class table', 'Records', 'Attempts']) {
      await page.getByRole('tab', { name: tab, exact: true }).tap();
      await page.locator('table tbody tr').first().waitFor({ state: 'attached' });
      expect(await faultsOf(page), tab).toEqual([]);
      const lines = await page
        .locator('.tabs button')
        .evaluateAll((all) =>
          all.filter((b) => !/, 0\)$/.test(getComputedStyle(b).borderBottomColor)).map((b) => b.textContent),
        );
      expect(lines).toEqual([tab]);
    }
    await page.getByRole('button', { name: 'Look' }).first().tap();
    await page.getByRole('button', { name: 'Close' }).tap();
    await page.getByLabel('Without names').tap();
    expect(await page.getByTestId('attempts').textContent()).not.toContain('Wren');
    expect(await faultsOf(page)).toEqual([]);
    await phone.close();
  }, 120_000);

  it('a trainee finds the way into the class at the top of the bench, past the offer of a lesson', async () => {
    phone = await browser.newContext(PHONE);
    const page = await phone.newPage();
    await page.goto(address);
    await page.getByRole('button', { name: 'Understood' }).tap();
    await page.getByTestId('lesson').waitFor();
    await page.getByRole('button', { name: 'Join your class' }).tap();
    await page.getByLabel('Class code').fill(code);
    await page.getByLabel(/Your name/).fill('Wren Hollis');
    await page.getByRole('button', { name: 'Join', exact: true }).tap();
    await page.getByText(`${CLASS} · Wren Hollis`).waitFor();
    const bar = page.locator('.classbar');
    await expect
      .poll(async () => {
        const [over, card] = [await bar.boundingBox(), await page.getByTestId('lesson').boundingBox()];
        return (card?.y ?? 0) >= (over?.y ?? 0) + (over?.height ?? 0);
      })
      .toBe(true);
    await bar.locator('select').selectOption({ index: 1 });
    await page.getByText('Every attempt you end is handed in.').waitFor();
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(390);
    await bar.getByRole('button', { name: 'Leave' }).tap();
    await page.getByRole('button', { name: 'Join your class' }).waitFor();
    await phone.close();
  }, 120_000);
});
