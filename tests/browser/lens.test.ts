import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Moment, weldScene } from '../../game/tools/sheet/scenes.ts';
import type { Still } from '../../game/tools/sheet/still.ts';
import { lookAt, see } from '../../game/view/lens/pinhole.ts';
import { launchChromium } from './support/chromium.ts';
import { contrast, discLuminance, luminance, type Picture, Sheet } from './support/sheet.ts';

/*
 * The close view against the list it has to meet, in pictures drawn by the game's own shaders from surfaces the engine welded. Contrast
 * ratios are those of WCAG 2.2 (relative luminance of sRGB); the limits are ours: what can be told apart in grey.
 */

const PX = 600;
const SCALE = 20;
const LENS = { width_px: PX, height_px: PX, scale: SCALE, manner: 'lens' as const };

let browser: Browser;
let sheet: Sheet;
const stills = new Map<Moment, Still>();

beforeAll(async () => {
  browser = await launchChromium();
  sheet = await Sheet.open(browser);
  weldScene(
    {
      name: 'warm',
      exercise: 'tee-inverted-v',
      length_mm: 34,
      feed: 5.2,
      volts: 19,
      weave: { width_mm: 6, travel_mmps: 2.2, apex_mm: 2.5, shelf_s: 1.2, reStrikes: 0 },
      moments: ['root', 'left', 'finished'],
      from_s: 9,
    },
    (moment, still) => stills.set(moment, still),
  );
}, 180_000);

afterAll(async () => {
  await sheet?.close();
  await browser?.close();
});

function still(moment: Moment): Still {
  const found = stills.get(moment);
  if (!found) throw new Error(`The weld never came to ${moment}.`);
  return found;
}

/** Reads a still's skin: value `field` of a column. */
function skinOf(of: Still): (field: number, k: number, j: number) => number {
  const bytes = Buffer.from(of.skin, 'base64');
  const texels = new Float32Array(bytes.buffer, bytes.byteOffset, bytes.byteLength / 4);
  return (field, k, j) => texels[(field >= 4 ? of.nu * of.ny * 4 : 0) + (k * of.ny + j) * 4 + (field % 4)]!;
}

/** Pixel of a column in the picture drawn by LENS. */
function pixelOf(of: Still, k: number, j: number): { x: number; y: number } {
  const look = lookAt(of.torch?.footY_mm ?? 0, PX, PX, SCALE);
  const place = { u_mm: of.u0_mm + k * of.du_mm, y_mm: of.y0_mm + j * of.dy_mm, w_mm: skinOf(of)(0, k, j) };
  const { x_px, y_px } = see(look, place);
  return { x: x_px, y: y_px };
}

/** Slices of the puddle on the root line, lowest and highest. */
function pool(of: Still): { low: number; high: number; middle: number } {
  const at = skinOf(of);
  const middle = (of.nu - 1) / 2;
  const liquid = [...Array(of.ny).keys()].filter((j) => at(4, middle, j) > 0);
  return { low: liquid[0]!, high: liquid.at(-1)!, middle };
}

