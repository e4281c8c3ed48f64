import { renameSync, rmSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { defineConfig, type Plugin } from 'vite';
import { viteSingleFile } from 'vite-plugin-singlefile';

const path = (relative: string): string => fileURLToPath(new URL(relative, import.meta.url));

/** Moves the one page of the single-file build to dist/toehold.html, where a user will look for it. */
function placeSingleFile(): Plugin {
  return {
    name: 'toehold:place-single-file',
    closeBundle() {
      renameSync(path('./dist/single/index.html'), path('./dist/toehold.html'));
      rmSync(path('./dist/single'), { recursive: true });
    },
  };
}

/**
 * `vite build` makes dist/game (pages, scripts, one Worker file); `vite build --mode single` makes dist/toehold.html, one page
 * that opens by double click. From `file:` a page may not load a Worker by address, so that build inlines it.
 */
export default defineConfig(({ mode }) => {
  const single = mode === 'single';
  return {
    root: path('./game'),
    base: './',
    publicDir: false,
    plugins: single ? [viteSingleFile({ removeViteModuleLoader: true }), placeSingleFile()] : [],
    resolve: {
      alias: single ? [{ find: /^\.\/spawn\.ts$/, replacement: path('./game/browser/worker/spawn-inline.ts') }] : [],
    },
    worker: { format: single ? 'iife' : 'es' },
    build: {
      outDir: path(single ? './dist/single' : './dist/game'),
      emptyOutDir: true,
      target: 'es2022',
      chunkSizeWarningLimit: 1500,
      ...(single ? { assetsInlineLimit: Number.MAX_SAFE_INTEGER } : {}),
    },
    server: { port: 5173, strictPort: false },
    preview: { port: 4173, strictPort: false },
  };
});
