/** Starts a bench Worker from its own file. The single-file build takes spawnInline.ts instead (see vite.config.ts). */
export function spawnBench(): Worker {
  return new Worker(new URL('./main.ts', import.meta.url), { type: 'module', name: 'toehold-bench' });
}
