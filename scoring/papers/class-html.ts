import { nobodyFirst } from '../class/sheet-text.ts';
import { classWordsIn } from '../class/words-in.ts';
import { type ClassPaper, type FirstOnPaper, MANY } from './class-paper.ts';
import { blackAndWhite } from './grey.ts';
import { drawn, type Html, html, NOTHING, txt } from './html.ts';
import { blockHtml, listHtml, paperDocument } from './paper-html.ts';

/** The class report as an HTML document that prints on A4. */
export function classHtml(p: ClassPaper): string {
  const w = classWordsIn(p.language);
  const rows = p.table.rows.map(
    (row) =>
      html`<tr>${row.map((cell, i) => (p.table.wraps[i] ? html`<td>${txt(cell)}</td>` : html`<td class="nw">${txt(cell)}</td>`))}<td class="blank"></td></tr>`,
  );
  const head = p.table.head.map((h) => html`<th>${txt(h)}</th>`);
  const parts = [
    html`<header class="head"><h1>${txt(p.title)}</h1><p>${txt(p.headline)}</p></header>`,
    html`<p class="first">${txt(p.common)}</p>`,
    p.first.length === 0
      ? html`<p>${txt(nobodyFirst(p.sheet, p.language))}</p>`
      : html`<section><h2>${txt(seeFirst(p))}</h2><div class="three${p.table.rows.length > MANY ? html` many` : NOTHING}">${p.first.map(firstHtml)}</div><p><small>${txt(p.firstRule)}</small></p></section>`,
    p.table.same === '' ? NOTHING : html`<p><small>${txt(p.table.same)}</small></p>`,
    html`<table class="class${p.table.rows.length > MANY ? html` many` : NOTHING}"><thead><tr>${head}</tr></thead><tbody>${rows}</tbody></table>`,
    p.weeks === null ? NOTHING : weeksHtml(p.weeks, w.weeks),
    ...p.lists.map(([title, items]) => listHtml(title, items)),
    html`<section class="foot"><p class="wide">${txt(w.notModelled(p.notModelled))}</p><p class="wide">${txt(p.cautions)}</p></section>`,
    blockHtml(p.block),
  ];
  return paperDocument(p.title, parts, p.language);
}

/** Heading of those to see first. */
export function seeFirst(p: ClassPaper): string {
  const { three, fewer } = classWordsIn(p.language).seeFirst;
  return p.first.length === 3 ? three : fewer;
}

function weeksHtml({ rule, head, rows }: NonNullable<ClassPaper['weeks']>, title: string): Html {
  const cells = rows.map((row) => html`<tr>${row.map((cell) => html`<td>${txt(cell)}</td>`)}</tr>`);
  return html`<section class="avoid"><h2>${txt(title)}</h2><p><small>${txt(rule)}</small></p><table class="class"><thead><tr>${head.map((h) => html`<th>${txt(h)}</th>`)}</tr></thead><tbody>${cells}</tbody></table></section>`;
}

function firstHtml(f: FirstOnPaper): Html {
  const cut = f.cut === null ? NOTHING : html`<div class="framed">${drawn(blackAndWhite(f.cut, 'inherit'))}</div>`;
  return html`<figure>${cut}<figcaption>${txt(f.caption)}</figcaption><h3>${txt(f.who)}</h3><p><b>${txt(f.fault)}</b>, ${txt(f.times)}</p><p>${txt(f.says)}</p><p class="file">${txt(f.file)}</p></figure>`;
}
