/**
 * A whole round in German: no English left in anything that can be read. A text is English where it is one of the English catalogue's that has another
 * German, or where words stand in it that German has not.
 */
import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { loadWords, words } from '../../game/locale/index.ts';
import { language } from '../../game/locale/language.ts';
import { attemptFileName, wordsIn } from '../../scoring/index.ts';
import { shortTee } from '../scoring/class/short-tee.ts';
import { BenchDriver } from './support/bench.ts';
import { launchChromium } from './support/chromium.ts';
import { shortWeld } from './support/short-weld.ts';
import { type Site, serveGame } from './support/site.ts';

/** Words of English that are none of German, nor of a unit, a standard's name or a file's fields. */
const ENGLISH_WORDS =
  /\b(the|of|is|are|and|with|without|from|which|this|that|your|you|it|its|been|only|where|were|there|found|allowed|while|each|one|two|wire|weld|welded|toe|root|leg|plate|attempt|attempts|outside|within|too close|mouse|robot hand)\b/;
/** Left as they are: what a file says, names and versions of standards' own tables, references, names of files and of their fields, the notices of what the page contains. */
const NOT_OURS =
  /"[^"]*"|\(name, bench, plate\)|AWS D1\.1|Table \d|ISO \d|[\w-]+\.(json|csv|html|pdf)|[a-z]+(-[a-z0-9]+)+|\b[a-z]+(_[a-zA-Z]+|\.[a-z]+\w*)+/g;

let browser: Browser;
let site: Site;

beforeAll(async () => {
  [browser, site] = await Promise.all([launchChromium(), serveGame(), loadWords('de')]);
});

afterAll(async () => {
  await Promise.all([browser?.close(), site?.close()]);
});

/** Every text of a catalogue, by where it stands. */
function flat(value: unknown, path = '', out = new Map<string, string>()): Map<string, string> {
  if (typeof value === 'string') out.set(path, value);
  else if (typeof value === 'object' && value !== null)
    for (const [key, one] of Object.entries(value)) flat(one, `${path}.${key}`, out);
  return out;
}

/** English texts that German says otherwise, and says nowhere itself. */
function englishOnly(): Set<string> {
  const of = (l: 'en' | 'de'): Map<string, string> => {
    language.value = l;
    return flat({ page: words, scoring: wordsIn(l) });
  };
  const german = of('de');
  const english = of('en');
  const saidInGerman = new Set(german.values());
  return new Set(
    [...english].filter(([, text]) => /\p{L}{2}/u.test(text) && !saidInGerman.has(text)).map(([, text]) => text),
  );
}

/** Texts that can be read or are read out: text nodes, names, tips, hints. */
function shown(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const out = new Set<string>();
    const seen = (e: Element): boolean =>
      (e as HTMLElement).checkVisibility({ opacityProperty: true, visibilityProperty: true }) ||
      e.closest('.spoken') !== null;
    const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    for (let at = walker.nextNode(); at; at = walker.nextNode()) {
      const parent = at.parentElement;
      if (!parent || parent.closest('style, script, template, pre, bdi, code, [lang="en"]') || !seen(parent)) continue;
      const text = (at.textContent ?? '').trim();
      if (text !== '') out.add(text);
    }
    for (const e of document.querySelectorAll('[aria-label], [title], [placeholder], [alt]')) {
      if (!seen(e) || e.closest('bdi')) continue;
      for (const name of ['aria-label', 'title', 'placeholder', 'alt']) {
        const text = e.getAttribute(name);
        if (text) out.add(text);
      }
    }
    return [...out];
  });
}