describe('through the lens', () => {
  it('tells the puddle from the bead just frozen (1.5 : 1 or more) and from the plate (3 : 1 or more)', async () => {
    for (const moment of ['root', 'left'] as const) {
      const of = still(moment);
      const picture = await sheet.draw(of, LENS);
      const { low, high, middle } = pool(of);
      const inside = pixelOf(of, middle, Math.round(low + 0.35 * (high - low)));
      const behind = pixelOf(of, middle, low - 3);
      const beside = pixelOf(of, of.nu - 4, Math.round((low + high) / 2));
      const light = (p: { x: number; y: number }): number => discLuminance(picture, p.x, p.y, 8);
      expect(contrast(light(inside), light(behind)), `${moment}: bead`).toBeGreaterThan(1.5);
      expect(contrast(light(inside), light(beside)), `${moment}: plate`).toBeGreaterThan(3);
    }
  });

  it('hides no more than 1.2 mm round the foot behind the arc’s core', async () => {
    const picture = await sheet.draw(still('root'), LENS);
    let white = 0;
    for (let i = 0; i < picture.rgb.length; i += 3)
      if (Math.min(picture.rgb[i]!, picture.rgb[i + 1]!, picture.rgb[i + 2]!) > 250) white += 1;
    expect(white).toBeGreaterThan(20);
    expect(Math.sqrt(white / Math.PI) / SCALE).toBeLessThan(1.2);
  });

  it('shows the open root as a dark seam right into the puddle', async () => {
    const of = still('left');
    const picture = await sheet.draw(of, LENS);
    const { high, middle } = pool(of);
    for (const above of [3, 6, 10]) {
      const seam = pixelOf(of, middle, high + above);
      const plate = pixelOf(of, middle + 4, high + above);
      expect(contrast(luminance(picture, seam.x, seam.y), discLuminance(picture, plate.x, plate.y, 4))).toBeGreaterThan(
        1.15,
      );
      expect(luminance(picture, seam.x, seam.y)).toBeLessThan(discLuminance(picture, plate.x, plate.y, 4));
    }
  });

  it('draws the puddle’s edge without the steps of the columns', async () => {
    const of = still('left');
    const picture = await sheet.draw(of, { ...LENS, manner: 'plain' });
    const { low, high, middle } = pool(of);
    const from = Math.round(pixelOf(of, middle, Math.round(low + 0.7 * (high - low))).y);
    const to = Math.round(pixelOf(of, middle, Math.round(low + 0.3 * (high - low))).y);
    const edges: number[] = [];
    for (let y = from; y < to; y++) edges.push(rightEdge(picture, y));
    expect(edges.length).toBeGreaterThan(20);
    // A column is 0.53 mm wide, 10 pixels: against its own neighbours the edge may not leave a straight line by a fifth of that.
    for (let i = 6; i < edges.length - 6; i++)
      expect(Math.abs(edges[i]! - (edges[i - 6]! + edges[i + 6]!) / 2)).toBeLessThan(2);
  });

  it('counts as many ripples on the bead as there were root crossings, within one of ten', async () => {
    const of = still('finished');
    const at = skinOf(of);
    const middle = (of.nu - 1) / 2;
    const j0 = Math.round((12 - of.y0_mm) / of.dy_mm);
    const j1 = Math.round((22 - of.y0_mm) / of.dy_mm);
    const asked = at(3, middle, j1) - at(3, middle, j0);
    const picture = await sheet.draw(of, {
      width_px: 300,
      height_px: 600,
      scale: 24,
      manner: 'plain',
      below_deg: 0,
      y_mm: 17,
    });
    const look = lookAt(17, 300, 600, 24, 0);
    const row = (j: number): number =>
      Math.round(see(look, { u_mm: 0, y_mm: of.y0_mm + j * of.dy_mm, w_mm: at(0, middle, j) }).y_px);
    const line: number[] = [];
    for (let y = row(j1); y <= row(j0); y++) line.push(discLuminance(picture, 150, y, 2));
    expect(asked).toBeGreaterThan(6);
    expect(Math.abs(valleys(line) - asked)).toBeLessThan(1 + asked / 10);
  });

  it('draws a mirrored weld as the mirror image, but for grain', async () => {
    const one = await sheet.draw(still('left'), LENS);
    const two = await sheet.draw(still('left'), { ...LENS, mirrored: true });
    const block = 20;
    let sum = 0;
    let worst = 0;
    let count = 0;
    for (let y = 0; y + block <= PX; y += block)
      for (let x = 0; x + block <= PX; x += block) {
        const off = Math.abs(meanOf(one, x, y, block) - meanOf(two, PX - x - block, y, block));
        sum += off;
        worst = Math.max(worst, off);
        count += 1;
      }
    expect(sum / count).toBeLessThan(3);
    expect(worst).toBeLessThan(28);
  });

  it('flashes nowhere: less than 1 % of the picture swings by a tenth of full light over twice a second', async () => {
    const px = 300;
    const wish = { width_px: px, height_px: px, scale: 10, manner: 'lens' as const };
    const frames: Picture[] = [];
    for (let n = 0; n < 16; n++) frames.push(await sheet.draw(still('root'), { ...wish, clock_s: 2 + n / 16 }));
    let flashing = 0;
    for (let y = 0; y < px; y += 2)
      for (let x = 0; x < px; x += 2)
        if (
          swings(
            frames.map((f) => luminance(f, x, y)),
            0.1,
          ) > 4
        )
          flashing += 1;
    expect(flashing / (px / 2) ** 2).toBeLessThan(0.01);
  }, 120_000);

  it('raised no error in the page', () => {
    expect(sheet.complaints).toEqual([]);
  });
});

/** Rightmost place in a row where the plain view's pale pool ends, to part of a pixel. */
function rightEdge(picture: Picture, y: number): number {
  const pale = (x: number): number => picture.rgb[(y * picture.width + x) * 3 + 2]!;
  for (let x = picture.width - 60; x > 60; x--) {
    if (pale(x) < 110) continue;
    const inside = pale(x);
    const outside = pale(x + 1);
    return x + (inside - 110) / Math.max(1, inside - outside);
  }
  return Number.NaN;
}

/** Dips of a line below its own running mean. */
function valleys(line: readonly number[]): number {
  const reach = 12;
  let count = 0;
  let below = false;
  line.forEach((value, i) => {
    const near = line.slice(Math.max(0, i - reach), i + reach + 1);
    const mean = near.reduce((a, b) => a + b, 0) / near.length;
    const now = value < mean * 0.96;
    if (now && !below) count += 1;
    if (now || value > mean) below = now;
  });
  return count;
}

function meanOf(picture: Picture, x0: number, y0: number, size: number): number {
  let sum = 0;
  for (let y = y0; y < y0 + size; y++)
    for (let x = x0; x < x0 + size; x++) {
      const i = (y * picture.width + x) * 3;
      sum += (picture.rgb[i]! + picture.rgb[i + 1]! + picture.rgb[i + 2]!) / 3;
    }
  return sum / size ** 2;
}

/** Changes of direction by at least `least` in a second of values: two are one flash. */
function swings(values: readonly number[], least: number): number {
  let count = 0;
  let turn = values[0]!;
  let way = 0;
  for (const value of values) {
    const step = value - turn;
    if (Math.abs(step) >= least && Math.sign(step) !== way) {
      count += 1;
      way = Math.sign(step);
      turn = value;
    } else if (way !== 0 && Math.sign(step) === way) turn = value;
  }
  return count;
}
