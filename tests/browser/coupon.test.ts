import { readFileSync } from 'node:fs';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { couponReport, readCoupon } from '../../scoring/index.ts';
import { facePlace, fusedAt, type MadeCoupon, marksOf } from '../scoring/macro/marked.ts';
import { weld } from '../scoring/welds.ts';
import { BenchDriver, keep } from './support/bench.ts';
import { MarkingBoard } from './support/board.ts';
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

/** A cut photographed seven degrees askew, 58 pixels to the millimetre. */
const COUPON: MadeCoupon = { legA_mm: 6.4, legB_mm: 5.7, crown_mm: 0.9, fused_mm: 3.1, pxPerMm: 58, turn_deg: 7 };
const SIZE = { width: 1700, height: 1500 };
const RULE = { x: 120, y: 1420, mm: 20 };

/** Draws the etched cut with its rule on a canvas, as a camera would see it. */
function photograph(page: Page, kind: 'image/png' | 'image/jpeg'): Promise<Buffer> {
  const face = Array.from({ length: 41 }, (_, i) => facePlace(COUPON, i / 40));
  const fused = Array.from({ length: 60 }, (_, i) => 0.05 + i * 0.08)
    .map((x) => ({ x, deep: fusedAt(COUPON, x) }))
    .filter(({ deep }) => deep > 0);
  return page
    .evaluate(
      ({ coupon, size, rule, face, fused, kind, root }) => {
        const canvas = document.createElement('canvas');
        canvas.width = size.width;
        canvas.height = size.height;
        const g = canvas.getContext('2d');
        if (!g) throw new Error('no canvas');
        g.fillStyle = '#2f2e2b';
        g.fillRect(0, 0, size.width, size.height);
        g.translate(root.x, root.y);
        g.rotate((-coupon.turn_deg * Math.PI) / 180);
        g.scale(coupon.pxPerMm, -coupon.pxPerMm);
        g.fillStyle = '#b7b2a5';
        g.fillRect(-8, -6, 21, 6);
        g.fillRect(-6, 0, 6, 13);
        const shape = (points: { a: number; b: number }[]): void => {
          g.beginPath();
          for (const [i, p] of points.entries()) i === 0 ? g.moveTo(p.a, p.b) : g.lineTo(p.a, p.b);
          g.fill();
        };
        g.fillStyle = '#5b574e';
        shape([{ a: 0, b: 0 }, ...face]);
        shape([{ a: 0, b: 0 }, ...fused.map((f) => ({ a: f.x, b: -f.deep }))]);
        shape([{ a: 0, b: 0 }, ...fused.map((f) => ({ a: -f.deep, b: f.x }))]);
        g.setTransform(1, 0, 0, 1, 0, 0);
        g.fillStyle = '#e9e5d8';
        g.fillRect(rule.x - 20, rule.y, rule.mm * coupon.pxPerMm + 40, 60);
        g.fillStyle = '#222';
        for (let mm = 0; mm <= rule.mm; mm++) g.fillRect(rule.x + mm * coupon.pxPerMm - 1, rule.y, 2, 40);
        return canvas.toDataURL(kind, 0.92).split(',')[1];
      },
      { coupon: COUPON, size: SIZE, rule: RULE, face, fused, kind, root: { x: 900, y: 1100 } },
    )
    .then((text) => Buffer.from(text, 'base64'));
}

const attempt = weld({ joint: { length_mm: 30 } });

