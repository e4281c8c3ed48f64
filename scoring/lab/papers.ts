import { fileURLToPath } from 'node:url';
import { Piscina } from 'piscina';
import type { ClassPaperTask } from './class-paper-of.ts';

/** Draws papers away from the thread that answers requests, one at a time; the thread is there while there is work. */
export interface Papers {
  classPdf(task: ClassPaperTask): Promise<Uint8Array>;
  stop(): Promise<void>;
}

/** Longest a paper may take, ms. */
const PATIENCE_MS = 120_000;

export function openPapers(): Papers {
  const pool = new Piscina<ClassPaperTask, Uint8Array>({
    filename: fileURLToPath(new URL('./paper-thread.mjs', import.meta.url)),
    minThreads: 0,
    maxThreads: 1,
    idleTimeout: 30_000,
    resourceLimits: { maxOldGenerationSizeMb: 1024 },
  });
  pool.on('error', () => undefined);
  return {
    classPdf: (task) => pool.run(task, { signal: AbortSignal.timeout(PATIENCE_MS) }),
    stop: () => pool.destroy(),
  };
}
