import { existsSync } from 'node:fs';
import { type Browser, chromium } from 'playwright-core';
import { inject } from 'vitest';

const PLACES = ['/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome'];

/** A name that no one can have (RFC 2606); this Chromium takes it for the local server's. */
export const ELSEWHERE = 'toehold.test';

/** WebGL 2 without a graphics card goes through SwiftShader; as root Chromium needs --no-sandbox. */
export const ARGUMENTS = [
  '--no-sandbox',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--mute-audio',
  '--use-angle=swiftshader',
  '--enable-unsafe-swiftshader',
  `--host-resolver-rules=MAP ${ELSEWHERE} localhost`,
];

/**
 * For tests that look at words and files only: the page is put together without the graphics path, which the processor would draw by itself. An idle bench
 * then takes a tenth of a core for a third.
 */
export const PLAINLY = [...ARGUMENTS, '--disable-gpu-compositing'];

/** The browser `npm test` has found, or one in the usual places. @throws when there is none */
export function chromiumPath(): string {
  const named = process.env.CHROME_PATH;
  const found = named ?? PLACES.find((path) => existsSync(path));
  if (!found) throw new Error('No Chromium found: set CHROME_PATH to its program file.');
  return found;
}

/** Joins the one Chromium of this run; closing what comes back closes this file's pages and no one else's. */
export function launchChromium(): Promise<Browser> {
  return chromium.connect(inject('chromium'));
}