describe('a real coupon laid beside an attempt', () => {
  let bench: BenchDriver;
  let page: Page;
  const asked: string[] = [];

  const row = async (name: string): Promise<number> => {
    const text =
      (await page.getByTestId('coupon-lines').locator('tr').filter({ hasText: name }).first().textContent()) ?? '';
    return Number(text.match(/-?\d+(\.\d+)?/)?.[0]);
  };
  const choose = (name: string, mimeType: string, buffer: Buffer) =>
    page.getByTestId('coupon-file').setInputFiles({ name, mimeType, buffer });

  beforeAll(async () => {
    bench = await BenchDriver.open(browser, site.address, { viewport: { width: 1366, height: 768 } });
    page = bench.page;
    await page.getByTestId('open-file').setInputFiles({
      name: 'bracket.json',
      mimeType: 'application/json',
      buffer: Buffer.from(JSON.stringify(attempt)),
    });
    await bench.verdict();
    await page.locator('.compare select').selectOption({ label: 'a real coupon …' });
    await page.getByRole('button', { name: 'Choose a picture' }).waitFor();
  }, 120_000);

  afterAll(async () => {
    await bench?.close();
  });

  it('refuses what is no photograph, with the reason', async () => {
    await choose('notes.txt', 'text/plain', Buffer.from('no picture at all'));
    await page.getByText(/notes\.txt: found a file that is neither PNG nor JPEG/).waitFor();
    const png = await photograph(page, 'image/png');
    await choose('half.png', 'image/png', png.subarray(0, 2000));
    await page.getByText(/half\.png: found a picture that is cut off/).waitFor();
    const head = Buffer.from(png.subarray(0, 100));
    head.writeUInt32BE(60_000, 16);
    head.writeUInt32BE(60_000, 20);
    await choose('huge.png', 'image/png', head);
    await page.getByText(/huge\.png: found 60000 by 60000 pixels/).waitFor();
    expect(await page.getByTestId('board').count()).toBe(0);
  });

  it('reads the legs drawn, within 0.1 mm, and the other lines of the profile', async () => {
    const photo = await photograph(page, 'image/jpeg');
    page.on('request', (request) => asked.push(request.url()));
    await choose('bracket-7.jpg', 'image/jpeg', photo);
    const board = new MarkingBoard(page);
    await page.getByTestId('board').waitFor();
    const m = marksOf(COUPON);
    await board.mark('Scale', [
      { x: RULE.x, y: RULE.y + 10 },
      { x: RULE.x + RULE.mm * COUPON.pxPerMm, y: RULE.y + 10 },
    ]);
    await page.getByLabel('Height of the cut').fill('22');
    for (const [step, spots] of [
      ['Root', [m.root]],
      ['Direction of the left plate', [m.plateB]],
      ['Direction of the right plate', [m.plateA]],
      ['Left toe', [m.toeB]],
      ['Right toe', [m.toeA]],
      ['Face', m.face],
      ['Fusion line, left plate', m.fusionB],
      ['Fusion line, right plate', m.fusionA],
    ] as const)
      await board.mark(step, spots);
    // A scale without its length measures nothing.
    await page.getByText('Still to mark: length between the scale’s points.').waitFor();
    expect(await page.getByTestId('coupon-lines').count()).toBe(0);
    await page.getByLabel('Length between the scale’s points').fill(String(RULE.mm));
    await page.keyboard.press('Tab');
    await page.getByTestId('coupon-lines').waitFor();
    expect(await board.points('face')).toBeGreaterThanOrEqual(5);
    expect(Math.abs((await row('leg')) - 5.7)).toBeLessThan(0.1);
    expect(Math.abs((await row('convexity')) - 0.9)).toBeLessThan(0.1);
    expect(Math.abs((await row('root fusion')) - fusedAt(COUPON, 0.375))).toBeLessThan(0.1);
    const readings = await page.getByTestId('coupon-readings').locator('tr').allTextContents();
    for (const [name, made] of [
      ['leg left', 5.7],
      ['leg right', 6.4],
      ['fused depth left', 1.1],
      ['fused depth right', 1.1],
    ] as const) {
      const said = readings.find((text) => text.startsWith(name));
      expect(Math.abs(Number(said?.slice(name.length).match(/^[\d.]+?(?=±)/)?.[0]) - made)).toBeLessThan(0.1);
    }
    expect(readings.filter((text) => /^toe angle (left|right)\d+°±/.test(text)).length).toBe(2);
    expect(readings.some((text) => text.startsWith('roottied in'))).toBe(true);
    await page.getByTestId('coupon-verdict').getByText('within').waitFor();
    await page.getByLabel('Judged by').selectOption('iso-5817-b');
    await page.getByTestId('coupon-verdict').getByText('ISO 5817').waitFor();
    await page.getByLabel('Judged by').selectOption('aws-d11-static-si');
  });

  it('moves a mark by arrow keys and takes it away with Delete', async () => {
    const board = new MarkingBoard(page);
    await board.mark('Undercut, left toe', [{ x: 400, y: 300 }]);
    const lines = () => page.getByTestId('coupon-lines').locator('tr').filter({ hasText: 'undercut' }).allInnerTexts();
    const before = await lines();
    expect(before.length).toBe(1);
    await page.keyboard.press('Shift+ArrowLeft');
    await page.waitForTimeout(100);
    expect(await lines()).not.toEqual(before);
    await page.keyboard.press('Delete');
    await page.waitForTimeout(100);
    expect(await lines()).toEqual([]);
  });

  it('saves the marks as a file that scoring reads to the same digits', async () => {
    const download = page.waitForEvent('download');
    await page.getByRole('button', { name: 'Save the marks as a file' }).click();
    const file = await download;
    expect(file.suggestedFilename()).toMatch(/\.coupon\.json$/);
    const { readings, lines } = couponReport(readCoupon(readFileSync(await keep(file), 'utf8'), 'cut.coupon.json'));
    expect(Math.abs(readings.legA_mm - 6.4)).toBeLessThan(0.1);
    expect(Math.abs(readings.legB_mm - 5.7)).toBeLessThan(0.1);
    expect(
      Math.abs((await row('convexity')) - (lines.find((l) => l.measure === 'convexity')?.reading ?? 0)),
    ).toBeLessThan(0.006);
  });

  it('sends nothing anywhere', () => {
    expect(asked.filter((url) => !/^(blob|data):/.test(url))).toEqual([]);
  });

  it('is kept with the attempt and lies beside its cut, also after a reload', async () => {
    await page.getByRole('button', { name: 'Keep with this attempt' }).click();
    await page.getByText('Kept with the attempt.').waitFor();
    await page.getByRole('button', { name: 'Close', exact: true }).click();
    const beside = page.getByTestId('coupon-beside');
    await beside.waitFor();
    expect(await page.locator('.readings.both tbody tr').first().allTextContents()).toEqual([
      expect.stringMatching(/^leg left[\d.]+?5\.[67]\d?$/),
    ]);
    await page.reload();
    await page.locator('.pane canvas').waitFor();
    await page.getByRole('button', { name: 'Attempts' }).click();
    await page.locator('.shelf li').first().getByRole('button', { name: 'Open' }).click();
    await bench.verdict();
    await page.locator('.compare select').selectOption({ label: 'real coupon at 22.0 mm' });
    await beside.waitFor();
    await beside.locator('image').waitFor();
    await page.getByRole('heading', { name: 'Cut A–A at 22.0 mm' }).waitFor();
    await page.getByRole('button', { name: 'Open the marks' }).click();
    expect(Math.abs((await row('leg')) - 5.7)).toBeLessThan(0.1);
    await page.getByRole('button', { name: 'Close', exact: true }).click();
  });

  it('raised no error in the page', () => {
    expect(bench.complaints).toEqual([]);
  });
});
