/** Starts a Worker from its own file. The single-file build takes spawn-inline.ts instead (see vite.config.ts). Names as in names.ts. */

export function spawnBench(): Worker {
  return new Worker(new URL('./main.ts', import.meta.url), { type: 'module', name: 'toehold-bench' });
}

export function spawnHand(): Worker {
  return new Worker(new URL('./main.ts', import.meta.url), { type: 'module', name: 'toehold-hand' });
}
