import type { AttemptPaper, PaperLine } from './attempt-paper.ts';
import { blackAndWhite } from './grey.ts';
import { blockHtml, esc, listHtml, paperDocument, verdictClass } from './paper-html.ts';
import { COUPON_CELLS, LINES_HEAD, STRIP_SAYS } from './sentences.ts';

const FONT = 'inherit';

/** The report of one attempt as an HTML document that prints on one sheet of A4. */
export function attemptHtml(p: AttemptPaper): string {
  return paperDocument(
    `${p.file}: ${p.verdict}`,
    [
      `<header class="head"><h1>${esc(p.title)}</h1>`,
      `<div class="verdict ${verdictClass(p.verdict)}">${esc(p.verdict)}${p.trend === null ? '' : ` <small>trend number ${esc(p.trend)}</small>`}</div>`,
      `<p>${esc(p.settings)}</p></header>`,
      `<section class="two"><figure><div class="framed">${blackAndWhite(p.cut.svg, FONT)}</div>`,
      `<figcaption>The cut at ${esc(String(p.cut.y_mm))} mm, ${esc(p.cut.why)}. Heavy strokes: not fused.</figcaption></figure>`,
      `<div>${firstHtml(p)}${listHtml('Then', p.after)}${listHtml('No verdict because', p.reasons)}${listHtml('To know', p.notes)}${smallCuts(p)}</div></section>`,
      `<figure class="strip">${blackAndWhite(p.strip, FONT)}<figcaption>${esc(STRIP_SAYS)}</figcaption></figure>`,
      linesHtml(p.lines),
      `<section><p>${esc(p.hand.join(' '))}</p></section>`,
      `<section class="foot"><div><h2>Not measured</h2><p>${esc(p.notMeasured === '' ? 'nothing: this device measures all of it' : p.notMeasured)}.</p></div>`,
      `<div><h2>Not modelled</h2><p>${esc(p.notModelled)}.</p></div>`,
      `<div class="wide"><p>${esc(p.cautions.join(' '))}</p></div></section>`,
      blockHtml([...p.block, ...COUPON_CELLS]),
    ].join('\n'),
  );
}

function firstHtml(p: AttemptPaper): string {
  if (p.first === null) return '<p class="first">Nothing to say about the hand.</p>';
  return `<p class="first">${esc(p.first.text)}${p.first.where === null ? '' : `<small>${esc(p.first.where)}</small>`}</p>`;
}

function smallCuts(p: AttemptPaper): string {
  if (p.smallCuts.length === 0) return '';
  const one = (c: AttemptPaper['smallCuts'][number]): string =>
    `<figure><div class="framed">${blackAndWhite(c.svg, FONT)}</div><figcaption>marked, ${esc(String(c.y_mm))} mm</figcaption></figure>`;
  return `<div class="small-cuts">${p.smallCuts.map(one).join('')}</div>`;
}

function linesHtml(lines: readonly PaperLine[]): string {
  if (lines.length === 0) return '';
  const row = (l: PaperLine): string =>
    `<tr class="${verdictClass(l.verdict)}"><td><b>${esc(l.what)}</b><small>${esc(l.rule)}</small></td><td class="nw">${esc(l.reading)}</td><td class="nw">${esc(l.limit)}</td><td class="standing">${l.standing}</td><td class="nw v">${esc(l.verdict)}</td><td>${esc(l.where)}</td><td class="blank"></td></tr>`;
  return `<table><thead><tr>${LINES_HEAD.map((h) => `<th>${esc(h)}</th>`).join('')}</tr></thead><tbody>${lines.map(row).join('')}</tbody></table>`;
}
