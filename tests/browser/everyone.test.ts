/** The page in German, in inches and for a left hand; and held against the rules of WCAG 2.2 A and AA as axe-core knows them. */
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { handOfAmount } from '../../engine/index.ts';
import { MOUSE, weld } from '../scoring/welds.ts';
import { AXE, against } from './support/axe.ts';
import { BenchDriver } from './support/bench.ts';
import { launchChromium } from './support/chromium.ts';
import { shortWeld } from './support/short-weld.ts';
import { type Site, serveGame } from './support/site.ts';

let browser: Browser;
let site: Site;

beforeAll(async () => {
  [browser, site] = await Promise.all([launchChromium(), serveGame()]);
});

afterAll(async () => {
  await Promise.all([browser?.close(), site?.close()]);
});

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
    // Its joint is shorter than the ready exercise's: no verdict, and the reason in German.
    expect(await bench.verdict()).toBe('ohne Urteil');
    expect(await page.getByTestId('findings').textContent()).toContain('nicht die mitgelieferte dieses Namens');
    expect(await page.getByTestId('first').textContent()).toMatch(/gefordert waren|mm² |Wurzel|Naht/);
    expect(await page.locator('.lines').textContent()).toMatch(/Nahtüberhöhung[\s\S]*\d,\d+/);
    expect(await against(page), 'verdict').toEqual([]);
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

  it('keeps every place on the bead apart to be pressed, though two lie at one height', async () => {
    const bench = await BenchDriver.open(browser, site.address, { plain: true, bypassCSP: true });
    const { page } = bench;
    const ragged = weld({
      joint: { length_mm: 60 },
      device: MOUSE,
      weave: { length_mm: 45, start_mm: 6, travel_mmps: 3.4, pauseA_s: 0.05 },
      faults: { ...handOfAmount(5, 1.6), lead_mm: -2 },
    });
    await page.getByTestId('open-file').setInputFiles({
      name: 'ragged.json',
      mimeType: 'application/json',
      buffer: Buffer.from(JSON.stringify(ragged)),
    });
    await bench.verdict();
    const places = await page.locator('.flag').evaluateAll((all) =>
      all.map((e) => {
        const box = e.getBoundingClientRect();
        const top = document.elementFromPoint(box.x + box.width / 2, box.y + box.height / 2);
        return { y: Math.round(box.y), reached: top !== null && e.contains(top) };
      }),
    );
    expect(new Set(places.map((p) => p.y)).size).toBeLessThan(places.length);
    expect(places.filter((p) => !p.reached)).toEqual([]);
    await page.addScriptTag({ path: AXE });
    expect(await against(page)).toEqual([]);
    expect(bench.complaints).toEqual([]);
    await bench.close();
  });
});
