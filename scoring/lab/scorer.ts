import { fileURLToPath } from 'node:url';
import { Piscina } from 'piscina';
import type { ScoreOutcome, ScoreTask } from './score-one.ts';

/** Welds and judges attempts away from the thread that answers requests. */
export interface Scorer {
  threads: number;
  /** @throws Error when the thread broke off (out of memory, or slower than allowed) */
  score(task: ScoreTask): Promise<ScoreOutcome>;
  stop(): Promise<void>;
}

/** @param slowest_s an attempt that takes longer is broken off and its thread ended */
export function openScorer(threads: number, slowest_s: number): Scorer {
  const pool = new Piscina<ScoreTask, ScoreOutcome>({
    filename: fileURLToPath(new URL('./score-thread.mjs', import.meta.url)),
    minThreads: 0,
    maxThreads: threads,
    idleTimeout: 60_000,
    resourceLimits: { maxOldGenerationSizeMb: 2048 },
  });
  pool.on('error', () => undefined);
  return {
    threads,
    score: (task) => pool.run(task, { signal: AbortSignal.timeout(slowest_s * 1000) }),
    stop: () => pool.destroy(),
  };
}
