import type { ExercisePaper } from './exercise-paper.ts';
import { blockHtml, esc, listHtml, paperDocument } from './paper-html.ts';

/** The sheet of an exercise as an HTML document that prints on one sheet of A4. */
export function exerciseHtml(p: ExercisePaper): string {
  return paperDocument(
    p.title,
    [
      `<header class="head"><h1>${esc(p.title)}</h1><p>${esc(p.joint)}</p></header>`,
      `${p.story === '' ? '' : `<p>${esc(p.story)}</p>`}${p.teaches === '' ? '' : `<p class="first">${esc(p.teaches)}</p>`}`,
      `<section class="two"><figure class="weave">${p.weave.svg}<figcaption>${esc(p.weave.caption)}</figcaption></figure>`,
      `<div>${pairs('The hand', p.settings)}${listHtml('What to look for', p.look)}</div></section>`,
      `<section><h2>Limits</h2><p>${esc(p.limitsBy)}. ${esc(p.judged)}</p>${limits(p)}${p.provenance === '' ? '' : `<p><small>${esc(p.provenance)}</small></p>`}</section>`,
      `<section class="card">${pairs('At the booth', p.booth)}</section>`,
      `<section class="foot"><p class="wide">${esc(p.cautions)}</p></section>`,
      blockHtml(p.block),
    ].join('\n'),
  );
}

/** What and what it is; a value left empty is for a pen. */
function pairs(title: string, rows: readonly (readonly [string, string])[]): string {
  const cells = rows.map(
    ([what, value]) =>
      `<tr><th scope="row">${esc(what)}</th><td${value === '' ? ' class="blank"' : ''}>${esc(value)}</td></tr>`,
  );
  return `<h2>${esc(title)}</h2><table class="pairs"><tbody>${cells.join('')}</tbody></table>`;
}

function limits({ limits: rows }: ExercisePaper): string {
  const body = rows.map(
    (r) => `<tr><td><b>${esc(r.what)}</b></td><td>${esc(r.limit)}</td><td><small>${esc(r.rule)}</small></td></tr>`,
  );
  return `<table><thead><tr><th>what</th><th>limit</th><th>rule</th></tr></thead><tbody>${body.join('')}</tbody></table>`;
}
