import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { BenchDriver } from './support/bench.ts';
import { launchChromium } from './support/chromium.ts';
import { type Site, serveGame } from './support/site.ts';

const PHONE = { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true, deviceScaleFactor: 2 };

let browser: Browser;
let site: Site;

beforeAll(async () => {
  [browser, site] = await Promise.all([launchChromium(), serveGame()]);
});

afterAll(async () => {
  await Promise.all([browser?.close(), site?.close()]);
});

const wait = (ms: number) => new Promise((resolve) => setTimeout(resolve, ms));

describe('a phone of 390 by 844', () => {
  it('shows the whole joint, the metal balance and no sideways scrolling, and welds with a finger', async () => {
    const bench = await BenchDriver.open(browser, site.address, { ...PHONE, plain: true });
    const { page, cdp } = bench;
    const box = await page.locator('.pane').boundingBox();
    // The close view has the upper part, the joint that the hand steers on the lower: more than half of the screen.
    expect(box?.height).toBeGreaterThan(844 / 2);
    expect((box?.y ?? 0) + (box?.height ?? 0)).toBeLessThanOrEqual(844);
    expect(await page.getByTestId('balance').isVisible()).toBe(true);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);

    const to = await bench.aim();
    const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd', y_mm: number) => {
      const at = to({ u_mm: 0, y_mm });
      return cdp.send('Input.dispatchTouchEvent', { type, touchPoints: type === 'touchEnd' ? [] : [at] });
    };
    await touch('touchStart', -6);
    for (let n = 0; n < 40; n++) {
      await touch('touchMove', -6 + n * 0.15);
      await wait(16);
    }
    await touch('touchEnd', 0);
    await bench.finish();
    const { recording } = await bench.save();
    expect(recording.device).toMatchObject({ kind: 'touch', measures: { tipToWork: false, workAngle: false } });
    // The wire points above the finger by a fixed distance: 15 mm of hand are 9 mm of path here, and the path is as long as the hand's.
    const { y, trigger } = recording.poses;
    const welded = y.filter((_, i) => trigger[i] === 1);
    expect((Math.max(...welded) - Math.min(...welded)) / 100).toBeCloseTo(39 * 0.15, 0);
    expect(Math.min(...welded) / 100).toBeGreaterThan(0);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
    await bench.close();
  }, 120_000);
});

describe('the keyboard', () => {
  it('welds: arrows move the torch, space is the trigger, Enter ends', async () => {
    const bench = await BenchDriver.open(browser, site.address, { plain: true });
    const { page } = bench;
    await page.locator('.pane').focus();
    await page.keyboard.down(' ');
    await page.locator('.pane[data-state="welding"]').waitFor();
    await page.keyboard.down('ArrowUp');
    await wait(1200);
    await page.keyboard.down('ArrowRight');
    await wait(150);
    await page.keyboard.up('ArrowRight');
    await wait(500);
    await page.keyboard.up('ArrowUp');
    await page.keyboard.up(' ');
    await page.locator('.pane[data-state="out"]').waitFor();
    await page.keyboard.press('Enter');
    await page.locator('.pane[data-state="stopped"]').waitFor();
    const { recording } = await bench.save();
    expect(recording.device.kind).toBe('keyboard');
    expect(Math.max(...recording.poses.y)).toBeGreaterThan(Math.min(...recording.poses.y) + 500);
    expect(Math.max(...recording.poses.u)).toBeGreaterThan(100);
    await bench.close();
  }, 120_000);

  it('reaches everything in order: exercise, actions, values, joint', async () => {
    const bench = await BenchDriver.open(browser, site.address, { plain: true });
    const seen: string[] = [];
    for (let n = 0; n < 40; n++) {
      await bench.page.keyboard.press('Tab');
      seen.push(
        await bench.page.evaluate(() => {
          const element = document.activeElement;
          return element?.getAttribute('aria-label') ?? element?.textContent ?? '';
        }),
      );
    }
    for (const name of ['Attempts', 'Aids', 'volts', 'wire feed speed', 'shielding gas'])
      expect(seen, seen.join(' | ')).toContain(name);
    expect(seen.some((name) => name.startsWith('Joint, welder’s view'))).toBe(true);
    await bench.close();
  }, 60_000);

  it('steps a value in the sentence, which says what follows from it', async () => {
    const bench = await BenchDriver.open(browser, site.address, { plain: true });
    const { page } = bench;
    const before = await page.getByTestId('balance').textContent();
    const feed = page.getByRole('spinbutton', { name: 'wire feed speed' });
    await feed.focus();
    const value = Number(await feed.getAttribute('aria-valuenow'));
    await page.keyboard.press('ArrowUp');
    await expect.poll(() => feed.getAttribute('aria-valuenow')).toBe((value + 0.1).toFixed(1));
    expect(await page.getByTestId('balance').textContent()).not.toBe(before);
    await bench.close();
  }, 60_000);
});

describe('a pen', () => {
  it('gives angles only after the check has seen it lean, and pressure changes nothing', async () => {
    const bench = await BenchDriver.open(browser, site.address, { plain: true });
    const { page, cdp } = bench;
    const pen = (
      type: 'mouseMoved' | 'mousePressed' | 'mouseReleased',
      at: { x: number; y: number },
      tilt: [number, number],
      force: number,
    ) =>
      cdp.send('Input.dispatchMouseEvent', {
        type,
        ...at,
        pointerType: 'pen',
        force,
        tiltX: tilt[0],
        tiltY: tilt[1],
        button: 'left',
        buttons: type === 'mouseReleased' ? 0 : 1,
        clickCount: 1,
      });
    const stroke = async () => {
      const to = await bench.aim();
      await pen('mouseMoved', to({ u_mm: 0, y_mm: 5 }), [10, 12], 0);
      await pen('mousePressed', to({ u_mm: 0, y_mm: 5 }), [10, 12], 0.3);
      for (let n = 0; n < 30; n++) {
        await pen('mouseMoved', to({ u_mm: 0, y_mm: 5 + n * 0.1 }), [10, 12], 0.2 + 0.02 * n);
        await wait(15);
      }
      await pen('mouseReleased', to({ u_mm: 0, y_mm: 8 }), [10, 12], 0);
      await bench.finish();
      return (await bench.save()).recording;
    };
    const unchecked = await stroke();
    expect(unchecked.device).toMatchObject({ kind: 'pen', measures: { workAngle: false, travelAngle: false } });
    expect(new Set(unchecked.poses.work).size).toBe(1);

    await page.getByRole('button', { name: 'Aids' }).click();
    await page.getByRole('button', { name: 'Check that the pen tells how it leans' }).click();
    await page.locator('.penfield').waitFor();
    const field = await page.locator('.penfield').boundingBox();
    if (!field) throw new Error('the pen field is not on the page');
    const at = { x: field.x + field.width / 2, y: field.y + field.height / 2 };
    for (const tilt of [
      [-30, 0],
      [30, 0],
      [0, 30],
      [0, -30],
    ] as [number, number][])
      await pen('mouseMoved', at, tilt, 0);
    await page.getByText('This pen tells how it leans').waitFor();
    await page.getByRole('button', { name: 'Close' }).click();
    await page.getByRole('button', { name: 'Close' }).click();
    await page.getByRole('button', { name: 'Weld another' }).click();

    const checked = await stroke();
    expect(checked.device).toMatchObject({
      kind: 'pen',
      measures: { tipToWork: false, workAngle: true, travelAngle: true },
    });
    expect(checked.poses.work[20] / 10).toBe(35);
    expect(checked.poses.travel[20] / 10).toBe(12);
    await bench.close();
  }, 120_000);
});
