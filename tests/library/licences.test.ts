import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { noticesText } from '../../game/tools/build/notices.ts';
import { allowed } from './licences.ts';

const ROOT = fileURLToPath(new URL('../../', import.meta.url));
const LOCK = JSON.parse(readFileSync(join(ROOT, 'package-lock.json'), 'utf8')).packages as Record<
  string,
  { dev?: boolean; optional?: boolean; license?: string }
>;

/** What is installed with the package when somebody uses it: everything in the lock file that is not there for developing alone. */
const USED = Object.keys(LOCK).filter((path) => path !== '' && !LOCK[path]!.dev && existsSync(join(ROOT, path)));

/** As its package.json names it; of a package that names none, as its licence file opens. */
function licenceOf(path: string): string {
  const { license } = JSON.parse(readFileSync(join(ROOT, path, 'package.json'), 'utf8'));
  if (typeof license === 'string') return license;
  const file = join(ROOT, path, 'LICENSE');
  return existsSync(file) && /^(The )?MIT License\b/i.test(readFileSync(file, 'utf8').trim()) ? 'MIT' : '';
}

describe('licences', () => {
  it('ours is MIT in file and package.json', () => {
    expect(readFileSync(join(ROOT, 'LICENSE'), 'utf8')).toMatch(/^MIT License\n\nCopyright \(c\) \d{4} /);
    expect(JSON.parse(readFileSync(join(ROOT, 'package.json'), 'utf8')).license).toBe('MIT');
  });

  it.each(USED)('%s is under a licence of the list and ships its words', (path) => {
    const license = licenceOf(path);
    expect(allowed(license), `${path}: ${license}`).toBe(true);
    const words = readdirSync(join(ROOT, path)).filter((name) => /^(licen[cs]e|copying|readme)/i.test(name));
    expect(words, `${path}: no licence text`).not.toEqual([]);
  });

  it('the list tells what may be used from what may not', () => {
    for (const fine of ['MIT', '(MIT OR GPL-3.0)', 'MIT AND OFL-1.1']) expect(allowed(fine)).toBe(true);
    for (const not of ['GPL-3.0', 'MIT AND GPL-3.0', 'SEE LICENSE IN x', 'UNLICENSED', ''])
      expect(allowed(not)).toBe(false);
  });

  it('a package without words stops the build, unless MIT with an author lets them be written', () => {
    const modules = join(ROOT, 'node_modules');
    const made = (name: string, identifier?: string): string =>
      noticesText('ours', [{ name, version: '1', ...(identifier ? { identifier } : {}) }], modules);
    expect(made('@pixi/colord', 'MIT')).toMatch(/Copyright \(c\) .+\n\nPermission is hereby granted/);
    expect(() => made('@pixi/colord', 'ISC')).toThrow('@pixi/colord: ISC without a text');
    expect(() => made('@pixi/colord')).toThrow('no licence without a text');
  });
});
