import { readFileSync } from 'node:fs';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { replay } from '../../engine/index.ts';
import { exerciseNamed, readRecording, scoreAttempt } from '../../scoring/index.ts';
import { BenchDriver } from './support/bench.ts';
import { launchChromium } from './support/chromium.ts';
import { weavePath } from './support/paths.ts';
import { type Site, serveGame } from './support/site.ts';

const EXERCISE = 'two-toe-pause';
const LENGTH_MM = 40;

let browser: Browser;
let site: Site;

beforeAll(async () => {
  [browser, site] = await Promise.all([launchChromium(), serveGame()]);
});

afterAll(async () => {
  await Promise.all([browser?.close(), site?.close()]);
});

describe('a coupon welded by hand with the mouse, on a page from another machine over plain http', () => {
  let bench: BenchDriver;
  let verdict = '';
  let held_s = 0;
  let saved: Awaited<ReturnType<BenchDriver['save']>>;

  beforeAll(async () => {
    bench = await BenchDriver.open(browser, site.elsewhere, { exercise: EXERCISE });
    await bench.setNumber('length of joint', LENGTH_MM);
    const exercise = exerciseNamed(EXERCISE);
    if (!exercise) throw new Error(`${EXERCISE} is not a ready exercise`);
    const weave = { ...exercise.demonstration, pattern: 'inverted-v' as const, apex_mm: 2, width_mm: 5 };
    held_s = await bench.weld(weavePath(weave, LENGTH_MM - 5));
    await bench.finish();
    verdict = await bench.verdict();
    saved = await bench.save();
  }, 180_000);

  afterAll(async () => {
    await bench?.close();
  });

  it('has none of what browsers keep for secure pages', async () => {
    expect(
      await bench.page.evaluate(() => ({
        secure: isSecureContext,
        id: 'randomUUID' in crypto,
        store: 'storage' in navigator,
      })),
    ).toEqual({ secure: false, id: false, store: false });
  });

  it('keeps the time of the hand: as many poses as hundredths of a second', () => {
    const on = saved.recording.poses.trigger.filter((t) => t === 1).length / 100;
    expect(Math.abs(on - held_s)).toBeLessThan(0.03);
    expect(saved.recording.ended).toBe('stopped');
  });

  it('comes to a verdict with a first thing to change or keep', async () => {
    expect(['within', 'outside', 'too close to call']).toContain(verdict);
    expect((await bench.page.getByTestId('first').textContent())?.length).toBeGreaterThan(20);
    expect((await bench.lines()).length).toBeGreaterThan(5);
  });

  it('opens the root along the joint', async () => {
    const strip = bench.page.getByTestId('strip');
    expect(await strip.getAttribute('data-measured')).toBe('true');
    expect(await strip.getAttribute('aria-label')).toMatch(/\d+ % of the judged length tied in/);
    expect(await strip.locator('path.torn').count()).toBeGreaterThan(0);
  });

  it('cuts the coupon where the cutting line is dragged to', async () => {
    const { page } = bench;
    const handle = page.getByRole('slider', { name: /Cut through the joint/ });
    const before = Number(await handle.getAttribute('aria-valuenow'));
    await handle.focus();
    for (let n = 0; n < 10; n++) await page.keyboard.press('ArrowDown');
    const at = Number(await handle.getAttribute('aria-valuenow'));
    expect(before - at).toBeCloseTo(5, 1);
    await page.getByRole('heading', { name: `Cut A–A at ${at.toFixed(1)} mm` }).waitFor();
    await page.locator('.readings').waitFor();
    expect(await page.locator('.readings tr').count()).toBe(9);
    const shapes = await page
      .getByTestId('drawing')
      .evaluate((host) => host.shadowRoot?.querySelectorAll('svg path').length ?? 0);
    expect(shapes).toBeGreaterThan(5);
  });

  it('says what a mouse does not measure', async () => {
    const hand = (await bench.page.getByTestId('hand').textContent()) ?? '';
    for (const row of ['tip-to-work', 'work angle', 'travel angle'])
      expect(hand).toMatch(new RegExp(`${row}not measured`));
    expect(saved.recording.device).toMatchObject({
      kind: 'mouse',
      measures: { tipToWork: false, workAngle: false, travelAngle: false },
    });
  });

  it('was welded on the path the mouse took', () => {
    const { u, y } = saved.recording.poses;
    expect(Math.max(...u) / 100).toBeCloseTo(2.5, 1);
    expect(Math.min(...u) / 100).toBeCloseTo(-2.5, 1);
    expect(Math.max(...y) / 100).toBeGreaterThan(LENGTH_MM - 7);
  });

  it('replays to the same state hash in Node', () => {
    expect(replay(saved.recording).hash()).toBe(saved.recording.stateHash);
  });

  it('gets the same verdict and digits when the file is scored in Node', async () => {
    const result = scoreAttempt(readRecording(readFileSync(saved.path, 'utf8'), 'attempt.json'));
    expect(result.verdict).toBe(verdict);
    expect(result.lines.length).toBe((await bench.lines()).length);
    const root = result.lines.find((line) => line.measure === 'root fusion');
    expect(root).toBeDefined();
    const shown = (await bench.lines()).find((text) => text.startsWith('root fusion'));
    expect(shown?.replace('−', '-')).toContain(String(Number(root?.reading.toFixed(2))));
  });

  it('goes to the place of a line in one click: joint, cut and replay', async () => {
    const { page } = bench;
    const place = page.locator('.lines tbody tr').first().getByRole('button');
    // The flag's number stands in a circle of its own before the millimetres.
    const at = Number((await place.evaluate((button) => button.lastChild?.textContent)) ?? Number.NaN);
    await place.click();
    await page.locator('.staff .now').waitFor({ state: 'attached' });
    await page.getByRole('heading', { name: `Cut A–A at ${at.toFixed(1)} mm` }).waitFor();
    await page.getByRole('button', { name: 'Finished piece' }).click();
    await page.locator('.staff .now').waitFor({ state: 'detached' });
  });

  it('keeps the attempt in the browser over a reload', async () => {
    const { page } = bench;
    const before = await bench.lines();
    await page.reload();
    await page.locator('.pane canvas').waitFor();
    await page.getByRole('button', { name: 'Attempts' }).click();
    await page.locator('.shelf li').first().getByRole('button', { name: 'Open' }).click();
    expect(await bench.verdict()).toBe(verdict);
    expect(await bench.lines()).toEqual(before);
  });

  it('raised no error in the page', () => {
    expect(bench.complaints).toEqual([]);
  });
});
