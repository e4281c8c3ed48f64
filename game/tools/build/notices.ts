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
  return { name, version, identifier: license, ...(file ? { text: readFileSync(join(folder, file), 'utf8') } : {}) };
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
