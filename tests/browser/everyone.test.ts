/** The page in German, in inches and for a left hand; and held against the rules of WCAG 2.2 A and AA as axe-core knows them. */
import { createRequire } from 'node:module';
import type { AxeResults, RunOptions } from 'axe-core';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { BenchDriver } from './support/bench.ts';
import { launchChromium } from './support/chromium.ts';
import { shortWeld } from './support/short-weld.ts';
import { type Site, serveGame } from './support/site.ts';

const AXE = createRequire(import.meta.url).resolve('axe-core/axe.min.js');
const RULES: RunOptions = { runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'] };

let browser: Browser;
let site: Site;

beforeAll(async () => {
  [browser, site] = await Promise.all([launchChromium(), serveGame()]);
});

afterAll(async () => {
  await Promise.all([browser?.close(), site?.close()]);
});

/** What axe finds against the page as it stands: rule and the elements. */
async function against(page: Page): Promise<string[]> {
  const found = await page.evaluate(async (rules) => {
    const { axe } = window as unknown as { axe: { run(rules: RunOptions): Promise<AxeResults> } };
    return (await axe.run(rules)).violations.map(
      (v) => `${v.id}: ${v.nodes.map((n) => n.target.join(' ')).join(' | ')}`,
    );
  }, RULES);
  return found;
}

describe('a page for everyone', () => {
  it('speaks German from its first sheet to its report, in inches and for a left hand, and keeps all of it', async () => {
    const bench = await BenchDriver.open(browser, site.address, { plain: true, bypassCSP: true });
    const { page } = bench;
    await page.addScriptTag({ path: AXE });
    expect(await against(page), 'before the strike').toEqual([]);
    await page.getByRole('button', { name: 'Aids' }).click();
    await page.getByTestId('language').selectOption('de');
    await page.getByLabel('Zoll neben Millimetern').check();
    await page.getByLabel('Für die linke Hand angeordnet').check();
    expect(await against(page), 'aids').toEqual([]);
    await page.getByRole('button', { name: 'Schließen' }).click();
    expect(await page.locator('html').getAttribute('lang')).toBe('de');
    expect(await page.getByTestId('sentence').textContent()).toMatch(/^T-Stoß.*mm \(0,236 in\) Blech.*in\/min/);
    expect(await page.locator('.exercise option').nth(3).textContent()).toContain('Umgekehrtes V');
    const [joint, lens] = await Promise.all(['.joint', '.lens'].map((part) => page.locator(part).boundingBox()));
    expect(joint!.x).toBeGreaterThan(lens!.x);

    await bench.openFile(shortWeld());
    expect(await bench.verdict()).toBe('außerhalb');
    expect(await page.getByTestId('first').textContent()).toMatch(/gefordert waren|mm² |Wurzel|Naht/);
    expect(await page.locator('.lines').textContent()).toMatch(/Nahtüberhöhung[\s\S]*\d,\d+/);
    expect(await against(page), 'verdict').toEqual([]);
    await page
      .getByTestId('proof')
      .filter({ hasText: /Bewiesen|Ausprobiert/ })
      .waitFor({ timeout: 60_000 });
    await page.getByRole('button', { name: 'Versuche' }).click();
    await page.getByRole('button', { name: 'Logbuch' }).click();
    expect(await against(page), 'logbook').toEqual([]);
    await page.keyboard.press('Escape');
    await page.reload();
    await page.getByRole('button', { name: 'Versuche' }).waitFor();
    expect(await page.locator('html').getAttribute('data-hand')).toBe('left');
    expect(bench.complaints).toEqual([]);
    await bench.close();
  });

  it('goes from the strike to the report by keyboard alone, at 200 % zoom, in forced colours and without motion', async () => {
    const bench = await BenchDriver.open(browser, site.address, {
      plain: true,
      // 1366 by 768 at 200 %.
      viewport: { width: 683, height: 384 },
      deviceScaleFactor: 2,
      forcedColors: 'active',
      reducedMotion: 'reduce',
      bypassCSP: true,
    });
    const { page } = bench;
    const wide = (): Promise<number> => page.evaluate(() => document.documentElement.scrollWidth);
    expect(await wide()).toBeLessThanOrEqual(683);
    await page.locator('.pane').focus();
    await page.keyboard.down('Space');
    await page.locator('.pane[data-state="welding"]').waitFor();
    await page.keyboard.down('ArrowUp');
    await page.waitForTimeout(4000);
    await page.keyboard.up('ArrowUp');
    await page.keyboard.up('Space');
    await page.keyboard.press('Enter');
    expect(await bench.verdict()).not.toBe('');
    // Tab alone comes to the report: the first thing in the footing that opens is reached and opened.
    const details = page.locator('.footing summary');
    for (let n = 0; n < 80 && !(await details.evaluate((e) => e === document.activeElement)); n++)
      await page.keyboard.press('Tab');
    expect(await details.evaluate((e) => e === document.activeElement)).toBe(true);
    await page.keyboard.press('Enter');
    expect(await page.locator('.footing').evaluate((e) => (e as HTMLDetailsElement).open)).toBe(true);
    const focus = await details.evaluate((e) => getComputedStyle(e).outlineStyle);
    expect(focus).not.toBe('none');
    // A mark is drawn in the text's colour, so that its shape shows on any paper.
    const mark = await page
      .getByTestId('verdict')
      .locator('path')
      .evaluate((e) => [getComputedStyle(e).stroke, getComputedStyle(e.closest('p')!).color]);
    expect(mark[0]).toBe(mark[1]);
    expect(await wide()).toBeLessThanOrEqual(683);
    await page.addScriptTag({ path: AXE });
    expect(await against(page), 'report').toEqual([]);
    const moving = await page.evaluate(() => document.getAnimations().filter((a) => a.playState === 'running').length);
    expect(moving).toBe(0);
    expect(bench.complaints).toEqual([]);
    await bench.close();
  });

  it('opens in the language the browser asks for', async () => {
    const context = await browser.newContext({ locale: 'de-AT', serviceWorkers: 'block' });
    const page = await context.newPage();
    await page.goto(site.address);
    await page.getByRole('button', { name: 'Verstanden' }).waitFor();
    expect(await page.getByTestId('language').inputValue()).toBe('de');
    await context.close();
  });
});
