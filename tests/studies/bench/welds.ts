/** Whole welds: real-time factor, cost by coupon length, scaling over workers, memory. Runs on the built library. */
import { Worker } from 'node:worker_threads';
import { median } from './statistics.ts';

const WELD_WORKER = new URL('weldWorker.mjs', import.meta.url);
const STRETCH_WORKER = new URL('stretchWorker.mjs', import.meta.url);

interface WeldTime {
  /** Seconds welded and seconds of one core's time it took. */
  welded_s: number;
  cpu_s: number;
  wall_s: number;
  heap_MB: number;
}

/** Welds `seconds` of the standard weave on a coupon of this length, in a worker of its own. */
function timeWeld(length_mm: number, seconds: number, repeats: number): Promise<WeldTime[]> {
  return new Promise((resolve, reject) => {
    const worker = new Worker(WELD_WORKER, { workerData: { length_mm, seconds, repeats } });
    worker.once('message', resolve);
    worker.once('error', reject);
  });
}

/** A thread that welds the standard 30 s whenever it is asked, warmed; `timesRealTime` of one weld. */
export function standardWelder(): { timesRealTime(): Promise<number>; stop(): Promise<unknown> } {
  const worker = new Worker(WELD_WORKER, { workerData: { length_mm: 60, seconds: 30, repeats: 0 } });
  return {
    timesRealTime: () =>
      new Promise((resolve, reject) => {
        worker.removeAllListeners();
        worker.once('message', ([weld]: WeldTime[]) => resolve(weld!.welded_s / weld!.cpu_s));
        worker.once('error', reject);
        worker.postMessage('weld');
      }),
    stop: () => worker.terminate(),
  };
}

interface StretchTimes {
  cold_ms: number;
  warm_ms: number[];
}

/** 20 mm welded anew as *what if* does, each time in a thread of its own that starts with nothing compiled. */
function timeStretch(): Promise<StretchTimes> {
  return new Promise((resolve, reject) => {
    const worker = new Worker(STRETCH_WORKER);
    worker.once('message', resolve);
    worker.once('error', reject);
  });
}

export interface WeldFigures {
  realTimeFactor: number;
  realTimeFactorWorst: number;
  costMsPerSecond: Record<string, number>;
  costRatio240to30: number;
  workers2: number;
  heap_MB: number;
  /** 20 mm welded anew and cut, on the thread that welded the piece and as the first thing a thread does, ms. */
  stretchMs: { warm: number; cold: number };
}

export async function benchWelds(): Promise<WeldFigures> {
  const standard = await timeWeld(60, 30, 5);
  const factors = standard.map((t) => t.welded_s / t.cpu_s);
  const cost: Record<string, number> = {};
  // Interleaved twice, so that a slow spell of the machine hits every length.
  const samples: Record<string, number[]> = {};
  for (let round = 0; round < 2; round++)
    for (const length of [30, 60, 120, 240])
      for (const t of await timeWeld(length, 12, 2)) {
        samples[length] ??= [];
        samples[length].push((1000 * t.cpu_s) / t.welded_s);
      }
  for (const [length, list] of Object.entries(samples)) cost[length] = median(list);
  // Only the counted, warmed repeats: while a thread starts, compiling takes the second core even from one worker alone.
  const speedups: number[] = [];
  for (let round = 0; round < 3; round++) {
    const wall = (times: WeldTime[]): number => median(times.map((t) => t.wall_s));
    const one = wall(await timeWeld(60, 20, 5));
    const both = await Promise.all([timeWeld(60, 20, 5), timeWeld(60, 20, 5)]);
    speedups.push((2 * one) / wall(both.flat()));
  }
  const stretches = [await timeStretch(), await timeStretch(), await timeStretch()];
  return {
    realTimeFactor: median(factors),
    realTimeFactorWorst: Math.min(...factors),
    costMsPerSecond: cost,
    costRatio240to30: cost['240']! / cost['30']!,
    workers2: median(speedups),
    heap_MB: Math.max(...standard.map((t) => t.heap_MB)),
    stretchMs: {
      warm: median(stretches.flatMap((t) => t.warm_ms)),
      cold: median(stretches.map((t) => t.cold_ms)),
    },
  };
}
