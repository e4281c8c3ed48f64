import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { AttemptEntry } from '../../game/core/session/shelf.ts';
import type { Verdict } from '../../scoring/index.ts';
import { BenchDriver } from './support/bench.ts';
import { launchChromium } from './support/chromium.ts';
import { type Site, serveGame } from './support/site.ts';
import { putRecords } from './support/store.ts';

let browser: Browser;
let site: Site;

beforeAll(async () => {
  [browser, site] = await Promise.all([launchChromium(), serveGame()]);
});

afterAll(async () => {
  await Promise.all([browser?.close(), site?.close()]);
});

const NAME = 'tee-inverted-v';

/** Puts attempts with these verdicts on the shelf of this browser: what the list shows of them is all that the level is told from. */
async function shelve(page: Page, verdicts: readonly Verdict[]): Promise<void> {
  const entries = verdicts.map(
    (verdict, i): AttemptEntry => ({
      id: `kept-${i}`,
      made_ms: Date.UTC(2026, 2, 2, 9, i),
      title: 'Tee, inverted V',
      exercise: NAME,
      verdict,
      own: true,
      helped: 'with guides',
      damaged: null,
    }),
  );
  await putRecords(page, { attempts: entries.map(({ id, made_ms }) => ({ id, made_ms })), entries });
  await page.reload();
  await page.locator('.pane[data-state="idle"]').waitFor();
}

describe('guides that go when they are no longer needed', () => {
  let bench: BenchDriver;
  let page: Page;
  const level = (text: string) => page.getByTestId('level-short').getByText(text, { exact: true }).waitFor();
  const toeMarks = (): Promise<number> => page.locator('.toemarks line').count();

  beforeAll(async () => {
    bench = await BenchDriver.open(browser, site.address, { exercise: NAME });
    page = bench.page;
  }, 60_000);

  afterAll(async () => {
    await bench?.close();
  });

  it('are there at first, and the level says so', async () => {
    await level('With guides, 0 of 3 good in a row');
    expect(await toeMarks()).toBe(2);
  });

  it('are gone after three good attempts in a row, can be had all the same, and come back after two bad ones', async () => {
    await shelve(page, ['within', 'within', 'within']);
    await level('Without guides');
    expect(await toeMarks()).toBe(0);
    await page.getByRole('button', { name: 'Aids' }).click();
    await page
      .getByTestId('level')
      .getByText(/^Three good attempts in a row/)
      .waitFor();
    expect(await page.getByLabel('Toe marks on the joint').isDisabled()).toBe(true);
    await page.getByLabel('Guides as set here').check();
    expect(await page.getByLabel('Toe marks on the joint').isDisabled()).toBe(false);
    await level('Guides as you set them');
    expect(await toeMarks()).toBe(2);
    await page.getByLabel('Guides as set here').uncheck();
    await page.getByRole('button', { name: 'Close', exact: true }).click();
    expect(await toeMarks()).toBe(0);
    await shelve(page, ['within', 'within', 'within', 'outside', 'outside']);
    await level('With guides, 0 of 3 good in a row');
    expect(await toeMarks()).toBe(2);
    await page.getByRole('button', { name: 'Attempts' }).click();
    expect(await page.locator('.shelf li').filter({ hasText: 'with guides' }).count()).toBe(5);
    await page.getByRole('button', { name: 'Close', exact: true }).click();
  });

  it('are never there in a test', async () => {
    await page.locator('.exercise select').selectOption('test-piece');
    await level('Test: no guides');
    expect(await toeMarks()).toBe(0);
  });

  it('raised no error in the page', () => {
    expect(bench.complaints).toEqual([]);
  });
});
