import { TABLE_HEAD, tableCells } from '../class/sheet-text.ts';
import type { ClassPaper, FirstOnPaper } from './class-paper.ts';
import { blackAndWhite } from './grey.ts';
import { blockHtml, esc, listHtml, paperDocument } from './paper-html.ts';

/** The class report as an HTML document that prints on A4. */
export function classHtml(p: ClassPaper): string {
  const rows = p.sheet.rows
    .map(
      (row) =>
        `<tr>${tableCells(row)
          .map((cell) => `<td>${esc(cell)}</td>`)
          .join('')}<td class="blank"></td></tr>`,
    )
    .join('');
  const head = [...TABLE_HEAD, 'real coupon'].map((h) => `<th>${esc(h)}</th>`).join('');
  return paperDocument(
    p.title,
    [
      `<header class="head"><h1>${esc(p.title)}</h1><p>${esc(p.headline)}</p></header>`,
      `<p class="first">${esc(p.common)}</p>`,
      p.first.length === 0
        ? '<p>Nobody has a fault to be seen first.</p>'
        : `<section><h2>${esc(seeFirst(p))}</h2><div class="three">${p.first.map(firstHtml).join('')}</div><p><small>${esc(p.firstRule)}</small></p></section>`,
      `<table class="class"><thead><tr>${head}</tr></thead><tbody>${rows}</tbody></table>`,
      ...p.lists.map(([title, items]) => listHtml(title, items)),
      `<section class="foot"><p class="wide">Not modelled: ${esc(p.notModelled)}.</p><p class="wide">${esc(p.cautions)}</p></section>`,
      blockHtml(p.block),
    ].join('\n'),
  );
}

/** Heading of those to see first. */
export function seeFirst(p: ClassPaper): string {
  return p.first.length === 3 ? 'The three to see first' : 'To see first';
}

function firstHtml(f: FirstOnPaper): string {
  const cut = f.cut === null ? '' : `<div class="framed">${blackAndWhite(f.cut, 'inherit')}</div>`;
  return `<figure>${cut}<figcaption>${esc(f.caption)}</figcaption><h3>${esc(f.who)}</h3><p><b>${esc(f.fault)}</b>, ${esc(f.times)}</p><p>${esc(f.says)}</p><p class="file">${esc(f.file)}</p></figure>`;
}
