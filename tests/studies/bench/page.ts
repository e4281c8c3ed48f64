/** Figures of the page, from Chromium's tracing: what main thread and Worker do while welding, and what the first load weighs. */
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type Browser, chromium, type Page } from 'playwright-core';
import { preview } from 'vite';
import { BenchDriver } from '../../browser/support/bench.ts';
import { packedSize_kB } from '../../support/budget.ts';
import { median } from './statistics.ts';

interface Measured {
  /** Median over frames of all tasks of the page's main thread, ms. */
  mainThreadMs: number;
  /** Share of one core the Worker takes while an arc burns. */
  workerShare: number;
  /** Median time between frames, ms: without a graphics card the drawing is done by the processor. */
  frameMs: number;
  /** From a pointer's event to the end of the frame that draws the torch there, by the page's own clock, ms; and frames begun in between. */
  inputMs: { median: number; p95: number };
  inputFrames: { median: number; p95: number };
}

export type PageFigures = { [K in keyof Measured]: Measured[K] | null } & {
  /** Everything the page links to before its first weld, without its Worker. */
  firstLoadKb: number | null;
  why: Record<string, string>;
};

const ROOT = fileURLToPath(new URL('../../..', import.meta.url));
const BROWSERS = [process.env.CHROME_PATH, '/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome'];
const ARGUMENTS = [
  '--no-sandbox',
  '--disable-background-networking',
  '--use-angle=swiftshader',
  '--enable-unsafe-swiftshader',
  '--mute-audio',
];
const FRAMES = 240;
const SAME_FRAME_US = 4000;
const TRIES = 3;
/** Each part of the measuring goes on for no longer than this, however slowly the machine draws. */
const LONGEST_MS = 10_000;
const STOPPED = 'the attempt stopped before it was measured: the machine did not keep real time';
/** Before the strike, so that the bench's thread has compiled the engine; and after it: the first second makes shaders and starts the sound. */
const SETTLE_MS = 2500;
const STRIKE_MS = 1500;

export async function benchPage(): Promise<PageFigures> {
  const dist = join(ROOT, 'dist', 'game');
  if (!existsSync(dist)) return nothing(null, { page: 'no dist/game: run npm run build first' });
  const firstLoadKb = packedSize_kB(linkedFrom(dist));
  const executablePath = BROWSERS.find((path) => path && existsSync(path));
  if (!executablePath) return nothing(firstLoadKb, { page: 'no Chromium found' });
  const server = await preview({
    root: join(ROOT, 'game'),
    configFile: join(ROOT, 'vite.config.ts'),
    preview: { port: 0 },
    logLevel: 'silent',
  });
  const browser = await chromium.launch({ executablePath, args: ARGUMENTS });
  try {
    let why = '';
    for (let n = 0; n < TRIES; n++) {
      const figures = await weldOnPage(browser, server.resolvedUrls!.local[0]!);
      if (typeof figures !== 'string') return { ...figures, firstLoadKb, why: {} };
      why = figures;
    }
    return nothing(firstLoadKb, { page: `${why}, ${TRIES} times over` });
  } finally {
    await browser.close();
    await server.close();
  }
}

/** The figures of one attempt, or why there are none. */
async function weldOnPage(browser: Browser, address: string): Promise<Measured | string> {
  const bench = await BenchDriver.open(browser, address, { viewport: { width: 1366, height: 768 } });
  const { page } = bench;
  try {
    await page.waitForTimeout(SETTLE_MS);
    const { x, y } = (await bench.aim())({ u_mm: 0, y_mm: 6 });
    await page.mouse.move(x, y);
    await page.mouse.down();
    await page.waitForTimeout(STRIKE_MS);
    const state = (): Promise<string | null> => page.locator('.pane').getAttribute('data-state');
    if ((await state()) !== 'welding') return STOPPED;
    const input = await inputDelays(page, x, y);
    await browser.startTracing(page, { categories: ['toplevel', 'devtools.timeline'] });
    const until = performance.now() + LONGEST_MS;
    for (let frame = 0; frame < FRAMES && performance.now() < until; frame++) {
      await page.mouse.move(x + 20 * Math.sin(frame / 9), y - 0.3 * (FRAMES / 2 + frame));
      await page.evaluate(() => new Promise((done) => requestAnimationFrame(done)));
    }
    // A page that stopped to weld has little to do: its figures would flatter.
    const wasWelding = (await state()) === 'welding';
    await page.mouse.up();
    const trace = JSON.parse((await browser.stopTracing()).toString()) as { traceEvents: TraceEvent[] };
    if (!wasWelding) return STOPPED;
    if (!input) return 'the torch on the page did not follow the pointer';
    const read = readTrace(trace.traceEvents);
    return read ? { ...read, ...input } : 'the trace holds no frames of the page, or no Worker';
  } finally {
    await bench.close();
  }
}

function nothing(firstLoadKb: number | null, why: Record<string, string>): PageFigures {
  return { mainThreadMs: null, workerShare: null, frameMs: null, inputMs: null, inputFrames: null, firstLoadKb, why };
}

/** What the page asks for before it can weld: everything its first document links to. */
function linkedFrom(dist: string): string[] {
  const html = readFileSync(join(dist, 'index.html'), 'utf8');
  return [...html.matchAll(/(?:src|href)="\.\/(assets\/[^"]+)"/g)].map((found) => join(dist, found[1]!));
}

/** Moves the pointer while the arc burns and lets the page say when what it draws has followed. */
async function inputDelays(
  page: Page,
  x: number,
  y: number,
): Promise<Pick<Measured, 'inputMs' | 'inputFrames'> | null> {
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
    // A method: what compiles this file names functions by a helper that the page does not have.
    const loop = {
      frame(): void {
        requestAnimationFrame(() => loop.frame());
        if (since !== null) since.frames++;
        port2.postMessage(0);
      },
    };
    loop.frame();
  });
  const until = performance.now() + LONGEST_MS;
  for (let n = 0; n < FRAMES / 2 && performance.now() < until; n++) {
    await page.mouse.move(x + 25 * Math.sin(n / 5), y - 0.3 * n);
    await page.waitForTimeout(5);
  }
  const seen = await page.evaluate(() => (window as unknown as { seen: [number, number][] }).seen);
  if (seen.length < 10) return null;
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
function readTrace(events: TraceEvent[]): Pick<Measured, 'mainThreadMs' | 'workerShare' | 'frameMs'> | null {
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
  if (workers.size === 0) return null;
  const last = starts[starts.length - 1]!;
  for (const e of events)
    if (task(e) && e.pid === main.pid && workers.has(e.tid) && e.ts >= main.ts && e.ts <= last)
      workers.set(e.tid, workers.get(e.tid)! + (e.tdur ?? e.dur ?? 0));
  return {
    mainThreadMs: median(perFrame),
    workerShare: Math.max(...workers.values()) / (last - main.ts),
    frameMs: median(starts.slice(1).map((t, k) => (t - starts[k]!) / 1000)),
  };
}
