import type { ExercisePaper } from './exercise-paper.ts';
import { drawn, type Html, html, NOTHING, txt } from './html.ts';
import { blockHtml, listHtml, paperDocument } from './paper-html.ts';
import type { SheetWords } from './sheet-words.ts';
import { sheetWordsIn } from './words-in.ts';

/** The sheet of an exercise as an HTML document that prints on one sheet of A4. */
export function exerciseHtml(p: ExercisePaper): string {
  const w = sheetWordsIn(p.language);
  const parts = [
    html`<header class="head"><h1>${txt(p.title)}</h1><p>${txt(p.joint)}</p></header>`,
    p.story === '' ? NOTHING : html`<p>${txt(p.story)}</p>`,
    p.teaches === '' ? NOTHING : html`<p class="first">${txt(p.teaches)}</p>`,
    html`<section class="two"><figure class="weave">${drawn(p.weave.svg)}<figcaption>${txt(p.weave.caption)}</figcaption></figure>`,
    html`<div>${pairs(w.hand.title, p.settings)}${listHtml(w.look.title, p.look)}</div></section>`,
    html`<section><h2>${txt(w.limits.title)}</h2><p>${txt(p.limitsBy)}. ${txt(p.judged)}</p>${limits(p, w)}`,
    p.provenance === '' ? NOTHING : html`<p><small>${txt(p.provenance)}</small></p>`,
    html`</section><section class="card">${pairs(w.booth.title, p.booth)}</section>`,
    html`<section class="foot"><p class="wide">${txt(p.cautions)}</p></section>`,
    blockHtml(p.block),
  ];
  return paperDocument(p.title, parts, p.language);
}

/** What and what it is; a value left empty is for a pen. */
function pairs(title: string, rows: readonly (readonly [string, string])[]): Html {
  const cells = rows.map(
    ([what, value]) =>
      html`<tr><th scope="row">${txt(what)}</th><td class="${txt(value === '' ? 'blank' : 'said')}">${txt(value)}</td></tr>`,
  );
  return html`<h2>${txt(title)}</h2><table class="pairs"><tbody>${cells}</tbody></table>`;
}

function limits({ limits: rows }: ExercisePaper, w: SheetWords): Html {
  const head = w.limits.head.map((h) => html`<th>${txt(h)}</th>`);
  const body = rows.map(
    (r) => html`<tr><td><b>${txt(r.what)}</b></td><td>${txt(r.limit)}</td><td><small>${txt(r.rule)}</small></td></tr>`,
  );
  return html`<table><thead><tr>${head}</tr></thead><tbody>${body}</tbody></table>`;
}
