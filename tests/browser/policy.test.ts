import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { BenchDriver } from './support/bench.ts';
import { launchChromium } from './support/chromium.ts';
import { SINGLE_FILE, serveGame } from './support/site.ts';

/** A name that no one can have (RFC 2606). */
const OUTSIDE = 'https://elsewhere.invalid/';

let browser: Browser;

beforeAll(async () => {
  browser = await launchChromium();
});

afterAll(async () => {
  await browser?.close();
});

describe.each([
  ['served', async () => (await serveGame()).address],
  ['single file', async () => SINGLE_FILE],
])('the page keeps to itself: %s', (_name, address) => {
  let bench: BenchDriver;
  beforeAll(async () => {
    bench = await BenchDriver.open(browser, await address());
  });
  afterAll(async () => {
    await bench?.close();
  });

  it('opens, and opens its sheets, without a request to anyone or a word from its policy', async () => {
    await bench.page.getByRole('button', { name: 'About' }).click();
    await bench.page.getByRole('dialog').waitFor();
    expect(bench.complaints).toEqual([]);
  });

  it('lets neither a call to the outside, a script from text nor an inline script through', async () => {
    const refused = await bench.page.evaluate(async (outside) => {
      const said: string[] = [];
      document.addEventListener('securitypolicyviolation', (event) => said.push(event.effectiveDirective));
      await fetch(outside).catch(() => undefined);
      const image = new Image();
      image.src = outside;
      const script = document.createElement('script');
      script.textContent = 'window.ran = true';
      document.head.append(script);
      // The test's own call may make code from text; a task of the page may not.
      await new Promise((resolve) => setTimeout(resolve, 300));
      let made = 'made';
      try {
        made = String(new Function('return 1')());
      } catch {
        made = 'refused';
      }
      await new Promise((resolve) => setTimeout(resolve, 50));
      return { said: [...new Set(said)].sort(), made, ran: 'ran' in window };
    }, OUTSIDE);
    expect(refused).toEqual({
      said: ['connect-src', 'img-src', 'script-src', 'script-src-elem'],
      made: 'refused',
      ran: false,
    });
    // The watch that the other tests rely on sees both: that something was asked for, and the policy's own word.
    expect(bench.complaints).toContain(`asked ${OUTSIDE}`);
    expect(bench.complaints.join()).toContain('Content Security Policy');
  });
});
