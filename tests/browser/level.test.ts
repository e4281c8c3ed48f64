import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type HandFaults, noFaults, type Recording, recordPoses, weaveHand } from '../../engine/index.ts';
import { type AttemptRecording, exerciseNamed, type Result, scoreAttempt } from '../../scoring/index.ts';
import { MOUSE } from '../scoring/welds.ts';
import { BenchDriver } from './support/bench.ts';
import { launchChromium } from './support/chromium.ts';
import { type Site, serveGame } from './support/site.ts';

let browser: Browser;
let site: Site;

beforeAll(async () => {
  [browser, site] = await Promise.all([launchChromium(), serveGame()]);
});

afterAll(async () => {
  await Promise.all([browser?.close(), site?.close()]);
});

const NAME = 'tee-inverted-v';

interface Welded {
  recording: Recording;
  result: Result;
}

/** The exercise as a hand welded it, and what scoring makes of it. */
function welded(faults: Partial<HandFaults>): Welded {
  const exercise = exerciseNamed(NAME)!;
  const recording = recordPoses(
    {
      simulation: { joint: exercise.joint, process: exercise.process, cell_mm: 0.75 },
      origin: { kind: 'hand' },
      device: MOUSE,
      aids: { pacer: false, beat: true, toeMarks: true, plainView: false, handRig: null },
      exercise,
    },
    [...weaveHand(exercise.demonstration, { ...noFaults(1), ...faults })],
  );
  return { recording, result: scoreAttempt(recording as AttemptRecording) };
}

/** Puts attempts on the shelf of this browser, one minute apart, as if made on earlier days. */
async function shelve(page: Page, attempts: readonly Welded[], day: number): Promise<void> {
  const rows = attempts.map(({ recording, result }, i) => ({
    id: `day-${day}-${i}`,
    made_ms: Date.UTC(2026, 2, day, 9, i),
    title: exerciseNamed(NAME)?.title ?? '',
    recording,
    result,
  }));
  await page.evaluate(
    (all) =>
      new Promise<void>((resolve, reject) => {
        const opening = indexedDB.open('toehold');
        opening.onerror = () => reject(opening.error);
        opening.onsuccess = () => {
          const change = opening.result.transaction('attempts', 'readwrite');
          for (const row of all) change.objectStore('attempts').put(row);
          change.oncomplete = () => {
            opening.result.close();
            resolve();
          };
          change.onerror = () => reject(change.error);
        };
      }),
    rows,
  );
  await page.reload();
  await page.locator('.pane[data-state="idle"]').waitFor();
}

describe('guides that go when they are no longer needed', () => {
  let bench: BenchDriver;
  let page: Page;
  const level = async (): Promise<string> => (await page.getByTestId('level-short').textContent()) ?? '';
  const toeMarks = (): Promise<number> => page.locator('.toemarks line').count();

  beforeAll(async () => {
    bench = await BenchDriver.open(browser, site.address, { exercise: NAME });
    page = bench.page;
  }, 60_000);

  afterAll(async () => {
    await bench?.close();
  });

  it('are there at first, and the level says so', async () => {
    expect(await level()).toBe('With guides, 0 of 3 good in a row');
    expect(await toeMarks()).toBe(2);
  });

  it('are gone after three good attempts in a row', async () => {
    const good = welded({});
    expect(good.result.verdict).toBe('within');
    await shelve(page, [good, good], 2);
    expect(await level()).toBe('With guides, 2 of 3 good in a row');
    await shelve(page, [good], 3);
    expect(await level()).toBe('Without guides');
    expect(await toeMarks()).toBe(0);
  });

  it('can be had all the same, and the shelf says what an attempt was welded with', async () => {
    await page.getByRole('button', { name: 'Aids' }).click();
    await page
      .getByTestId('level')
      .getByText(/^Three good attempts in a row/)
      .waitFor();
    expect(await page.getByLabel('Toe marks on the joint').isDisabled()).toBe(true);
    await page.getByLabel('Guides as set here').check();
    expect(await page.getByLabel('Toe marks on the joint').isDisabled()).toBe(false);
    await page.getByRole('button', { name: 'Close', exact: true }).click();
    expect(await toeMarks()).toBe(2);
    expect(await level()).toBe('Guides as you set them');
    await page.getByRole('button', { name: 'Aids' }).click();
    await page.getByLabel('Guides as set here').uncheck();
    await page.getByRole('button', { name: 'Close', exact: true }).click();
    expect(await toeMarks()).toBe(0);
    await page.getByRole('button', { name: 'Attempts' }).click();
    expect(await page.locator('.shelf li').filter({ hasText: 'with guides' }).count()).toBe(3);
    await page.getByRole('button', { name: 'Close', exact: true }).click();
  });

  it('come back after two bad ones', async () => {
    const bad = welded({ lead_mm: -5 });
    expect(bad.result.verdict).toBe('outside');
    await shelve(page, [bad], 4);
    expect(await level()).toBe('Without guides, 1 of 2 outside in a row');
    await shelve(page, [bad], 5);
    expect(await level()).toBe('With guides, 0 of 3 good in a row');
    expect(await toeMarks()).toBe(2);
  });

  it('are never there in a test', async () => {
    await page.locator('.exercise select').selectOption('test-piece');
    expect(await level()).toBe('Test: no guides');
    expect(await toeMarks()).toBe(0);
  });

  it('raised no error in the page', () => {
    expect(bench.complaints).toEqual([]);
  });
});

describe('attempts kept before coupons were', () => {
  it('are still on the shelf', async () => {
    const page = await (await browser.newContext({ viewport: { width: 1100, height: 760 } })).newPage();
    const empty = `${site.address}empty.html`;
    await page.route(empty, (route) =>
      route.fulfill({ contentType: 'text/html', body: '<!doctype html><title>empty</title>' }),
    );
    await page.goto(empty);
    const { recording, result } = welded({});
    await page.evaluate(
      (row) =>
        new Promise<void>((resolve, reject) => {
          const opening = indexedDB.open('toehold', 1);
          opening.onupgradeneeded = () =>
            opening.result.createObjectStore('attempts', { keyPath: 'id' }).createIndex('made', 'made_ms');
          opening.onerror = () => reject(opening.error);
          opening.onsuccess = () => {
            const change = opening.result.transaction('attempts', 'readwrite');
            change.objectStore('attempts').put(row);
            change.oncomplete = () => {
              opening.result.close();
              resolve();
            };
          };
        }),
      { id: 'old', made_ms: Date.UTC(2026, 1, 3, 8), title: 'An old one', recording, result },
    );
    await page.goto(site.address);
    await page.getByRole('button', { name: 'Understood' }).click();
    await page.locator('.pane[data-state="idle"]').waitFor();
    await page.getByRole('button', { name: 'Attempts' }).click();
    await page.locator('.shelf li').filter({ hasText: 'An old one' }).getByText('within').waitFor();
    await page.context().close();
  });
});
