/** Every string twice as long: a language with longer words neither clips nor runs out of the page, at any size, in any of the main states. */
import { mkdirSync } from 'node:fs';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { BenchDriver } from './support/bench.ts';
import { launchChromium } from './support/chromium.ts';
import { shortWeld } from './support/short-weld.ts';
import { type Site, serveGame } from './support/site.ts';

const SIZES = [
  { width: 1366, height: 768 },
  { width: 768, height: 1024 },
  { width: 390, height: 844 },
];
/** Stills are kept where a folder is named for them. */
const STILLS = process.env.STILLS;

let browser: Browser;
let site: Site;

beforeAll(async () => {
  [browser, site] = await Promise.all([launchChromium(), serveGame()]);
  if (STILLS) mkdirSync(STILLS, { recursive: true });
});

afterAll(async () => {
  await Promise.all([browser?.close(), site?.close()]);
});

/** Doubles every text of the page as it comes, and keeps doing so; drawings letter themselves and are left alone. */
function doubleAll(page: Page): Promise<void> {
  return page.evaluate(() => {
    const mine = new WeakMap<Text, string>();
    const double = (text: Text): void => {
      const said = text.data;
      if (
        mine.get(text) === said ||
        !/\p{L}/u.test(said) ||
        text.parentElement?.closest('svg, style, script, template, pre')
      )
        return;
      const twice = said.replace(/\S(?:.*\S)?/s, (core) => `${core} ${core}`);
      mine.set(text, twice);
      text.data = twice;
    };
    const all = (node: Node): void => {
      const walker = document.createTreeWalker(node, NodeFilter.SHOW_TEXT);
      for (let at = walker.nextNode(); at; at = walker.nextNode()) double(at as Text);
    };
    all(document.body);
    new MutationObserver((changes) => {
      for (const change of changes) {
        if (change.type === 'characterData') double(change.target as Text);
        for (const node of change.addedNodes) node instanceof Text ? double(node) : all(node);
      }
    }).observe(document.body, { subtree: true, childList: true, characterData: true });
  });
}

/** What does not fit: text cut off by its own box, the page wider than the window, a button over another. */
function crowded(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const wrong: string[] = [];
    const root = document.documentElement;
    if (root.scrollWidth > root.clientWidth) wrong.push(`page ${root.scrollWidth} px wide in ${root.clientWidth}`);
    const name = (e: Element): string =>
      `${e.tagName.toLowerCase()}.${e.className} “${(e.textContent ?? '').slice(0, 30)}”`;
    if (wrong.length > 0)
      for (const e of document.querySelectorAll('body *'))
        if (e.getBoundingClientRect().right > root.clientWidth + 1 && !e.closest('svg') && wrong.length < 5)
          wrong.push(name(e));
    const shown = (e: Element): boolean =>
      (e as HTMLElement).checkVisibility({ opacityProperty: true, visibilityProperty: true });
    for (const e of document.querySelectorAll<HTMLElement>('body *')) {
      if (!shown(e) || e.closest('svg') || e.classList.contains('spoken')) continue;
      const style = getComputedStyle(e);
      // Set out with an ellipsis the whole stands in the tip; what scrolls is not cut off.
      if (!/hidden|clip/.test(style.overflowX) || style.textOverflow === 'ellipsis') continue;
      const box = e.getBoundingClientRect();
      const walker = document.createTreeWalker(e, NodeFilter.SHOW_TEXT);
      for (let at = walker.nextNode(); at; at = walker.nextNode()) {
        if (at.parentElement?.closest('svg, .spoken, option')) continue;
        const range = document.createRange();
        range.selectNode(at);
        const { left, right, width } = range.getBoundingClientRect();
        if (width > 0 && (right > box.right + 1 || left < box.left - 1))
          wrong.push(`${name(e)}: ${right - left} in ${box.width}`);
      }
    }
    const top = document.querySelector('dialog[open]') ?? document.body;
    const buttons = [...top.querySelectorAll<HTMLElement>('button, select, summary, .platename')].filter(shown);
    for (const [i, a] of buttons.entries()) {
      for (const b of buttons.slice(i + 1)) {
        if (a.contains(b) || b.contains(a)) continue;
        const [p, q] = [a.getBoundingClientRect(), b.getBoundingClientRect()];
        const w = Math.min(p.right, q.right) - Math.max(p.left, q.left);
        const h = Math.min(p.bottom, q.bottom) - Math.max(p.top, q.top);
        if (w > 2 && h > 2) wrong.push(`${name(a)} over ${name(b)}`);
      }
    }
    return wrong;
  });
}

describe.each(SIZES)('with every string doubled, $width by $height', (viewport) => {
  it('nothing clips or overlaps at the start, while welding, at the verdict, in the logbook and at the desk', async () => {
    const bench = await BenchDriver.open(browser, site.address, { plain: true, viewport });
    const { page } = bench;
    const file = shortWeld();
    await doubleAll(page);
    const look = async (state: string): Promise<void> => {
      await page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))));
      if (STILLS) await page.screenshot({ path: `${STILLS}/${viewport.width}-${state}.png` });
      expect(await crowded(page), state).toEqual([]);
    };
    await look('start');
    const button = (n: number) => page.locator('.actions button').nth(n);
    await button(0).click();
    await page.waitForTimeout(1500);
    await look('welding');
    await button(0).click();
    await bench.openFile(file);
    await bench.verdict();
    await look('verdict');
    const opened = async (label: RegExp, state: string): Promise<void> => {
      await page.locator('.actions').getByRole('button', { name: label }).click();
      await page.getByRole('dialog').waitFor();
      await look(state);
    };
    await opened(/^Attempts/, 'attempts');
    await page.locator('.leaves button').nth(1).click();
    await look('logbook');
    await page.keyboard.press('Escape');
    await opened(/^Aids/, 'aids');
    await page.keyboard.press('Escape');
    await opened(/^Desk/, 'desk');
    await bench.close();
  });
});
