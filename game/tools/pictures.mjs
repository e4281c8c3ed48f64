/**
 * Makes the README's pictures from the real game: welds with the pointer in Chromium on the built single file and photographs the screen.
 * `npm run pictures` (builds first). Needs Chromium (CHROME_PATH or Debian's).
 */
import { existsSync, mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { chromium } from 'playwright-core';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));
const OUT = join(ROOT, 'assets', 'pictures');
const PAGE = pathToFileURL(join(ROOT, 'dist', 'toehold.html')).href;
const BROWSERS = [process.env.CHROME_PATH, '/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome'];
const program = BROWSERS.find((path) => path && existsSync(path));
if (!program)
  throw new Error('The pictures need Chromium or Chrome: install it, or set CHROME_PATH to its program file.');
mkdirSync(OUT, { recursive: true });

/** A patient hand: shelf, then an inverted V with a pause at each toe. Seconds to (across, up) in mm. */
const SHELF_S = 1;
const TRAVEL = 2.2;
const CYCLES = 0.9;
const PAUSE_S = 0.25;
const HALF = 3;
const REACH = 2;
function handAt(t) {
  const phase = (t * CYCLES) % 1;
  const pause = PAUSE_S * CYCLES;
  const cross = 0.5 - pause;
  let x = -1;
  if (phase < pause) x = 1;
  else if (phase < pause + cross) x = 1 - (2 * (phase - pause)) / cross;
  else if (phase >= 2 * pause + cross) x = -1 + (2 * (phase - 2 * pause - cross)) / cross;
  return { u: HALF * x, y: 3 + Math.max(0, t - SHELF_S) * TRAVEL + REACH * (1 - Math.abs(x)) };
}

/** Places of the ruler's figures on screen give the scale; the seam between the plates gives the root. */
async function scaleOf(page) {
  return page.evaluate(() => {
    const marks = [...document.querySelectorAll('*')]
      .filter((e) => e.children.length === 0 && /^\d+$/.test(e.textContent ?? ''))
      .map((e) => ({ mm: Number(e.textContent), box: e.getBoundingClientRect() }))
      .filter((m) => m.box.x < 80 && m.box.height > 0);
    const low = marks.find((m) => m.mm === 10);
    const high = marks.find((m) => m.mm === 80);
    const middle = (m) => m.box.y + m.box.height / 2;
    const perMm = (middle(low) - middle(high)) / 70;
    return { perMm, zeroY: middle(low) + 10 * perMm };
  });
}

async function picture(size, name, seconds, during) {
  const browser = await chromium.launch({
    executablePath: program,
    args: [
      '--no-sandbox',
      '--disable-background-networking',
      '--use-angle=swiftshader',
      '--enable-unsafe-swiftshader',
      '--mute-audio',
    ],
  });
  try {
    const page = await browser.newPage({ viewport: size });
    await page.goto(PAGE);
    await page.locator('dialog[open] button').first().click();
    await page.waitForTimeout(800);
    const box = await page.locator('canvas').first().boundingBox();
    const { perMm, zeroY } = await scaleOf(page);
    const seam = await seamOf(page, box);
    const start = Date.now();
    const aim = () => {
      const { u, y } = handAt((Date.now() - start) / 1000);
      return [seam + u * perMm, zeroY - y * perMm];
    };
    await page.mouse.move(...aim());
    await page.mouse.down();
    let shot = false;
    while (Date.now() - start < seconds * 1000) {
      await page.mouse.move(...aim());
      if (during && !shot && Date.now() - start > seconds * 600) {
        await page.screenshot({ path: join(OUT, during) });
        shot = true;
      }
      await page.waitForTimeout(8);
    }
    await page.mouse.up();
    await page.waitForTimeout(12000);
    await page.screenshot({ path: join(OUT, name) });
  } finally {
    await browser.close();
  }
}

/** Middle between the names of the two plates: they stand at the outer ends of the drawn joint. */
async function seamOf(page, box) {
  const left = await page.getByText('left plate', { exact: true }).first().boundingBox();
  const right = await page.getByText('right plate', { exact: true }).first().boundingBox();
  if (!left || !right) return box.x + box.width / 2;
  return (left.x + right.x + right.width) / 2;
}

await picture({ width: 1440, height: 900 }, 'finished.png', 38, 'welding.png');
await picture({ width: 390, height: 844 }, 'phone.png', 12, null);
