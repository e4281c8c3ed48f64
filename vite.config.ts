import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vite';
import { viteSingleFile } from 'vite-plugin-singlefile';
import { finishPage, LIST } from './game/tools/build/finish-page.ts';
import { workerPackages } from './game/tools/build/notices.ts';

const path = (relative: string): string => fileURLToPath(new URL(relative, import.meta.url));

/**
 * `vite build` makes dist/game (pages, scripts, one Worker file); `vite build --mode single` makes dist/toehold.html, one page
 * that opens by double click. From `file:` a page may not load a Worker by address, so that build inlines it.
 */
export default defineConfig(({ mode }) => {
  const single = mode === 'single';
  const inWorker = new Set<string>();
  return {
    root: path('./game'),
    base: './',
    publicDir: false,
    plugins: [
      ...(single ? [viteSingleFile({ removeViteModuleLoader: true })] : []),
      finishPage({ root: path('./'), single, inWorker }),
    ],
    resolve: {
      alias: single ? [{ find: /^\.\/spawn\.ts$/, replacement: path('./game/browser/worker/spawn-inline.ts') }] : [],
    },
    worker: { format: single ? 'iife' : 'es', plugins: () => [workerPackages(inWorker)] },
    build: {
      outDir: path(single ? './dist/single' : './dist/game'),
      emptyOutDir: true,
      target: 'es2022',
      license: { fileName: LIST },
      chunkSizeWarningLimit: 1500,
      // The bench, and the pages of a school's lab for its instructors.
      ...(single ? {} : { rolldownOptions: { input: [path('./game/index.html'), path('./game/lab/index.html')] } }),
      ...(single ? { assetsInlineLimit: Number.MAX_SAFE_INTEGER } : {}),
    },
    server: { port: 5173, strictPort: false },
    preview: { port: 4173, strictPort: false },
  };
});
