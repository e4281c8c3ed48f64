// Makes the README's pictures (assets/pictures/*.webp, each under 200 kB) from the real game. The robot hand welds on the command line and the game
// opens its files: so the pictures come out the same on a machine that cannot keep real time.
// Usage: npm run pictures. Needs Chromium ($CHROME_PATH or a usual place).
import { execFileSync } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium } from 'playwright-core';
import { preview } from 'vite';
import { fail, ROOT } from './install.mjs';

const OUT = join(ROOT, 'assets', 'pictures');
const WELD_MS = 180_000;
const SETTLE_MS = 1500;
const DESK = { width: 1440, height: 900 };
const PHONE = { width: 390, height: 844 };
/** A picture weighs no more, bytes; WebP at this quality leaves small lettering clean. */
const MOST_BYTES = 200_000;
const QUALITY = 88;

const program = process.env.CHROME_PATH ?? ['/usr/bin/chromium', '/usr/bin/google-chrome'].find((p) => existsSync(p));
if (!program) fail('No Chromium found: set CHROME_PATH to its program file.');
if (!existsSync(join(ROOT, 'dist', 'game', 'index.html'))) fail('dist/game is missing: run `npm run build` first.');
mkdirSync(OUT, { recursive: true });
const welds = mkdtempSync(join(tmpdir(), 'toehold-pictures-'));

const server = await preview({
  root: join(ROOT, 'game'),
  configFile: join(ROOT, 'vite.config.ts'),
  logLevel: 'error',
  preview: { port: 0, strictPort: false, open: false },
});
const browser = await chromium.launch({
  executablePath: program,
  args: ['--no-sandbox', '--mute-audio', '--use-angle=swiftshader', '--enable-unsafe-swiftshader'],
});

async function open(viewport, more = {}) {
  const page = await (await browser.newContext({ viewport, ...more })).newPage();
  await page.goto(server.resolvedUrls.local[0]);
  await page.getByRole('button', { name: 'Understood' }).click();
  await page.getByRole('button', { name: 'Not now' }).click();
  await page.locator('.pane[data-state="idle"]').waitFor();
  return page;
}

/** The robot hand's attempt at an exercise, opened on the bench. */
async function weld(page, exercise) {
  const file = join(welds, `${exercise}.json`);
  const command = join(ROOT, 'dist', 'scoring', 'node', 'cli', 'main.js');
  if (!existsSync(file)) execFileSync(process.execPath, [command, 'weave', '--exercise', exercise, '--out', file]);
  await page.getByTestId('open-file').setInputFiles(file);
  await page
    .getByTestId('verdict')
    .waitFor({ state: 'detached', timeout: 5000 })
    .catch(() => undefined);
  await page.getByTestId('verdict').waitFor({ timeout: WELD_MS });
  await page.waitForTimeout(SETTLE_MS);
  // A fresh browser has promised nothing yet, and says so over the page.
  for (const note of await page.getByRole('button', { name: 'Dismiss' }).all()) await note.click();
}

/** Width of a WebP as Chromium writes it, px: simple or extended (WebP container specification). */
function widthOf(webp) {
  return webp.toString('latin1', 12, 16) === 'VP8X' ? webp.readUIntLE(24, 3) + 1 : webp.readUInt16LE(26) & 0x3fff;
}

/** Chromium's own WebP of a part of the page; null: all of it that is seen. */
async function take(page, name, part = null) {
  const { width, height } = page.viewportSize();
  const line = await page.context().newCDPSession(page);
  const clip = { ...(part ?? { x: 0, y: 0, width, height }) };
  const shoot = async (scale) => {
    const wish = { format: 'webp', quality: QUALITY, clip: { ...clip, scale } };
    return Buffer.from((await line.send('Page.captureScreenshot', wish)).data, 'base64');
  };
  // Some Chromiums count a picture's pixels by the screen's, some by the page's.
  const ratio = await page.evaluate(() => devicePixelRatio);
  let picture = await shoot(1);
  if (ratio > 1 && widthOf(picture) < 1.5 * clip.width) picture = await shoot(ratio);
  if (picture.length > MOST_BYTES) fail(`${name}: found ${picture.length} bytes, allowed: at most ${MOST_BYTES}`);
  writeFileSync(join(OUT, `${name}.webp`), picture);
  process.stdout.write(`assets/pictures/${name}.webp (${Math.round(picture.length / 1000)} kB)\n`);
}

const desk = await open(DESK);
await weld(desk, 'straight-run');
await weld(desk, 'tee-inverted-v');
await desk.locator('h1').click();
await take(desk, 'finished');

await desk.locator('.compare select').selectOption({ index: 1 });
await desk.locator('.plates figure').nth(1).waitFor({ timeout: WELD_MS });
await desk.waitForTimeout(SETTLE_MS);
await take(desk, 'compare', await desk.locator('.cut').boundingBox());
await desk.context().close();

// A replay at rest, drawn in full: what the welder sees through the lens.
const lens = await open(DESK, { deviceScaleFactor: 2 });
await weld(lens, 'tee-inverted-v');
await lens.getByRole('slider', { name: 'Time in the attempt' }).fill('20.5');
await lens.waitForTimeout(3 * SETTLE_MS);
const pane = await lens.locator('.pane').boundingBox();
await take(lens, 'puddle', {
  ...{ x: Math.ceil(pane.x), y: Math.ceil(pane.y) + 150 },
  ...{ width: Math.floor(pane.width), height: 420 },
});
await lens.context().close();

const phone = await open(PHONE, { hasTouch: true, isMobile: true, deviceScaleFactor: 2 });
await weld(phone, 'lap-5');
await take(phone, 'phone');

await browser.close();
await server.close();
rmSync(welds, { recursive: true });