describe('a whole round in German', () => {
  it('has no English left: lesson, weld, verdict, advice, logbook, aids, desk, class, refusals', async () => {
    const only = englishOnly();
    expect(only.size).toBeGreaterThan(300);
    const bench = await BenchDriver.open(browser, site.address, {
      plain: true,
      viewport: { width: 1366, height: 768 },
    });
    const { page } = bench;
    const englishIn = (texts: readonly string[]): string[] =>
      // A language is named in itself.
      texts.filter((text) => text !== 'English' && (only.has(text) || ENGLISH_WORDS.test(text.replace(NOT_OURS, ''))));
    // The eye that looks for English sees it where there is some.
    expect(englishIn(await shown(page)).length).toBeGreaterThan(15);
    await page.getByRole('button', { name: 'Aids' }).click();
    await page.getByTestId('language').selectOption('de');
    await page.getByLabel('Zoll neben Millimetern').check();
    const left: Record<string, string[]> = {};
    const look = async (state: string): Promise<void> => {
      const texts = await shown(page);
      expect(texts.length, state).toBeGreaterThan(5);
      const english = englishIn(texts);
      if (english.length > 0) left[state] = english;
    };
    const press = (name: string | RegExp) => page.getByRole('button', { name }).first().click();
    const shut = () => page.keyboard.press('Escape');
    await look('aids');
    await shut();
    await look('start');

    await press('Über');
    await look('about');
    await press(/Lektion beginnen|Erste Lektion noch einmal/);
    const lesson = page.getByTestId('lesson');
    for (let step = 0; step < 4; step++) {
      await look(`lesson ${step}`);
      const next = lesson.getByRole('button', { name: 'Weiter' });
      if ((await next.count()) === 0) break;
      await next.click();
    }
    await lesson.getByRole('button', { name: 'Lektion verlassen' }).click();

    await page.getByRole('button', { name: 'Roboterhand' }).click();
    await page.waitForTimeout(2500);
    await look('robot at work');
    await page.getByRole('button', { name: /Roboterhand anhalten/ }).click();
    await bench.verdict();
    await look('verdict of a robot');

    await bench.openFile(shortWeld());
    await bench.verdict();
    await page.locator('.footing summary').click();
    await page
      .locator('[data-testid="proof"]:not([data-standing="trying"])')
      .waitFor({ timeout: 60_000 })
      .catch(() => undefined);
    await look('verdict');

    await press('Versuche');
    await look('attempts');
    for (const leaf of await page.locator('.leaves button').all()) {
      await leaf.click();
      await look(`attempts, ${await leaf.textContent()}`);
    }
    await shut();

    // A fault to be named: the sentence on it is the page's own, not the kept one.
    await press('Versuche');
    await page.locator('.leaves button').nth(2).click();
    await press(/^Stufe 1/);
    const card = page.getByTestId('naming');
    await card.locator('input[type="radio"]').first().check({ timeout: 90_000 });
    await look('a fault asked for');
    await card.getByRole('button', { name: 'Das war es' }).click();
    await card.getByRole('button', { name: 'Nächstes Prüfstück' }).waitFor();
    await look('a fault told');
    await card.getByRole('button', { name: 'Verlassen' }).click();

    for (const [name, text] of [
      ['leer.json', ''],
      ['kaputt.json', '{"format": "toehold-recording", "version": 2, '],
      ['alt.json', '{"format": "toehold-recording", "version": 7}'],
      ['feld.json', '{"format": "toehold-exercise", "version": 2, "name": 3}'],
      ['bild.png', 'kein Bild'],
    ] as const) {
      await page
        .getByTestId('open-file')
        .setInputFiles({ name, mimeType: 'application/octet-stream', buffer: Buffer.from(text) });
      await page.locator('.problem').waitFor();
      await look(name);
      await page.locator('.problem').getByRole('button', { name: 'Schließen' }).click();
    }

    const folder = mkdtempSync(join(tmpdir(), 'toehold-klasse-'));
    const files = [3, 4, 5].map((pace, i) => {
      const trainee = ['Ines Calder', 'Wren Hollis', 'Dov Arkady'][i]!;
      const path = join(
        folder,
        attemptFileName({ date: '2026-03-11', bench: 'b1', exercise: 'short-tee', trainee, attempt: 1 }),
      );
      writeFileSync(path, JSON.stringify(shortTee(pace)));
      return path;
    });
    const spoilt = join(folder, 'spoilt.json');
    writeFileSync(spoilt, readFileSync(files[0]!, 'utf8').slice(0, 2000));
    await press('Pult');
    const tabs = page.locator('.desk-tabs button:not(.back)');
    for (const tab of await tabs.all()) {
      await tab.click();
      await look(`desk, ${await tab.textContent()}`);
    }
    await tabs.filter({ hasText: /^Klasse$/ }).click();
    await page.getByTestId('class-files').setInputFiles([...files, spoilt]);
    await page.getByText(/gefunden: Text, der kein JSON ist/).waitFor({ timeout: 60_000 });
    await page.locator('.exports').waitFor({ timeout: 120_000 });
    await look('class');
    expect(await page.locator('.first-three [lang="en"]').count()).toBe(0);
    await bench.close();
    expect(left).toEqual({});
  }, 400_000);
});
