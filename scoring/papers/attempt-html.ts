import type { Svg } from '../draw/svg.ts';
import type { AttemptPaper, PaperLine } from './attempt-paper.ts';
import type { AttemptWords } from './attempt-words.ts';
import { blackAndWhite } from './grey.ts';
import { drawn, type Html, html, NOTHING, txt } from './html.ts';
import { blockHtml, listHtml, paperDocument, verdictClass } from './paper-html.ts';
import { attemptWordsIn } from './words-in.ts';

const drawing = (svg: Svg): Html => drawn(blackAndWhite(svg, 'inherit'));

/** The report of one attempt as an HTML document that prints on one sheet of A4. */
export function attemptHtml(p: AttemptPaper): string {
  const w = attemptWordsIn(p.language);
  const parts = [
    html`<header class="head"><h1>${txt(p.title)}</h1>`,
    html`<div class="verdict ${txt(verdictClass(p.verdict))}">${txt(w.verdict[p.verdict])}</div>`,
    html`<p>${txt(p.settings)}</p></header>`,
    html`<section class="two"><figure><div class="framed">${drawing(p.cut.svg)}</div>`,
    html`<figcaption>${txt(w.cut(w.said(p.cut.y_mm), p.cut.why))}</figcaption></figure>`,
    html`<div>${firstHtml(p)}${listHtml(w.after, p.after)}${listHtml(w.because, p.reasons)}${listHtml(w.toKnow, p.notes)}${smallCuts(p)}</div></section>`,
    html`<figure class="strip">${drawing(p.strip)}<figcaption>${txt(w.stripSays)}</figcaption></figure>`,
    linesHtml(p.lines, w),
    p.below === '' ? NOTHING : html`<p><small>${txt(p.below)}</small></p>`,
    html`<section><p>${txt(p.hand.join(' '))}</p></section>`,
    html`<section class="foot"><div><h2>${txt(w.notMeasured)}</h2><p>${txt(p.notMeasured === '' ? w.allMeasured : p.notMeasured)}.</p></div>`,
    html`<div><h2>${txt(w.notModelled)}</h2><p>${txt(p.notModelled)}.</p></div>`,
    html`<div class="wide"><p>${txt(p.cautions.join(' '))}</p></div></section>`,
    blockHtml([...p.block, ...w.couponCells]),
  ];
  return paperDocument(`${p.file}: ${w.verdict[p.verdict]}`, parts, p.language);
}

function firstHtml(p: AttemptPaper): Html {
  if (p.first === null) return html`<p class="first">${txt(attemptWordsIn(p.language).nothing)}</p>`;
  const where = p.first.where === null ? NOTHING : html`<small>${txt(p.first.where)}</small>`;
  return html`<p class="first">${txt(p.first.text)}${where}</p>`;
}

function smallCuts(p: AttemptPaper): Html {
  if (p.smallCuts.length === 0) return NOTHING;
  const w = attemptWordsIn(p.language);
  const one = (c: AttemptPaper['smallCuts'][number]): Html =>
    html`<figure><div class="framed">${drawing(c.svg)}</div><figcaption>${txt(w.marked(w.said(c.y_mm)))}</figcaption></figure>`;
  return html`<div class="small-cuts">${p.smallCuts.map(one)}</div>`;
}

const inch = (text: string | null): Html => (text === null ? NOTHING : html`<span class="inch">${txt(text)}</span>`);

function linesHtml(lines: readonly PaperLine[], w: AttemptWords): Html {
  if (lines.length === 0) return NOTHING;
  const row = (l: PaperLine): Html =>
    html`<tr class="${txt(verdictClass(l.verdict))}"><td><b>${txt(l.what)}</b>${l.rule === '' ? NOTHING : html`<small>${txt(l.rule)}</small>`}</td><td class="nw">${txt(l.reading)}${inch(l.readingInch)}</td><td class="nw">${txt(l.limit)}${inch(l.limitInch)}</td><td class="standing">${drawn(l.standing)}</td><td class="nw v">${txt(w.verdict[l.verdict])}</td><td>${txt(l.where)}</td><td class="blank"></td></tr>`;
  const head = w.head.map((h) => html`<th>${txt(h)}</th>`);
  return html`<table><thead><tr>${head}</tr></thead><tbody>${lines.map(row)}</tbody></table>`;
}
