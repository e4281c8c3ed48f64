import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { allowed } from '../library/licences.ts';
import { BenchDriver } from './support/bench.ts';
import { launchChromium } from './support/chromium.ts';
import { SINGLE_FILE } from './support/site.ts';

const ROOT = fileURLToPath(new URL('../../', import.meta.url));
const TEXT = readFileSync(join(ROOT, 'dist', 'NOTICES.txt'), 'utf8');
const ENTRY = /^(@?[a-z][\w./-]*) \d+\.\d+\S* \((.*)\)\n\n([\s\S]+)$/;

const entries = TEXT.split(/\n\n-{100}\n\n/)
  .slice(1)
  .map((part) => {
    const found = ENTRY.exec(part);
    if (!found) throw new Error(`an entry of NOTICES.txt cannot be read: ${part.slice(0, 80)}`);
    return { name: found[1]!, licence: found[2]!, words: found[3]! };
  });

/** Packages that the game's own sources import by name, types apart; scoring's are the lock file's matter. */
function imported(): string[] {
  const names = new Set<string>();
  const files = readdirSync(join(ROOT, 'game'), { recursive: true, encoding: 'utf8' });
  for (const file of files.filter((name) => /\.tsx?$/.test(name) && !name.startsWith('tools'))) {
    const text = readFileSync(join(ROOT, 'game', file), 'utf8');
    for (const [, name] of text.matchAll(/^import (?!type)(?:[^'"]*from )?['"]([^.'"][^'"]*)['"]/gm))
      names.add(name!.startsWith('@') ? name!.split('/').slice(0, 2).join('/') : name!.split('/')[0]!);
  }
  return [...names].sort();
}

let browser: Browser;

beforeAll(async () => {
  browser = await launchChromium();
});

afterAll(async () => {
  await browser?.close();
});

describe('notices of what the built page contains', () => {
  it('begin with our own licence', () => {
    expect(TEXT).toMatch(/^Toehold\n\nMIT License\n/);
  });

  it('name every package the game imports', () => {
    expect(imported().length).toBeGreaterThan(4);
    expect(entries.map((entry) => entry.name)).toEqual(expect.arrayContaining(imported()));
  });

  it.each(entries)('$name: $licence is on the list, with copyright and words', ({ licence, words }) => {
    expect(allowed(licence)).toBe(true);
    expect(words.length).toBeGreaterThan(500);
    expect(words).toMatch(/copyright/i);
  });

  it('are the same beside the served page, and readable in the single file by itself', async () => {
    expect(readFileSync(join(ROOT, 'dist', 'game', 'NOTICES.txt'), 'utf8')).toBe(TEXT);
    const bench = await BenchDriver.open(browser, SINGLE_FILE, { plain: true });
    await bench.page.getByRole('button', { name: 'About' }).click();
    await bench.page.getByText('Licences of what this page contains').click();
    expect(await bench.page.locator('.notices').textContent()).toBe(TEXT);
    await bench.close();
  });
});
