import { blackAndWhite } from './grey.ts';
import { drawn, type Html, html, txt } from './html.ts';
import type { MacroPaper } from './macro-paper.ts';
import { blockHtml, paperDocument } from './paper-html.ts';

/** The macro sheet as an HTML document that prints on one sheet of A4. */
export function macroHtml(p: MacroPaper): string {
  const parts = [
    html`<header class="head"><h1>${txt(p.title)}</h1><p>${txt(p.joint)}</p></header>`,
    html`<section class="two key"><figure>${drawn(blackAndWhite(p.key.svg, 'inherit'))}</figure><div><p>${txt(p.how)}</p><p>${txt(p.key.caption)}</p><p>${txt(p.limits)}</p>${opened(p)}</div></section>`,
    ...p.cuts.map((cut) => cutHtml(p, cut)),
    html`<section class="foot"><p class="wide">${txt(p.cautions)}</p></section>`,
    blockHtml(p.block),
  ];
  return paperDocument(p.title, parts, p.language);
}

function opened(p: MacroPaper): Html {
  return html`<table class="pairs pen"><tbody>${p.opened.map(
    ([what, value]) => html`<tr><th scope="row">${txt(what)}</th><td class="blank">${txt(value)}</td></tr>`,
  )}</tbody></table>`;
}

function cutHtml(p: MacroPaper, cut: string): Html {
  const head = p.readers.map((reader) => html`<th>${txt(reader)}</th>`);
  const pen = p.readers.map(() => html`<td class="blank"></td>`);
  const rows = p.readings.map(
    (r) =>
      html`<tr><td class="letter">${txt(r.letter)}</td><td>${txt(r.what)}</td><td class="nw">${txt(r.giveOrTake)}</td>${pen}</tr>`,
  );
  return html`<section class="readings avoid"><table><thead><tr><th colspan="2">${txt(cut)}</th><th>${txt(p.byHand)}</th>${head}</tr></thead><tbody>${rows}</tbody></table></section>`;
}
