import { AGREEMENT_RULE, type Agreement } from '../agreement/agreement.ts';
import type { ReadingsTable } from '../agreement/readings-table.ts';
import type { Language } from '../words/language.ts';
import { wordsIn } from '../words/words.ts';
import { html, txt } from './html.ts';
import { blockHtml, paperDocument } from './paper-html.ts';
import { sheetWordsIn } from './words-in.ts';

/** How far readers of a school's macros agree, as an HTML document that prints on one sheet of A4. */
export function agreementHtml(
  { readers, macros, trials }: Pick<ReadingsTable, 'readers' | 'macros' | 'trials'>,
  agreement: readonly Agreement[],
  language: Language = 'en',
): string {
  const { agreement: w, said } = sheetWordsIn(language);
  const { phrase } = wordsIn(language);
  const point = said(0.5).charAt(1);
  const two = (x: number | null): string => (x === null ? '–' : x.toFixed(2).replace('.', point));
  const rows = agreement.map(
    (a) =>
      html`<tr><td>${txt(a.name)}</td>${[
        two(a.repeatability),
        two(a.reproducibility),
        two(a.macros),
        a.grr_percent === null ? '–' : `${said(a.grr_percent, 0)} %`,
        a.categories === null ? '–' : said(a.categories, 0),
        two(a.icc21),
        two(a.icc31),
      ].map((cell) => html`<td class="nw">${txt(cell)}</td>`)}</tr>`,
  );
  return paperDocument(
    w.title,
    [
      html`<header class="head"><h1>${txt(w.title)}</h1><p>${txt(w.of(readers.length, macros.length, trials))}</p></header>`,
      html`<section class="agreement"><table class="class"><thead><tr>${w.head.map((head) => html`<th>${txt(head)}</th>`)}</tr></thead><tbody>${rows}</tbody></table></section>`,
      html`<section><ul>${agreement.map((a) => html`<li><b>${txt(a.name)}</b>: ${txt(phrase(a.says))}</li>`)}</ul></section>`,
      html`<section class="foot"><p class="wide">${txt(w.readers)}: ${txt(readers.join(', '))}. ${txt(w.macros)}: ${txt(macros.join('; '))}.</p><p class="wide">${txt(phrase(AGREEMENT_RULE))}</p></section>`,
      blockHtml(w.block.map((what): [string, string] => [what, ''])),
    ],
    language,
  );
}
