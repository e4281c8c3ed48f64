/** Figures of the page, from Chromium's tracing: what main thread and Worker do while welding, and what the first load weighs. */
import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { gzipSync } from 'node:zlib';
import { chromium, type Page } from 'playwright-core';
import { preview } from 'vite';
import { median } from './statistics.ts';

export interface PageFigures {
  /** Median over frames of all tasks of the page's main thread, ms. */
  mainThreadMs: number | null;
  /** Share of one core the Worker takes while an arc burns. */
  workerShare: number | null;
  /** Median time between frames, ms: without a graphics card the drawing is done by the processor. */
  frameMs: number | null;
  /** From a pointer's event to the end of the frame that draws the torch there, by the page's own clock, ms; and frames begun in between. */
  inputMs: { median: number; p95: number } | null;
  inputFrames: { median: number; p95: number } | null;
  firstLoadKb: number | null;
  why: Record<string, string>;
}

const ROOT = fileURLToPath(new URL('../../..', import.meta.url));
const BROWSERS = [process.env.CHROME_PATH, '/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome'];
const FRAMES = 240;
const SAME_FRAME_US = 4000;

export async function benchPage(): Promise<PageFigures> {
  const why: Record<string, string> = {};
  const dist = join(ROOT, 'dist', 'game');
  if (!existsSync(dist)) return nothing(null, { page: 'no dist/game: run npm run build first' });
  const executablePath = BROWSERS.find((p) => p && existsSync(p));
  if (!executablePath) return nothing(null, { page: 'no Chromium found' });
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
    if (!box) return nothing(firstLoadKb, { mainThreadMs: 'no canvas on the page' });
    const x = box.x + box.width / 2;
    let y = box.y + box.height * 0.85;
    await page.mouse.move(x, y);
    await page.mouse.down();
    // Past the strike: the first second makes shaders and starts the sound.
    await page.waitForTimeout(1500);
    await browser.startTracing(page, { categories: ['toplevel', 'devtools.timeline'] });
    for (let frame = 0; frame < FRAMES; frame++) {
      y -= 0.3;
      await page.mouse.move(x + 20 * Math.sin(frame / 9), y);
      await page.evaluate(() => new Promise((done) => requestAnimationFrame(done)));
    }
    const trace = JSON.parse((await browser.stopTracing()).toString()) as { traceEvents: TraceEvent[] };
    const input = await inputDelays(page, x, y);
    await page.mouse.up();
    const read = readTrace(trace.traceEvents);
    if (!read) return nothing(firstLoadKb, { mainThreadMs: 'the trace holds no frames of the page' });
    return { ...read, ...input, firstLoadKb, why };
  } finally {
    await browser.close();
    await server.close();
  }
}

function nothing(firstLoadKb: number | null, why: Record<string, string>): PageFigures {
  return { mainThreadMs: null, workerShare: null, frameMs: null, inputMs: null, inputFrames: null, firstLoadKb, why };
}

/** Moves the pointer while the arc burns and lets the page say when what it draws has followed. */
async function inputDelays(page: Page, x: number, y: number): Promise<Pick<PageFigures, 'inputMs' | 'inputFrames'>> {
  await page.evaluate(() => {
    const torch = document.querySelector<SVGElement>('.pane svg.torch')!;
    const seen: [ms: number, frames: number][] = [];
    let since: { ms: number; frames: number; place: string } | null = null;
    Object.assign(window, { seen });
    window.addEventListener(
      'pointermove',
      (event) => {
        since ??= { ms: event.timeStamp, frames: 0, place: torch.style.transform };
      },
      { capture: true },
    );
    const { port1, port2 } = new MessageChannel();
    // Sent from the frame's callbacks, heard after all of them: what the frame draws stands by then.
    port1.onmessage = () => {
      if (since === null || torch.style.transform === since.place) return;
      seen.push([performance.now() - since.ms, since.frames]);
      since = null;
    };
    const frame = (): void => {
      requestAnimationFrame(frame);
      if (since !== null) since.frames++;
      port2.postMessage(0);
    };
    requestAnimationFrame(frame);
  });
  for (let n = 0; n < FRAMES / 2; n++) {
    await page.mouse.move(x + 25 * Math.sin(n / 5), y - 0.3 * n);
    await page.waitForTimeout(5);
  }
  const seen = await page.evaluate(() => (window as unknown as { seen: [number, number][] }).seen);
  if (seen.length < 10) return { inputMs: null, inputFrames: null };
  const spread = (values: number[]) => {
    const sorted = [...values].sort((a, b) => a - b);
    return { median: median(values), p95: sorted[Math.floor(0.95 * sorted.length)]! };
  };
  return { inputMs: spread(seen.map(([ms]) => ms)), inputFrames: spread(seen.map(([, frames]) => frames)) };
}

interface TraceEvent {
  name: string;
  ph: string;
  pid: number;
  tid: number;
  /** µs */
  ts: number;
  dur?: number;
  /** Time the thread really ran, µs: a busy machine does not count. */
  tdur?: number;
  args?: { name?: string };
}

/** Tasks of the thread that fires the page's animation frames, and of the busiest Worker thread beside it. */
function readTrace(events: TraceEvent[]): Pick<PageFigures, 'mainThreadMs' | 'workerShare' | 'frameMs'> | null {
  const frames = events.filter((e) => e.name === 'FireAnimationFrame').sort((a, b) => a.ts - b.ts);
  const main = frames[0];
  if (!main || frames.length < 10) return null;
  // Several callbacks fire in one frame: a new frame begins after a gap.
  const starts = frames.map((f) => f.ts).filter((t, k, all) => k === 0 || t - all[k - 1]! > SAME_FRAME_US);
  const task = (e: TraceEvent): boolean => e.ph === 'X' && e.name.endsWith('RunTask');
  const perFrame = new Array<number>(starts.length - 1).fill(0);
  for (const e of events) {
    if (!task(e) || e.pid !== main.pid || e.tid !== main.tid) continue;
    // A frame's own callbacks run in a task that began before they fired.
    const middle = e.ts + (e.dur ?? 0) / 2;
    let k = starts.length - 1;
    while (k >= 0 && starts[k]! > middle) k--;
    if (k >= 0 && k < perFrame.length) perFrame[k]! += (e.tdur ?? e.dur ?? 0) / 1000;
  }
  const workers = new Map<number, number>();
  for (const e of events)
    if (e.ph === 'M' && e.name === 'thread_name' && e.pid === main.pid && e.args?.name?.startsWith('DedicatedWorker'))
      workers.set(e.tid, 0);
  const last = starts[starts.length - 1]!;
  for (const e of events)
    if (task(e) && e.pid === main.pid && workers.has(e.tid) && e.ts >= main.ts && e.ts <= last)
      workers.set(e.tid, workers.get(e.tid)! + (e.tdur ?? e.dur ?? 0));
  return {
    mainThreadMs: median(perFrame),
    workerShare: workers.size > 0 ? Math.max(...workers.values()) / (last - main.ts) : null,
    frameMs: median(starts.slice(1).map((t, k) => (t - starts[k]!) / 1000)),
  };
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
