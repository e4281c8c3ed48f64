import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { type PreviewServer, preview } from 'vite';

const ROOT = fileURLToPath(new URL('../../../', import.meta.url));

/** Address of the single file, for opening without a server. */
export const SINGLE_FILE = new URL('../../../dist/toehold.html', import.meta.url).href;

export interface Site {
  address: string;
  close(): Promise<void>;
}

/** Serves the built game. @throws when it has not been built */
export async function serveGame(): Promise<Site> {
  if (!existsSync(`${ROOT}dist/game/index.html`)) throw new Error('dist/game is missing: run `npm run build` first.');
  const server: PreviewServer = await preview({
    root: `${ROOT}game`,
    configFile: `${ROOT}vite.config.ts`,
    logLevel: 'error',
    preview: { port: 0, strictPort: false, open: false },
  });
  const address = server.resolvedUrls?.local[0];
  if (!address) throw new Error('The preview server has no address.');
  return { address, close: () => server.close() };
}
