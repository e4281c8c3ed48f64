/** Figures of the page, from Chromium: main-thread time a frame while welding, and what the first load weighs. */
import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { gzipSync } from 'node:zlib';
import { chromium } from 'playwright-core';
import { preview } from 'vite';
import { median } from './statistics.ts';

export interface PageFigures {
  mainThreadMs: number | null;
  firstLoadKb: number | null;
  why: Record<string, string>;
}

const ROOT = fileURLToPath(new URL('../..', import.meta.url));
const BROWSERS = [process.env.CHROME_PATH, '/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome'];
const FRAMES = 240;

export async function benchPage(): Promise<PageFigures> {
  const why: Record<string, string> = {};
  const dist = join(ROOT, 'dist', 'game');
  if (!existsSync(dist))
    return { mainThreadMs: null, firstLoadKb: null, why: { page: 'no dist/game: run npm run build first' } };
  const executablePath = BROWSERS.find((p) => p && existsSync(p));
  if (!executablePath) return { mainThreadMs: null, firstLoadKb: null, why: { page: 'no Chromium found' } };
  const server = await preview({
    root: join(ROOT, 'game'),
    configFile: join(ROOT, 'vite.config.ts'),
    preview: { port: 0 },
    logLevel: 'silent',
  });
  const browser = await chromium.launch({
    executablePath,
    args: [
      '--no-sandbox',
      '--disable-background-networking',
      '--use-angle=swiftshader',
      '--enable-unsafe-swiftshader',
      '--mute-audio',
    ],
  });
  try {
    const page = await browser.newPage({ viewport: { width: 1366, height: 768 } });
    const loaded = new Set<string>();
    page.on('response', (r) => loaded.add(new URL(r.url()).pathname));
    await page.goto(server.resolvedUrls!.local[0]!);
    await page.waitForLoadState('networkidle');
    const firstLoadKb = gzipped(dist, loaded);
    const accept = page.getByRole('button', { name: /understood|read|start/i }).first();
    if (await accept.isVisible().catch(() => false)) await accept.click();
    const canvas = page.locator('canvas').first();
    const box = await canvas.boundingBox();
    if (!box) return { mainThreadMs: null, firstLoadKb, why: { mainThreadMs: 'no canvas on the page' } };
    const client = await page.context().newCDPSession(page);
    await client.send('Performance.enable');
    const x = box.x + box.width / 2;
    let y = box.y + box.height * 0.85;
    await page.mouse.move(x, y);
    await page.mouse.down();
    const perFrame: number[] = [];
    let before = await taskTime(client);
    for (let frame = 0; frame < FRAMES; frame++) {
      y -= 0.3;
      await page.mouse.move(x + 20 * Math.sin(frame / 9), y);
      const frames = await page.evaluate(
        () => new Promise<number>((done) => requestAnimationFrame(() => requestAnimationFrame(() => done(2)))),
      );
      const now = await taskTime(client);
      perFrame.push((1000 * (now - before)) / frames);
      before = now;
    }
    await page.mouse.up();
    return { mainThreadMs: median(perFrame), firstLoadKb, why };
  } finally {
    await browser.close();
    await server.close();
  }
}

async function taskTime(client: {
  send(m: 'Performance.getMetrics'): Promise<{ metrics: { name: string; value: number }[] }>;
}) {
  const { metrics } = await client.send('Performance.getMetrics');
  return metrics.find((m) => m.name === 'ScriptDuration')!.value;
}

function gzipped(dist: string, loaded: Set<string>): number {
  const files = new Map<string, string>();
  const walk = (dir: string, at: string): void => {
    for (const name of readdirSync(dir)) {
      const path = join(dir, name);
      if (statSync(path).isDirectory()) walk(path, `${at}/${name}`);
      else files.set(`${at}/${name}`, path);
    }
  };
  walk(dist, '');
  let bytes = 0;
  for (const path of loaded) {
    const file = files.get(path === '/' ? '/index.html' : path);
    if (file) bytes += gzipSync(readFileSync(file)).length;
  }
  return bytes / 1000;
}
