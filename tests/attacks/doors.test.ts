/** No way round the cleaning: what takes text takes no bare string. The compiler is the check; each line marked must not compile. */
import { describe, expect, it } from 'vitest';
import type { Svg } from '../../scoring/draw/svg.ts';
import type { Shown, Terminal } from '../../scoring/node/cli/screen.ts';
import { type Html, html, txt } from '../../scoring/papers/html.ts';
import { type Clean, clean } from '../../scoring/schema/clean.ts';

const fromAFile: string = '\u001b[2J<b>';

describe('the doors', () => {
  it('take no bare string', () => {
    // @ts-expect-error a bare string is not clean
    const line: Clean = fromAFile;
    // @ts-expect-error nor is it what a terminal is sent
    const sent: Parameters<Terminal['out']>[0] = fromAFile;
    // @ts-expect-error a clean line is not yet what a terminal is sent
    const shown: Shown = clean(fromAFile);
    // @ts-expect-error nor markup
    const markup: Html = fromAFile;
    // @ts-expect-error nor a piece of it
    const page = html`<p>${fromAFile}</p>`;
    // @ts-expect-error nor a drawing
    const drawing: Svg = fromAFile;
    expect([line, sent, markup, drawing]).toEqual([fromAFile, fromAFile, fromAFile, fromAFile]);
    expect([shown, page]).toHaveLength(2);
    expect(html`<p>${txt(fromAFile)}</p>`).toBe('<p>\\u001b[2J&lt;b&gt;</p>');
  });

  it('leave a clean line as it is', () => {
    for (const text of ['Zoë Åkesson', 'a\u0308', '日本', '\ud83d\udc69\u200d\ud83c\udfed', 'five ± 0.2 mm²'])
      expect(clean(clean(text))).toBe(text);
    expect(clean(clean('a\nb'))).toBe('a\\u000ab');
  });
});
