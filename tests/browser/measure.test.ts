import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { replay, type Section } from '../../engine/index.ts';
import { etchedCut, readSection } from '../../scoring/index.ts';
import { depthOf, inward, spread } from '../../scoring/measures/section/isotherm.ts';
import { outlineOf } from '../../scoring/measures/section/outline.ts';
import { weld } from '../scoring/welds.ts';
import { BenchDriver } from './support/bench.ts';
import { MarkingBoard, type Spot } from './support/board.ts';
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

/** Thick plates, so that the heat-affected zone ends inside them. */
const attempt = weld({
  joint: { plateA_mm: 10, plateB_mm: 10, length_mm: 30 },
  process: { feed_mpmin: 5.2, volts_V: 19 },
});

/** Where a careful hand clicks on the etch, px of the drawing, taken from the section itself. */
function places(sec: Section, scale: number) {
  const { station } = readSection(sec)!;
  const o = outlineOf(sec)!;
  const cut = etchedCut(sec, station, { scale, id: 'x' });
  const px = (a: number, b: number): Spot => ({ x: cut.root.x + a * cut.scale, y: cut.root.y - b * cut.scale });
  const of = ({ u, w }: { u: number; w: number }): Spot => px((w + u) / Math.SQRT2, (w - u) / Math.SQRT2);
  const line = (side: 'A' | 'B', reached: number, leg: number): Spot[] =>
    [0.4, 1, 0.45 * leg, leg - 1].map((along) => {
      const deep = depthOf(inward(sec, side, along)!, spread(reached, sec.start_C), sec.cell_mm);
      return side === 'A' ? px(along, -deep) : px(-deep, along);
    });
  const inner = o.face.slice(2, -2);
  return {
    root: px(0, 0),
    toeA: of(o.toeA),
    toeB: of(o.toeB),
    face: [0.15, 0.35, 0.5, 0.65, 0.85].map((share) => of(inner[Math.round(share * (inner.length - 1))]!)),
    fusion: (side: 'A' | 'B') => line(side, sec.solidus_C, side === 'A' ? station.legA_mm : station.legB_mm),
    zone: (side: 'A' | 'B') => line(side, sec.ac1_C, side === 'A' ? station.legA_mm : station.legB_mm),
  };
}

describe('measuring a cut oneself', () => {
  let bench: BenchDriver;
  let board: MarkingBoard;

  beforeAll(async () => {
    bench = await BenchDriver.open(browser, site.address, { viewport: { width: 1366, height: 768 } });
    const { page } = bench;
    await page.getByTestId('open-file').setInputFiles({
      name: 'bracket.json',
      mimeType: 'application/json',
      buffer: Buffer.from(JSON.stringify(attempt)),
    });
    await bench.verdict();
    await page.getByRole('button', { name: 'Measure it yourself' }).click();
    await page.getByTestId('board').waitFor();
    board = new MarkingBoard(page);
  }, 120_000);

  afterAll(async () => {
    await bench?.close();
  });

  it('shows the etch without a number, and does not compare before all is marked', async () => {
    const { page } = bench;
    expect(await page.getByTestId('board').locator('text').count()).toBe(0);
    expect(await page.getByRole('button', { name: 'Compare with the bench' }).isDisabled()).toBe(true);
  });

  it('tells a trainee who followed the edge of the heat-affected zone which line that was', async () => {
    const { page } = bench;
    const y_mm = Number((await page.locator('.overlay h2').textContent())?.match(/at ([\d.]+) mm/)?.[1]);
    const at = places(replay(attempt).section(y_mm), 60);
    await board.mark('Root', [at.root]);
    await board.mark('Left toe', [at.toeB]);
    await board.mark('Right toe', [at.toeA]);
    await board.mark('Face', at.face);
    await board.mark('Fusion line, left plate', at.fusion('B'));
    await board.mark('Fusion line, right plate', at.zone('A'));
    await page.getByRole('button', { name: 'Compare with the bench' }).click();
    const outcome = page.getByTestId('own-reading');
    await outcome.waitFor();
    const text = (await outcome.textContent()) ?? '';
    expect(text).toContain('Left plate: on the fusion line.');
    expect(text).toMatch(
      /Right plate: you measured to the edge of the heat-affected zone; the fusion line lies \d\.\d nearer the weld\./,
    );
    const agree = await outcome.locator('tbody tr').filter({ hasText: 'agrees' }).allTextContents();
    for (const row of ['leg left', 'leg right', 'throat', 'convexity', 'fused depth left'])
      expect(agree.some((t) => t.startsWith(row))).toBe(true);
    const differ = await outcome.locator('tbody tr').filter({ hasText: 'differs' }).allTextContents();
    expect(differ.some((t) => t.startsWith('fused depth right'))).toBe(true);
  });

  it('takes the true fusion line once the marks are set on it', async () => {
    const { page } = bench;
    const y_mm = Number((await page.locator('.overlay h2').textContent())?.match(/at ([\d.]+) mm/)?.[1]);
    const at = places(replay(attempt).section(y_mm), 60);
    await page.getByRole('button', { name: 'Move the marks' }).click();
    for (const [i, from] of at.zone('A').entries()) await board.drag(from, at.fusion('A')[i]);
    await page.getByRole('button', { name: 'Compare with the bench' }).click();
    await page.getByText('All of it agrees.').waitFor();
  });

  it('keeps cuts without readings until asked, when that is set', async () => {
    const { page } = bench;
    await page.getByRole('button', { name: 'Close', exact: true }).click();
    await page.locator('.readings').waitFor();
    await page.getByRole('button', { name: 'Aids' }).click();
    await page.getByLabel(/^Measure first/).check();
    await page.getByRole('button', { name: 'Close', exact: true }).click();
    // This cut has been measured; the next has not.
    expect(await page.locator('.readings').count()).toBe(1);
    await page.getByRole('slider', { name: /Cut through the joint/ }).press('ArrowUp');
    await page.getByText('Measure this cut yourself first').waitFor();
    expect(await page.locator('.readings').count()).toBe(0);
    await page.waitForFunction(
      () => document.querySelector('[data-testid="drawing"]')?.shadowRoot?.querySelectorAll('svg text').length === 0,
    );
    await page.getByRole('button', { name: 'see the readings' }).click();
    await page.locator('.readings').waitFor();
  });

  it('raised no error in the page', () => {
    expect(bench.complaints).toEqual([]);
  });
});
