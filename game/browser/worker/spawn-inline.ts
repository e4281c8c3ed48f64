import BenchWorker from './main.ts?worker&inline';

/** Starts a bench Worker carried inside the page, for the single file opened without a server. */
export function spawnBench(): Worker {
  return new BenchWorker({ name: 'toehold-bench' });
}
