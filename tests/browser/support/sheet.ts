import { fileURLToPath } from 'node:url';
import type { Browser, Page } from 'playwright-core';
import { createServer, type ViteDevServer } from 'vite';
import type { Wish } from '../../../game/tools/sheet/page.ts';
import type { Still } from '../../../game/tools/sheet/still.ts';

const path = (relative: string): string => fileURLToPath(new URL(relative, import.meta.url));

/** A drawn still: screen values 0 to 255, three a pixel, from the top left. */
export interface Picture {
  width: number;
  height: number;
  rgb: Uint8Array;
}

interface SheetWindow extends Window {
  sheet?: { light(still: Still, wish: Wish): string };
}

/** Draws stills of the close view in Chromium with the game's own shaders, and reads the pixels. */
export class Sheet {
  readonly complaints: string[] = [];

  private constructor(
    private readonly server: ViteDevServer,
    private readonly page: Page,
  ) {
    page.on('pageerror', (error) => this.complaints.push(error.message));
  }

  static async open(browser: Browser): Promise<Sheet> {
    const server = await createServer({
      root: path('../../../game'),
      configFile: path('../../../vite.config.ts'),
      logLevel: 'error',
      server: { port: 0, hmr: false, watch: null },
    });
    await server.listen();
    const page = await (await browser.newContext({ viewport: { width: 800, height: 800 } })).newPage();
    const sheet = new Sheet(server, page);
    await page.goto(`${server.resolvedUrls?.local[0]}tools/sheet/index.html`);
    await page.waitForFunction(() => (window as SheetWindow).sheet !== undefined, null, { timeout: 60_000 });
    return sheet;
  }

  async draw(still: Still, wish: Wish): Promise<Picture> {
    const text = await this.page.evaluate(
      ([s, w]) => (window as SheetWindow).sheet?.light(s as Still, w as Wish) ?? '',
      [still, wish] as const,
    );
    return { width: wish.width_px, height: wish.height_px, rgb: new Uint8Array(Buffer.from(text, 'base64')) };
  }

  async close(): Promise<void> {
    await this.page.context().close();
    await this.server.close();
  }
}

/** Relative luminance (WCAG 2.2, sRGB) of a pixel. */
export function luminance({ width, rgb }: Picture, x: number, y: number): number {
  const i = (Math.round(y) * width + Math.round(x)) * 3;
  const linear = (value: number): number => {
    const v = value / 255;
    return v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4;
  };
  return 0.2126 * linear(rgb[i]!) + 0.7152 * linear(rgb[i + 1]!) + 0.0722 * linear(rgb[i + 2]!);
}

/** Mean luminance of a disc of pixels. */
export function discLuminance(picture: Picture, x: number, y: number, radius: number): number {
  let sum = 0;
  let count = 0;
  for (let dy = -radius; dy <= radius; dy++)
    for (let dx = -radius; dx <= radius; dx++) {
      if (dx * dx + dy * dy > radius * radius) continue;
      sum += luminance(picture, x + dx, y + dy);
      count += 1;
    }
  return sum / count;
}

/** Contrast ratio as WCAG 2.2 has it. */
export function contrast(one: number, two: number): number {
  return (Math.max(one, two) + 0.05) / (Math.min(one, two) + 0.05);
}
