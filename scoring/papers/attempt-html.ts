import type { Svg } from '../draw/svg.ts';
import type { AttemptPaper, PaperLine } from './attempt-paper.ts';
import { blackAndWhite } from './grey.ts';
import { drawn, type Html, html, NOTHING, txt } from './html.ts';
import { blockHtml, listHtml, paperDocument, verdictClass } from './paper-html.ts';
import { COUPON_CELLS, LINES_HEAD, STRIP_SAYS } from './sentences.ts';

const drawing = (svg: Svg): Html => drawn(blackAndWhite(svg, 'inherit'));

/** The report of one attempt as an HTML document that prints on one sheet of A4. */
export function attemptHtml(p: AttemptPaper): string {
  return paperDocument(`${p.file}: ${p.verdict}`, [
    html`<header class="head"><h1>${txt(p.title)}</h1>`,
    html`<div class="verdict ${txt(verdictClass(p.verdict))}">${txt(p.verdict)}</div>`,
    html`<p>${txt(p.settings)}</p></header>`,
    html`<section class="two"><figure><div class="framed">${drawing(p.cut.svg)}</div>`,
    html`<figcaption>The cut at ${txt(String(p.cut.y_mm))} mm, ${txt(p.cut.why)}. Heavy strokes: not fused.</figcaption></figure>`,
    html`<div>${firstHtml(p)}${listHtml('Then', p.after)}${listHtml('No verdict because', p.reasons)}${listHtml('To know', p.notes)}${smallCuts(p)}</div></section>`,
    html`<figure class="strip">${drawing(p.strip)}<figcaption>${txt(STRIP_SAYS)}</figcaption></figure>`,
    linesHtml(p.lines),
    p.below === '' ? NOTHING : html`<p><small>${txt(p.below)}</small></p>`,
    html`<section><p>${txt(p.hand.join(' '))}</p></section>`,
    html`<section class="foot"><div><h2>Not measured</h2><p>${txt(p.notMeasured === '' ? 'nothing: this device measures all of it' : p.notMeasured)}.</p></div>`,
    html`<div><h2>Not modelled</h2><p>${txt(p.notModelled)}.</p></div>`,
    html`<div class="wide"><p>${txt(p.cautions.join(' '))}</p></div></section>`,
    blockHtml([...p.block, ...COUPON_CELLS]),
  ]);
}

function firstHtml(p: AttemptPaper): Html {
  if (p.first === null) return html`<p class="first">Nothing to say about the hand.</p>`;
  const where = p.first.where === null ? NOTHING : html`<small>${txt(p.first.where)}</small>`;
  return html`<p class="first">${txt(p.first.text)}${where}</p>`;
}

function smallCuts(p: AttemptPaper): Html {
  if (p.smallCuts.length === 0) return NOTHING;
  const one = (c: AttemptPaper['smallCuts'][number]): Html =>
    html`<figure><div class="framed">${drawing(c.svg)}</div><figcaption>marked, ${txt(String(c.y_mm))} mm</figcaption></figure>`;
  return html`<div class="small-cuts">${p.smallCuts.map(one)}</div>`;
}

function linesHtml(lines: readonly PaperLine[]): Html {
  if (lines.length === 0) return NOTHING;
  const row = (l: PaperLine): Html =>
    html`<tr class="${txt(verdictClass(l.verdict))}"><td><b>${txt(l.what)}</b>${l.rule === '' ? NOTHING : html`<small>${txt(l.rule)}</small>`}</td><td class="nw">${txt(l.reading)}</td><td class="nw">${txt(l.limit)}</td><td class="standing">${drawn(l.standing)}</td><td class="nw v">${txt(l.verdict)}</td><td>${txt(l.where)}</td><td class="blank"></td></tr>`;
  const head = LINES_HEAD.map((h) => html`<th>${txt(h)}</th>`);
  return html`<table><thead><tr>${head}</tr></thead><tbody>${lines.map(row)}</tbody></table>`;
}
