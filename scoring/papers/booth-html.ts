import type { BoothPaper } from './booth-paper.ts';
import { html, NOTHING, txt } from './html.ts';
import { blockHtml, paperDocument } from './paper-html.ts';
import { sheetWordsIn } from './words-in.ts';

/** The booth card as an HTML document that prints on one sheet of A4. */
export function boothHtml(p: BoothPaper): string {
  const asks = p.asks.map(([what, value]) => html`<tr><th scope="row">${txt(what)}</th><td>${txt(value)}</td></tr>`);
  const head = p.machines.map((m) => html`<th>${txt(m)}</th>`);
  const row = html`<tr>${p.machines.map(() => html`<td class="blank"></td>`)}</tr>`;
  const w = sheetWordsIn(p.language).booth;
  const parts = [
    html`<header class="head"><h1>${txt(p.title)}</h1></header>`,
    html`<section class="two booth"><table class="pairs large"><tbody>${asks}</tbody></table>`,
    html`<div><h2>${txt(w.six)}</h2><ol>${p.steps.map((s) => html`<li>${txt(s)}</li>`)}</ol></div></section>`,
    html`<table class="ladder"><tbody><tr><th scope="row">${txt(w.cm)}</th>${p.ladder.map((l) => html`<td class="${txt(l.asked ? 'asked' : 'said')}">${txt(l.cm)}</td>`)}</tr>`,
    html`<tr><th scope="row">m/min</th>${p.ladder.map((l) => html`<td class="${txt(l.asked ? 'asked' : 'said')}">${txt(l.feed)}</td>`)}</tr>`,
    p.ladder.some((l) => l.inPerMin !== null)
      ? html`<tr><th scope="row">in/min</th>${p.ladder.map((l) => html`<td class="${txt(l.asked ? 'asked' : 'said')}">${txt(l.inPerMin ?? '')}</td>`)}</tr>`
      : NOTHING,
    html`</tbody></table>`,
    html`<p>${txt(p.foot)}</p>`,
    html`<table class="machines"><thead><tr>${head}</tr></thead><tbody>${Array.from({ length: p.rows }, () => row)}</tbody></table>`,
    html`<section class="foot"><p class="wide">${txt(p.cautions)}</p></section>`,
    blockHtml(p.block),
  ];
  return paperDocument(p.title, parts, p.language);
}
