import { mkdtempSync, readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, BrowserContextOptions, CDPSession, Download, Page } from 'playwright-core';
import type { Recording } from '../../../engine/index.ts';

export interface Place {
  u_mm: number;
  y_mm: number;
}

/** Where a hand is at a time after the strike, s; null when it lets go. */
export type HandPath = (t_s: number) => Place | null;

export interface BenchOptions extends BrowserContextOptions {
  exercise?: string;
  plain?: boolean;
  /** Leaves the first lesson's offer standing. */
  lesson?: boolean;
}

/** Longest wait for a page to have heard all that the hand did: one starved of its time hears late. */
const HEARD_MS = 90_000;
/** Longest wait for the bench to weld a recording again and measure it. */
const MEASURE_MS = 90_000;

/** Drives the game the way a user does, in verbs; places are joint millimetres. */
export class BenchDriver {
  /** Errors of the page, refusals of its own security policy among them, and every request to anywhere but the place it came from. */
  readonly complaints: string[] = [];

  private constructor(
    readonly page: Page,
    readonly cdp: CDPSession,
    address: string,
  ) {
    const own = /^http/.test(address) ? new URL(address).origin : address;
    page.context().on('request', (request) => {
      const url = request.url();
      if (!/^(blob|data):/.test(url) && !url.startsWith(own)) this.complaints.push(`asked ${url}`);
    });
    page.on('pageerror', (error) => this.complaints.push(error.message));
    page.on('console', (message) => {
      if (message.type() === 'error') this.complaints.push(message.text());
    });
  }

  /** Opens the game in a fresh browser profile, reads the cautions and puts a cold piece on the bench. */
  static async open(browser: Browser, address: string, options: BenchOptions = {}): Promise<BenchDriver> {
    const { exercise, plain, lesson, ...context } = options;
    const page = await (
      await browser.newContext({
        viewport: { width: 1100, height: 760 },
        // Each test's profile is new and gone in seconds: keeping the page for it would only take time.
        serviceWorkers: 'block',
        ...context,
      })
    ).newPage();
    const bench = new BenchDriver(page, await page.context().newCDPSession(page), address);
    await page.goto(address);
    await page.getByRole('button', { name: plain ? 'Start in the plain view' : 'Understood' }).click();
    await page.locator('.pane canvas').waitFor();
    if (!lesson) await page.getByRole('button', { name: 'Not now' }).click();
    if (exercise) await page.locator('.exercise select').selectOption(exercise);
    await page.locator('.pane[data-state="idle"]').waitFor();
    // The engine compiles while the page settles; a person reads the sentence meanwhile.
    await page.waitForTimeout(700);
    return bench;
  }

  async close(): Promise<void> {
    await this.page.context().close();
  }

  /** Changes a number in the settings sentence by its label. */
  async setNumber(label: string, value: number): Promise<void> {
    const field = this.page.getByRole('spinbutton', { name: label, exact: true });
    await field.focus();
    await this.page.keyboard.press('Enter');
    await this.page.getByRole('textbox', { name: label, exact: true }).fill(String(value));
    await this.page.keyboard.press('Enter');
    await this.settled();
  }

  /** Waits until the page has laid itself out: two frames after the last change. */
  private async settled(): Promise<void> {
    await this.page.evaluate(
      () => new Promise((resolve) => requestAnimationFrame(() => requestAnimationFrame(resolve))),
    );
  }

  /** A function from joint millimetres to page pixels. */
  async aim(): Promise<(place: Place) => { x: number; y: number }> {
    const pane = this.page.locator('.pane');
    await pane.scrollIntoViewIfNeeded();
    const box = await pane.boundingBox();
    const scale = Number(await pane.getAttribute('data-scale'));
    const [originX, originY] = ((await pane.getAttribute('data-origin')) ?? '').split(' ').map(Number);
    if (!box) throw new Error('The joint is not on the page.');
    return ({ u_mm, y_mm }) => ({ x: box.x + originX + u_mm * scale, y: box.y + originY - y_mm * scale });
  }

  /** Presses, follows the path in real time with trusted mouse events, and lets go. Returns how long the page saw it held, s. */
  async weld(path: HandPath, stepMs = 12): Promise<number> {
    const to = await this.aim();
    const first = path(0);
    if (!first) throw new Error('The path has no beginning.');
    const send = (type: 'mouseMoved' | 'mousePressed' | 'mouseReleased', place: Place) =>
      this.cdp.send('Input.dispatchMouseEvent', {
        type,
        ...to(place),
        button: 'left',
        buttons: type === 'mouseReleased' ? 0 : 1,
        clickCount: type === 'mouseMoved' ? 0 : 1,
      });
    const start = to(first);
    await this.page.mouse.move(start.x, start.y);
    await this.page.evaluate(() => {
      const seen: number[] = [];
      Object.assign(window, { seen });
      for (const kind of ['pointerdown', 'pointerup'])
        window.addEventListener(kind, (event) => seen.push(event.timeStamp), { once: true, capture: true });
    });
    await send('mousePressed', first);
    const began = performance.now();
    let last = first;
    const sent: Promise<unknown>[] = [];
    for (;;) {
      const place = path((performance.now() - began) / 1000);
      if (!place) break;
      last = place;
      // Not waited for one by one: a real mouse does not wait for a slow page either, it gets every reading with its own time.
      sent.push(send('mouseMoved', place));
      await new Promise((resolve) => setTimeout(resolve, stepMs));
    }
    await Promise.all(sent);
    await send('mouseReleased', last);
    await this.page.waitForFunction(() => (window as Window & { seen?: number[] }).seen?.length === 2, null, {
      timeout: HEARD_MS,
    });
    const [down, up] = await this.page.evaluate(() => (window as Window & { seen?: number[] }).seen ?? []);
    return (up - down) / 1000;
  }

  /** Ends the attempt instead of waiting for another strike; on a very slow machine it may have ended by itself. */
  async finish(): Promise<void> {
    const stopped = this.page.locator('.pane[data-state="stopped"]');
    const button = this.page.getByRole('button', { name: 'finish here' });
    await stopped.or(button).first().waitFor();
    if (await button.isVisible()) await button.dispatchEvent('click');
    await stopped.waitFor();
  }

  /** Waits for the verdict and returns its word. */
  async verdict(): Promise<string> {
    const verdict = this.page.getByTestId('verdict');
    await verdict.waitFor({ timeout: MEASURE_MS });
    return (await verdict.locator('.verdict').textContent())?.trim() ?? '';
  }

  /** Saves the attempt as a user does and reads the file. */
  async save(): Promise<{ path: string; recording: Recording }> {
    const download = this.page.waitForEvent('download');
    await this.page.getByRole('button', { name: 'Save', exact: true }).click();
    const path = await keep(await download);
    return { path, recording: JSON.parse(readFileSync(path, 'utf8')) as Recording };
  }

  async openFile(path: string): Promise<void> {
    await this.page.getByTestId('open-file').setInputFiles(path);
  }

  /** The lines table as text, row by row. */
  lines(): Promise<string[]> {
    return this.page.locator('.lines tbody tr').allInnerTexts();
  }
}

/** Where a download now lies: the shared browser hands files over, it does not say where it keeps them. */
export async function keep(download: Download): Promise<string> {
  const path = join(mkdtempSync(join(tmpdir(), 'toehold-saved-')), download.suggestedFilename());
  await download.saveAs(path);
  return path;
}
