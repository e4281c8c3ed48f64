import type { Browser } from 'playwright-core';
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

describe('the first lesson', () => {
  it('is gone through by keyboard alone, from the offer to the root', async () => {
    const bench = await BenchDriver.open(browser, site.address, {
      lesson: true,
      viewport: { width: 1366, height: 768 },
    });
    const { page } = bench;
    const card = page.getByTestId('lesson');
    const press = async (name: string): Promise<void> => {
      await card.getByRole('button', { name }).focus();
      await page.keyboard.press('Enter');
    };
    // A step has come when its heading has the focus, as for one who hears the page.
    const step = (name: string) => page.locator(`.lesson[data-step="${name}"] h2:focus`).waitFor({ timeout: 90_000 });
    await press('Begin the lesson');
    await step('joint');
    expect(await page.evaluate(() => document.activeElement?.textContent)).toBe('What a tee is');
    await press('Next');
    await step('weave');
    await press('Next');
    await press('Show me');
    await card.waitFor({ state: 'detached' });
    await step('straight');
    await page.locator('.pane[data-state="idle"]').waitFor();
    await page.getByRole('application').focus();
    await page.keyboard.down(' ');
    await page.locator('.pane[data-state="welding"]').waitFor();
    await page.waitForTimeout(2000);
    expect(await card.count()).toBe(0);
    await page.keyboard.down('ArrowUp');
    await page.waitForTimeout(5000);
    await page.keyboard.up('ArrowUp');
    await page.keyboard.up(' ');
    await page.keyboard.press('Enter');
    await step('cut');
    await page.getByRole('slider', { name: /cut/i }).first().focus();
    await page.keyboard.press('ArrowUp');
    await press('Next');
    await step('root');
    await press('End the lesson');
    await card.waitFor({ state: 'detached' });
    expect(bench.complaints).toEqual([]);
    await bench.close();
  }, 180_000);

  it('leaves the foot of the joint free on a phone, and is taken up again from About', async () => {
    const bench = await BenchDriver.open(browser, site.address, {
      lesson: true,
      viewport: { width: 390, height: 844 },
      hasTouch: true,
      isMobile: true,
    });
    const { page } = bench;
    const card = page.getByTestId('lesson');
    await card.getByRole('button', { name: 'Begin the lesson' }).tap();
    const foot = (await bench.aim())({ u_mm: 0, y_mm: 2 });
    const box = (await card.boundingBox())!;
    expect(box.y + box.height).toBeLessThan(foot.y - 40);
    await card.getByRole('button', { name: 'Next' }).tap();
    await card.getByRole('button', { name: 'Leave the lesson' }).tap();
    await page.getByRole('button', { name: 'About' }).tap();
    await page.getByRole('button', { name: 'Go on with the lesson' }).tap();
    await page.locator('.lesson[data-step="weave"]').waitFor();
    await bench.close();
  }, 90_000);
});
