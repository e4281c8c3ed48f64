/** Last step of a build: the page gets its notices and its policy; the single file gets its place. */
import { readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Plugin } from 'vite';
import { insideOf, type Listed, listedIn, noticesText } from './notices.ts';
import { addManifest, addServiceWorker } from './offline.ts';
import { withPolicy } from './policy.ts';

export interface Page {
  /** Project folder. */
  root: string;
  single: boolean;
  /** Filled while the Worker is bundled. */
  inWorker: ReadonlySet<string>;
}

/** Where Vite puts its list, in the build's folder. */
export const LIST = 'NOTICES.json';

const escaped = (text: string): string => text.replaceAll('&', '&amp;').replaceAll('<', '&lt;');

export function finishPage({ root, single, inWorker }: Page): Plugin {
  const dist = join(root, 'dist');
  const out = join(dist, single ? 'single' : 'game');
  return {
    name: 'toehold:finish-page',
    apply: 'build',
    async closeBundle() {
      const listed = JSON.parse(readFileSync(join(out, LIST), 'utf8')) as Listed[];
      rmSync(join(out, LIST));
      const modules = join(root, 'node_modules');
      const onlyInWorker = [...inWorker].filter((name) => listed.every((entry) => entry.name !== name));
      const all = [...listed, ...onlyInWorker.map((name) => listedIn(modules, name))];
      all.push(...insideOf(all, modules));
      all.sort((a, b) => (a.name < b.name ? -1 : 1));
      const notices = noticesText(readFileSync(join(root, 'LICENSE'), 'utf8'), all, modules);
      const page = join(out, 'index.html');
      const html = readFileSync(page, 'utf8');
      // The last one: the scripts inside a single file may speak of pages too.
      const end = html.lastIndexOf('</body>');
      const whole = `${html.slice(0, end)}  <template id="notices">${escaped(notices)}</template>\n  ${html.slice(end)}`;
      const named = single
        ? whole
        : whole.replace('</head>', '  <link rel="manifest" href="./manifest.webmanifest" />\n  </head>');
      writeFileSync(page, withPolicy(named, single));
      if (!single) {
        const lab = join(out, 'lab', 'index.html');
        writeFileSync(lab, withPolicy(readFileSync(lab, 'utf8'), single));
      }
      writeFileSync(join(single ? dist : out, 'NOTICES.txt'), notices);
      if (!single) {
        await addManifest(out, join(root, 'game'));
        addServiceWorker(out, join(root, 'game'));
        return;
      }
      renameSync(page, join(dist, 'toehold.html'));
      rmSync(out, { recursive: true });
    },
  };
}
