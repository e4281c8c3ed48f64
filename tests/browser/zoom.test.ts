import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Recording } from '../../engine/index.ts';
import { BenchDriver, type Place } from './support/bench.ts';
import { launchChromium } from './support/chromium.ts';
import { distanceTo, polyline } from './support/paths.ts';
import { type Site, serveGame } from './support/site.ts';

/** A window of 1280 by 960 device-independent pixels; the browser's zoom changes how many CSS pixels that is and their ratio. */
const WINDOW = { width: 1280, height: 960 };
const CASES = [
  { zoom: 0.5, ratio: 1 },
  { zoom: 2, ratio: 2 },
];
const PATH: Place[] = [
  { u_mm: 0, y_mm: 4 },
  { u_mm: 3, y_mm: 6 },
  { u_mm: -3, y_mm: 8 },
  { u_mm: 2, y_mm: 12 },
];
const ALLOWED_MM = 0.1;

let browser: Browser;
let site: Site;

beforeAll(async () => {
  [browser, site] = await Promise.all([launchChromium(), serveGame()]);
});

afterAll(async () => {
  await Promise.all([browser?.close(), site?.close()]);
});

/** Places of a recording while the trigger was on. */
function places(recording: Recording): Place[] {
  const { u, y, trigger } = recording.poses;
  return u.map((value, i) => ({ u_mm: value / 100, y_mm: y[i] / 100 })).filter((_, i) => trigger[i] === 1);
}

async function draw(zoom: number, ratio: number): Promise<Place[]> {
  const bench = await BenchDriver.open(browser, site.address, {
    plain: true,
    viewport: { width: WINDOW.width / zoom, height: WINDOW.height / zoom },
    deviceScaleFactor: ratio * zoom,
  });
  try {
    await bench.setNumber('length of joint', 30);
    await bench.weld(polyline(PATH, 6, 0.3), 4);
    await bench.finish();
    const { recording } = await bench.save();
    expect(recording.ended).toBe('stopped');
    return places(recording);
  } finally {
    await bench.close();
  }
}

describe('browser zoom and device pixel ratio', () => {
  it('change nothing in the recording: the same path in millimetres within 0.1 mm', async () => {
    const drawn = [];
    for (const { zoom, ratio } of CASES) drawn.push(await draw(zoom, ratio));
    for (const [i, path] of drawn.entries()) {
      const which = `zoom ${CASES[i].zoom}, pixel ratio ${CASES[i].ratio}`;
      for (const place of path) expect(distanceTo(place, PATH), which).toBeLessThan(ALLOWED_MM);
      for (const corner of PATH.slice(0, -1)) expect(distanceTo(corner, path), which).toBeLessThan(ALLOWED_MM);
    }
  }, 120_000);
});
