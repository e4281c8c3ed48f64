import { existsSync } from 'node:fs';
import { type Browser, chromium } from 'playwright-core';

const PLACES = ['/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome'];

/** The browser `npm test` has found, or one in the usual places. @throws when there is none */
function chromiumPath(): string {
  const named = process.env.CHROME_PATH;
  const found = named ?? PLACES.find((path) => existsSync(path));
  if (!found) throw new Error('No Chromium found: set CHROME_PATH to its program file.');
  return found;
}

/** WebGL 2 without a graphics card goes through SwiftShader; as root Chromium needs --no-sandbox. */
export function launchChromium(): Promise<Browser> {
  return chromium.launch({
    executablePath: chromiumPath(),
    args: [
      '--no-sandbox',
      '--disable-quic',
      '--no-first-run',
      '--disable-background-networking',
      '--disable-component-update',
      '--disable-sync',
      '--mute-audio',
      '--use-angle=swiftshader',
      '--enable-unsafe-swiftshader',
    ],
  });
}
