/** One Chromium and one local server for every file of browser tests; vitest starts both once and hands their addresses to the files. */

import { existsSync } from 'node:fs';
import type { AddressInfo } from 'node:net';
import { fileURLToPath } from 'node:url';
import { chromium } from 'playwright-core';
import type { TestProject } from 'vitest/node';
// @ts-expect-error: a script without types, since it runs before anything is installed
import { serveFolder } from '../../../game/tools/serve.mjs';
import { ARGUMENTS, chromiumPath, PLAINLY } from './chromium.ts';

declare module 'vitest' {
  interface ProvidedContext {
    chromium: string;
    game: string;
  }
}

const GAME = fileURLToPath(new URL('../../../dist/game/', import.meta.url));

export default async function start(project: TestProject): Promise<() => Promise<void>> {
  if (!existsSync(`${GAME}index.html`)) throw new Error('dist/game is missing: run `npm run build` first.');
  const server = await serveFolder(GAME, 0);
  const args = process.env.BROWSER_TESTS === 'beside' ? PLAINLY : ARGUMENTS;
  const browser = await chromium.launchServer({ executablePath: chromiumPath(), args });
  project.provide('chromium', browser.wsEndpoint());
  project.provide('game', `http://localhost:${(server.address() as AddressInfo).port}/`);
  return async () => {
    await browser.close();
    server.close();
  };
}
