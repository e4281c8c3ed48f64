import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { BenchDriver } from './support/bench.ts';
import { launchChromium } from './support/chromium.ts';
import { type Site, serveGame } from './support/site.ts';
import { putRecords, readRecords } from './support/store.ts';

let browser: Browser;
let site: Site;

beforeAll(async () => {
  [browser, site] = await Promise.all([launchChromium(), serveGame()]);
});

afterAll(async () => {
  await Promise.all([browser?.close(), site?.close()]);
});

/** Opens a bench for one test and closes it however that ends: a Worker left hanging would starve the tests after it. */
async function withBench(test: (bench: BenchDriver) => Promise<void>): Promise<void> {
  const bench = await BenchDriver.open(browser, site.address, { plain: true });
  try {
    await test(bench);
  } finally {
    await bench.close();
  }
}

/** Presses in the pane and holds until at least so many poses have been kept. */
async function weldUntilKept(bench: BenchDriver, poses: number): Promise<void> {
  const { page } = bench;
  const at = (await bench.aim())({ u_mm: 0, y_mm: 6 });
  await page.mouse.move(at.x, at.y);
  await page.mouse.down();
  await expect
    .poll(async () => (await readRecords(page, 'drafts'))[0]?.poses ?? 0, { timeout: 30_000 })
    .toBeGreaterThanOrEqual(poses);
}

const shelfRow = (page: Page, text: string) => page.locator('.shelf li').filter({ hasText: text });

describe('an attempt that was never ended', () => {
  it(
    'is offered after a reload in mid-weld, welds again and is kept as interrupted; another tab sees it',
    () =>
      withBench(async (bench) => {
        const { page } = bench;
        await bench.setNumber('length of joint', 25);
        const other = await page.context().newPage();
        await other.goto(site.address);
        await other.locator('.pane[data-state="idle"]').waitFor();
        await other.getByRole('button', { name: 'Attempts' }).click();
        await other.getByText('None yet.').waitFor();

        await page.bringToFront();
        await weldUntilKept(bench, 200);
        const [{ poses, id }] = (await readRecords(page, 'drafts')) as { poses: number; id: string }[];
        await page.reload();
        await page
          .getByTestId('unfinished')
          .getByText(/s of it are kept/)
          .waitFor();
        await page.getByTestId('unfinished').getByRole('button', { name: 'Weld it again and judge it' }).click();
        await bench.verdict();
        const { recording } = await bench.save();
        expect(recording.ended).toBe('interrupted');
        expect(recording.poses.trigger.filter((t) => t === 1).length).toBeGreaterThanOrEqual(poses);
        expect((await readRecords(page, 'drafts')).length).toBe(0);
        expect((await readRecords(page, 'attempts')).map((kept) => kept.id)).toEqual([id]);
        await other.locator('.shelf li').first().waitFor();
        expect(bench.complaints).toEqual([]);
      }),
    120_000,
  );

  it(
    'is there when the Worker falls silent: that is said, and another takes its place',
    () =>
      withBench(async (bench) => {
        const { page } = bench;
        await bench.setNumber('length of joint', 25);
        await weldUntilKept(bench, 100);
        // Never comes back: the Worker hangs.
        void page
          .workers()[0]
          .evaluate('for (;;);')
          .catch(() => undefined);
        await page.getByText(/fell silent and has been started again\. What you welded, \d+\.\d s, is kept/).waitFor();
        await page.locator('.pane[data-state="idle"]').waitFor();
        await page.mouse.up();
        await page.getByTestId('unfinished').waitFor();
      }),
    60_000,
  );
});

describe('the shelf in the browser', () => {
  it(
    'names a corrupt record, lists the rest and saves it as it is',
    () =>
      withBench(async (bench) => {
        const { page } = bench;
        await putRecords(page, {
          attempts: [
            { id: 'spoilt', made_ms: 1, title: 'A spoilt one', recording: { format: 'toehold-recording' } },
            { id: 'listed', made_ms: 2 },
          ],
          entries: [
            {
              id: 'listed',
              made_ms: 2,
              title: 'A good one',
              exercise: null,
              verdict: 'within',
              own: true,
              helped: 'with guides',
              damaged: null,
            },
          ],
        });
        await page.reload();
        await page.locator('.pane[data-state="idle"]').waitFor();
        await page.getByRole('button', { name: 'Attempts' }).click();
        await shelfRow(page, 'A good one').waitFor();
        await shelfRow(page, 'A spoilt one')
          .getByText(/Damaged/)
          .waitFor();
        const download = page.waitForEvent('download');
        await shelfRow(page, 'A spoilt one').getByRole('button', { name: 'Save as it is' }).click();
        expect((await download).suggestedFilename()).toBe('spoilt.damaged.json');
      }),
    60_000,
  );

  it(
    'says that there is no space left, and what is on the bench can still be saved',
    () =>
      withBench(async (bench) => {
        const { page, cdp } = bench;
        await bench.setNumber('length of joint', 25);
        await cdp.send('Storage.overrideQuotaForOrigin', { origin: new URL(site.address).origin, quotaSize: 1 });
        await weldUntilFull(bench);
        await page.mouse.up();
        await bench.finish();
        await page.getByText(/no space left to keep attempts/).waitFor();
        expect((await bench.save()).recording.ended).toBe('stopped');
        await cdp.send('Storage.overrideQuotaForOrigin', { origin: new URL(site.address).origin });
      }),
    60_000,
  );
});

/** Welds until the page says that it cannot keep more. */
async function weldUntilFull(bench: BenchDriver): Promise<void> {
  const at = (await bench.aim())({ u_mm: 0, y_mm: 6 });
  await bench.page.mouse.move(at.x, at.y);
  await bench.page.mouse.down();
  await bench.page.getByText(/no space left to keep attempts/).waitFor();
}
