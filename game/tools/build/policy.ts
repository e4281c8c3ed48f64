/** The page's content-security policy, written into the page when it is built: nothing is fetched from anywhere but the page's own folder. */
import { createHash } from 'node:crypto';
import { parseHTML } from 'linkedom';

type Sources = Record<string, string>;

/** Common to both pages. The heat kernel is WebAssembly; photographs of coupons and saved drawings are blob: or data: pictures. */
const NOTHING_ELSE: Sources = {
  'default-src': "'none'",
  'img-src': "'self' data: blob:",
  'base-uri': "'none'",
  'form-action': "'none'",
};

/** For dist/game: scripts, styles, fonts and the Worker come from the page's own folder; a page served by a school's lab talks to that lab. */
const SERVED: Sources = {
  ...NOTHING_ELSE,
  'script-src': "'self' 'wasm-unsafe-eval'",
  'style-src': "'self'",
  'font-src': "'self' data:",
  'connect-src': "'self'",
  'worker-src': "'self'",
  'manifest-src': "'self'",
};

/** For the single file: the scripts and styles that stand in it, each by its hash; the Worker from a blob: that the page makes. */
function single(html: string): Sources {
  const { document } = parseHTML(html);
  const hashes = (name: string): string =>
    [...document.querySelectorAll(name)]
      .map((e) =>
        createHash('sha256')
          .update(e.textContent ?? '')
          .digest('base64'),
      )
      .map((digest) => `'sha256-${digest}'`)
      .join(' ');
  return {
    ...NOTHING_ELSE,
    'script-src': `${hashes('script')} 'wasm-unsafe-eval'`,
    'style-src': hashes('style'),
    'font-src': 'data:',
    'worker-src': 'blob:',
  };
}

/** The page with its policy right after the encoding, before anything it speaks about. @throws where the page has no such place */
export function withPolicy(html: string, isSingle: boolean): string {
  const text = Object.entries(isSingle ? single(html) : SERVED)
    .map(([directive, allowed]) => `${directive} ${allowed}`)
    .join('; ');
  const encoding = /<meta charset="utf-8" ?\/?>/;
  if (!encoding.test(html)) throw new Error('the page does not begin with its encoding: no place for the policy');
  return html.replace(
    encoding,
    (found) => `${found}\n    <meta http-equiv="Content-Security-Policy" content="${text}" />`,
  );
}
