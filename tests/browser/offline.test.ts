/** Once loaded, the page opens and welds without its server; a newer build waits until the old one is closed. */
import { cpSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
// @ts-expect-error: a script without types, since it runs before anything is installed
import { serveFolder } from '../../game/tools/serve.mjs';
import { BenchDriver } from './support/bench.ts';
import { launchChromium } from './support/chromium.ts';
import { polyline } from './support/paths.ts';

const GAME = fileURLToPath(new URL('../../dist/game/', import.meta.url));
const PATH = [
  { u_mm: 0, y_mm: 4 },
  { u_mm: 2, y_mm: 7 },
  { u_mm: -2, y_mm: 10 },
];

let browser: Browser;

beforeAll(async () => {
  browser = await launchChromium();
});

afterAll(async () => {
  await browser?.close();
});

interface Server {
  address(): AddressInfo;
  close(): void;
  closeAllConnections(): void;
}

it('loads, loses its server, opens again, welds and measures; a newer build does not come under an open page', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'toehold-offline-'));
  cpSync(GAME, folder, { recursive: true });
  let server = (await serveFolder(folder, 0)) as Server;
  const { port } = server.address();
  const address = `http://localhost:${port}/`;
  const stop = (): void => {
    server.close();
    server.closeAllConnections();
  };
  const bench = await BenchDriver.open(browser, address, { plain: true, serviceWorkers: 'allow' });
  const { page } = bench;
  await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
  const manifest = await page.evaluate(async () => {
    const href = document.querySelector<HTMLLinkElement>('link[rel="manifest"]')!.href;
    return (await (await fetch(href)).json()) as { icons: { src: string }[]; start_url: string };
  });
  expect(manifest.icons.length).toBeGreaterThan(1);

  // A newer build beside it: fetched, and waiting while this page is open.
  await page.reload();
  const worker = join(folder, 'sw.js');
  const next = readFileSync(worker, 'utf8').replace(/toehold-[0-9a-f]+/, 'toehold-0123456789abcdef');
  writeFileSync(worker, next);
  // The server knows its files from its start on.
  stop();
  server = (await serveFolder(folder, port)) as Server;
  expect(server.address().port).toBe(port);
  const states = await page.evaluate(async () => {
    const registration = (await navigator.serviceWorker.getRegistration())!;
    const mine = navigator.serviceWorker.controller;
    await registration.update();
    const fresh = registration.installing ?? registration.waiting;
    await new Promise<void>((resolve) => {
      const look = (): void => (registration.waiting ? resolve() : void setTimeout(look, 50));
      look();
    });
    return {
      fresh: fresh !== null,
      same: navigator.serviceWorker.controller === mine,
      kept: (await caches.keys()).length,
    };
  });
  expect(states).toEqual({ fresh: true, same: true, kept: 2 });

  stop();
  await page.reload();
  await page.locator('.pane[data-state="idle"]').waitFor();
  await page.waitForTimeout(700);
  await bench.setNumber('length of joint', 30);
  await bench.weld(polyline(PATH, 4, 0.3));
  await bench.finish();
  expect(await bench.verdict()).not.toBe('');

  // The other language was kept with the rest: the page says it, and the Worker letters the cut in it.
  await page.getByRole('button', { name: 'Aids' }).click();
  await page.getByTestId('language').selectOption('de');
  await page.locator('html[lang="de"]').waitFor();
  await page.keyboard.press('Escape');
  expect(await bench.verdict()).toMatch(/^(innerhalb|außerhalb|zu knapp|ohne Urteil)$/);
  await page
    .locator('.plates svg text', { hasText: /Schnitt bei/ })
    .first()
    .waitFor();
  await page.getByRole('button', { name: 'Pult' }).click();
  await page.getByRole('dialog').waitFor();
  expect(bench.complaints.filter((text) => !text.includes('ERR_CONNECTION_REFUSED'))).toEqual([]);
  await bench.close();
});
