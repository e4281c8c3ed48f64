/** The page's content-security policy, written into the page when it is built: nothing is fetched from anywhere but the page's own folder. */
import { createHash } from 'node:crypto';
import { readFileSync, writeFileSync } from 'node:fs';
import { parseHTML } from 'linkedom';
import type { Plugin } from 'vite';

type Sources = Record<string, string>;

/** Common to both pages. The heat kernel is WebAssembly; photographs of coupons and saved drawings are blob: or data: pictures. */
const NOTHING_ELSE: Sources = {
  'default-src': "'none'",
  'img-src': "'self' data: blob:",
  'base-uri': "'none'",
  'form-action': "'none'",
};

const meta = (sources: Sources): string => {
  const text = Object.entries(sources)
    .map(([directive, allowed]) => `${directive} ${allowed}`)
    .join('; ');
  return `<meta http-equiv="Content-Security-Policy" content="${text}" />`;
};

/** Right after the encoding, before anything the policy speaks about. @throws where the page has no such place */
function withMeta(html: string, sources: Sources): string {
  const after = /<meta charset="utf-8" ?\/?>/;
  if (!after.test(html)) throw new Error('the page does not begin with its encoding: no place for the policy');
  return html.replace(after, (found) => `${found}\n    ${meta(sources)}`);
}

/** For dist/game: scripts, styles, fonts and the Worker come from the page's own folder. */
export function pagePolicy(): Plugin {
  return {
    name: 'toehold:page-policy',
    apply: 'build',
    transformIndexHtml: {
      order: 'post',
      handler: (html) =>
        withMeta(html, {
          ...NOTHING_ELSE,
          'script-src': "'self' 'wasm-unsafe-eval'",
          'style-src': "'self'",
          'font-src': "'self' data:",
          'worker-src': "'self'",
        }),
    },
  };
}

const hashesOf = (texts: Iterable<string>): string =>
  [...texts].map((text) => `'sha256-${createHash('sha256').update(text).digest('base64')}'`).join(' ');

/** For the single file: the scripts and styles that stand in it, each by its hash; the Worker from a blob: that the page makes. */
export function writeSingleFilePolicy(file: string): void {
  const html = readFileSync(file, 'utf8');
  const { document } = parseHTML(html);
  const inside = (name: string): string =>
    hashesOf([...document.querySelectorAll(name)].map((e) => e.textContent ?? ''));
  writeFileSync(
    file,
    withMeta(html, {
      ...NOTHING_ELSE,
      'script-src': `${inside('script')} 'wasm-unsafe-eval'`,
      'style-src': inside('style'),
      'font-src': 'data:',
      'worker-src': 'blob:',
    }),
  );
}
