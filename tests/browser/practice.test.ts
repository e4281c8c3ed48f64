import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { BenchDriver } from './support/bench.ts';
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

async function practiceOf(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Attempts' }).click();
  await page.getByRole('button', { name: 'Practice', exact: true }).click();
}

/** Sets every attempt in the store back by 20 hours and says that it was the test piece, and within. */
async function passedYesterday(page: Page): Promise<void> {
  await page.evaluate(async () => {
    const asked = <T>(request: IDBRequest<T>): Promise<T> =>
      new Promise((done) => {
        request.onsuccess = () => done(request.result);
      });
    const db = await asked(indexedDB.open('toehold'));
    const entries = db.transaction('entries', 'readwrite').objectStore('entries');
    const past_ms = 20 * 3_600_000;
    for (const entry of await asked(entries.getAll()))
      await asked(
        entries.put({ ...entry, exercise: 'test-piece', verdict: 'within', made_ms: entry.made_ms - past_ms }),
      );
    db.close();
  });
}

describe('practice beside attempts', () => {
  it('a drill without metal, on a phone: no arc, read, kept apart', async () => {
    const bench = await BenchDriver.open(browser, site.address, { viewport: { width: 390, height: 844 } });
    const { page } = bench;
    await practiceOf(page);
    await page.getByRole('button', { name: 'Pattern', exact: true }).click();
    const card = page.getByTestId('drill');
    await page.locator('.drill[data-phase="ready"]').waitFor();
    await bench.weld((t_s) => (t_s > 5.5 ? null : { u_mm: 2.7 * Math.sin(5.6 * t_s), y_mm: 12 + 2.7 * t_s }));
    await page.locator('.drill[data-phase="done"]').waitFor();
    expect(await card.textContent()).toMatch(/width[\s\S]*mm/);
    expect(await page.locator('.pane').getAttribute('data-state')).toBe('idle');
    await card.getByRole('button', { name: 'End the drill' }).click();
    await practiceOf(page);
    expect(await page.getByTestId('practice').textContent()).toMatch(/1 kept/);
    expect(bench.complaints).toEqual([]);
    await bench.close();
  }, 60_000);

  it('a coupon’s fault is named by keyboard, and an attempt judged before its verdict', async () => {
    const bench = await BenchDriver.open(browser, site.address, { viewport: { width: 1366, height: 768 } });
    const { page } = bench;
    await practiceOf(page);
    await page.getByLabel('Judge yourself before the verdict').selectOption('always');
    await page.getByRole('button', { name: 'Level 1' }).click();
    await page.locator('.naming[data-phase="asked"] h2:focus').waitFor({ timeout: 60_000 });
    expect(await page.getByTestId('verdict').count()).toBe(0);
    await page.keyboard.press('Tab');
    await page.keyboard.press(' ');
    await page.keyboard.press('Enter');
    await page.locator('.naming[data-phase="told"] h2:focus').waitFor();
    expect(await page.getByTestId('naming').textContent()).toMatch(/Right:|It was:/);
    await page.getByTestId('naming').getByRole('button', { name: 'Leave' }).click();

    await page.locator('.exercise select').selectOption('straight-run');
    await bench.setNumber('length of joint', 25);
    await bench.weld((t_s) => (t_s > 9 ? null : { u_mm: 0, y_mm: 1 + 3 * t_s }));
    await bench.finish();
    const card = page.getByTestId('judge');
    await card.waitFor({ timeout: 60_000 });
    expect(await page.getByTestId('verdict').count()).toBe(0);
    // Nothing on the page gives a reading away meanwhile.
    expect(await page.getByLabel('What if').count()).toBe(0);
    expect(await page.getByRole('button', { name: 'see the readings' }).count()).toBe(0);
    await page.keyboard.press('Tab');
    await page.keyboard.press(' ');
    await card.getByRole('button', { name: 'That is my judgement' }).press('Enter');
    await bench.verdict();
    expect(await page.getByTestId('judged').textContent()).toMatch(/You agree on/);

    // As if it had been the test piece, passed yesterday: its test is offered beside the cold piece, and is welded without guides.
    await passedYesterday(page);
    await page.reload();
    await page.getByTestId('due-now').getByRole('button', { name: 'Weld it now' }).click();
    await page.getByText('Test next day, without guides').waitFor();
    expect(await page.getByTestId('due-now').count()).toBe(0);
    expect(bench.complaints).toEqual([]);
    await bench.close();
  }, 120_000);
});
