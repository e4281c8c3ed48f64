/**
 * Notices of the packages that a page contains. Vite lists them from what it has bundled (`build.license`); here the list is completed by
 * what the Worker's own bundle holds besides, and written out as text.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, sep } from 'node:path';
import type { Plugin } from 'vite';

/** One package as Vite lists it. */
export interface Listed {
  name: string;
  version: string;
  identifier?: string;
  text?: string;
}

const MIT_TEXT = `Permission is hereby granted, free of charge, to any person obtaining a copy of this software and associated documentation files (the
"Software"), to deal in the Software without restriction, including without limitation the rights to use, copy, modify, merge, publish,
distribute, sublicense, and/or sell copies of the Software, and to permit persons to whom the Software is furnished to do so, subject to
the following conditions:

The above copyright notice and this permission notice shall be included in all copies or substantial portions of the Software.

THE SOFTWARE IS PROVIDED "AS IS", WITHOUT WARRANTY OF ANY KIND, EXPRESS OR IMPLIED, INCLUDING BUT NOT LIMITED TO THE WARRANTIES OF
MERCHANTABILITY, FITNESS FOR A PARTICULAR PURPOSE AND NONINFRINGEMENT. IN NO EVENT SHALL THE AUTHORS OR COPYRIGHT HOLDERS BE LIABLE FOR ANY
CLAIM, DAMAGES OR OTHER LIABILITY, WHETHER IN AN ACTION OF CONTRACT, TORT OR OTHERWISE, ARISING FROM, OUT OF OR IN CONNECTION WITH THE
SOFTWARE OR THE USE OR OTHER DEALINGS IN THE SOFTWARE.`;

/** Texts for packages that name a licence and ship none: the licence's own words and the author their package.json names. */
function textOf(listed: Listed, modules: string): string {
  if (listed.text) return listed.text;
  if (listed.identifier !== 'MIT')
    throw new Error(`${listed.name}: ${listed.identifier ?? 'no licence'} without a text`);
  const { author } = JSON.parse(readFileSync(join(modules, listed.name, 'package.json'), 'utf8'));
  const who = typeof author === 'string' ? author : author?.name;
  if (!who) throw new Error(`${listed.name}: MIT without a text and without an author`);
  return `MIT License (the package ships no text; author as its package.json says)\n\nCopyright (c) ${who}\n\n${MIT_TEXT}`;
}

/** A package that Vite has not listed, as it is installed. */
export function listedIn(modules: string, name: string): Listed {
  const folder = join(modules, name);
  const { version, license } = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8'));
  const file = readdirSync(folder).find((inside) => /^(licen[cs]e|copying)/i.test(inside));
  const text = file === undefined ? undefined : readFileSync(join(folder, file), 'utf8');
  // A package that names none is under what its licence file opens with.
  const opens = /^(The )?MIT License\b/i.test(text?.trim() ?? '') ? 'MIT' : undefined;
  const identifier = typeof license === 'string' ? license : opens;
  return {
    name,
    version,
    ...(identifier === undefined ? {} : { identifier }),
    ...(text === undefined ? {} : { text }),
  };
}

/** Packages that come for the browser as one built file, with what they stand on inside: Vite sees only themselves. */
const BUILT = ['pdfmake'] as const;
/**
 * The typeface of the papers, which pdfmake brings without words of its own: version, copyright and licence as the font's own name table gives
 * them. The licence's words are those of the page's other typeface, which is under the same.
 */
const FONT = {
  name: 'roboto',
  version: '3.014',
  identifier: 'OFL-1.1',
  copyright: 'Copyright 2011 The Roboto Project Authors (https://github.com/googlefonts/roboto-classic)',
  wordsOf: '@fontsource/barlow',
  wordsFrom: 'This Font Software is licensed under the SIL Open Font License',
} as const;

/** What stands inside packages that come built, themselves not counted; nothing where the page contains none of them. */
export function insideOf(listed: readonly Listed[], modules: string): Listed[] {
  const built = BUILT.filter((name) => listed.some((entry) => entry.name === name));
  if (built.length === 0) return [];
  const found = new Map<string, Listed>();
  const waiting: string[] = [...built];
  for (let name = waiting.pop(); name !== undefined; name = waiting.pop()) {
    if (found.has(name)) continue;
    found.set(name, listedIn(modules, name));
    const { dependencies } = JSON.parse(readFileSync(join(modules, name, 'package.json'), 'utf8'));
    waiting.push(...Object.keys(dependencies ?? {}));
  }
  const { name, version, identifier, copyright, wordsOf, wordsFrom } = FONT;
  const words = listedIn(modules, wordsOf).text ?? '';
  const at = words.indexOf(wordsFrom);
  if (at < 0) throw new Error(`${wordsOf}: the words of ${identifier} are not where they were`);
  const font: Listed = { name, version, identifier, text: `${copyright}\n\n${words.slice(at)}` };
  const inside = [...found.values(), font];
  return inside.filter((one) => listed.every((entry) => entry.name !== one.name));
}

/** The notices as one text: our own licence, then every package with name, version, licence and its words. @throws for a package without */
export function noticesText(own: string, listed: readonly Listed[], modules: string): string {
  const rule = '-'.repeat(100);
  const parts = listed.map(
    (entry) => `${entry.name} ${entry.version} (${entry.identifier ?? ''})\n\n${textOf(entry, modules)}`,
  );
  return [`Toehold\n\n${own.trim()}`, ...parts].join(`\n\n${rule}\n\n`).concat('\n');
}

/** Collects the packages in the Worker's bundle, which Vite's list of the page does not see. */
export function workerPackages(found: Set<string>): Plugin {
  return {
    name: 'toehold:worker-packages',
    generateBundle(_options, bundle) {
      for (const chunk of Object.values(bundle)) {
        if (chunk.type !== 'chunk') continue;
        for (const id of chunk.moduleIds) {
          const name = packageOf(id);
          if (name) found.add(name);
        }
      }
    },
  };
}

function packageOf(id: string): string | null {
  const parts = dirname(id).split(/[\\/]/);
  const at = parts.lastIndexOf('node_modules');
  if (at < 0 || id.startsWith('\0')) return null;
  const name = parts[at + 1] ?? '';
  return name.startsWith('@') ? parts.slice(at + 1, at + 3).join('/') : name.split(sep).join('/');
}
