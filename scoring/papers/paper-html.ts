import type { Language } from '../words/language.ts';
import { type Html, html, NOTHING, txt } from './html.ts';

/**
 * Style of the papers: an engineering drawing's sheet. One thin frame, hairlines, a title block at the foot; black on white, so that any
 * printer and copier does. Where Barlow is not installed, what the machine has is set as wide as Barlow would be, so that one A4 stays one A4: the
 * shares are measured widths of a paragraph of these sheets in either weight (tests/browser/papers.test.ts prints with and without).
 */
const STYLE = html`
@font-face { font-family: "Sheet A"; font-weight: 400; size-adjust: 94.6%; src: local("Helvetica Neue"), local("Helvetica"), local("Arial"), local("Liberation Sans"), local("Arimo") }
@font-face { font-family: "Sheet A"; font-weight: 600; size-adjust: 90.5%; src: local("Helvetica Neue Bold"), local("Helvetica Bold"), local("Arial Bold"), local("Liberation Sans Bold"), local("Arimo Bold") }
@font-face { font-family: "Sheet B"; font-weight: 400; size-adjust: 95.6%; src: local("Roboto"), local("Roboto Regular") }
@font-face { font-family: "Sheet B"; font-weight: 600; size-adjust: 96.5%; src: local("Roboto Medium"), local("Roboto") }
@font-face { font-family: "Sheet C"; font-weight: 400; size-adjust: 83.3%; src: local("DejaVu Sans"), local("Bitstream Vera Sans"), local("Verdana") }
@font-face { font-family: "Sheet C"; font-weight: 600; size-adjust: 75.4%; src: local("DejaVu Sans Bold"), local("Bitstream Vera Sans Bold"), local("Verdana Bold") }
@page { size: A4; margin: 9mm }
* { box-sizing: border-box }
html { background: #e9e9e9 }
body { margin: 0; color: #000; font: 8pt/1.28 "Barlow", "Sheet A", "Sheet B", "Sheet C", sans-serif; font-variant-numeric: tabular-nums; -webkit-print-color-adjust: exact; print-color-adjust: exact }
.sheet { width: 192mm; min-height: 278mm; margin: 9mm auto; padding: 4mm 7mm 0; background: #fff; border: .35mm solid #000; display: flex; flex-direction: column; gap: 1.6mm }
h1 { font-size: 16pt; font-weight: 600; line-height: 1.15; margin: 0 }
h2 { font-size: 8.6pt; font-weight: 600; margin: 0 0 .8mm }
p { margin: 0 } p + p { margin-top: .5mm }
svg { display: block; width: 100%; height: auto }
.head { display: grid; grid-template-columns: 1fr auto; gap: 2mm 6mm; align-items: start }
.head p { grid-column: 1 / -1 }
.verdict { font-size: 13pt; font-weight: 600; border: .5mm solid #000; padding: .8mm 3mm 1mm; white-space: nowrap }
.verdict small { font-size: 8pt; font-weight: 400 }
.verdict.outside { border-width: 1mm } .verdict.none { border-style: dashed } .verdict.close { border-style: double; border-width: 1mm }
.two { display: grid; grid-template-columns: 58mm 1fr; gap: 6mm }
figure { margin: 0 } figcaption { font-size: 7.6pt; margin-top: .8mm }
.strip { margin-top: -1mm } .strip figcaption { margin-top: -2.2mm }
.framed { position: relative } .framed::after { content: ""; position: absolute; inset: 0; border: .2mm solid #000 }
.first { font-size: 13pt; line-height: 1.3; border-left: 1mm solid #000; padding-left: 3mm; margin-bottom: 2.5mm }
.first small { display: block; font-size: 8pt; margin-top: .8mm }
.small-cuts { display: grid; grid-template-columns: repeat(3, 25mm); gap: 2.5mm; margin-top: 2mm }
.three { display: grid; grid-template-columns: repeat(3, 1fr); gap: 5mm; margin-bottom: 1mm } .many .framed { width: 60% } .many td { font-size: 7.4pt; padding-top: .2mm; padding-bottom: .3mm } h3 { font-size: 11pt; font-weight: 600; margin: 1.5mm 0 .5mm } .file { font-size: 6.4pt; overflow-wrap: anywhere }
.class th { white-space: normal } .class td:first-child { font-weight: 600; white-space: nowrap }
ol, ul { margin: 0; padding-left: 4.5mm } li + li { margin-top: .6mm }
table { border-collapse: collapse; width: 100% }
th { text-align: left; white-space: nowrap; font-weight: 600; border-bottom: .35mm solid #000; padding: .4mm 1.6mm .6mm 0; vertical-align: bottom }
td { border-bottom: .15mm solid #888; padding: .35mm 2mm .45mm 0; vertical-align: middle; line-height: 1.25 }
th:last-child, td:last-child { padding-right: 0 }
td.nw { white-space: nowrap } td small, .inch { display: block; font-size: 6.2pt; line-height: 1.12; color: #222 } td b { font-weight: 600 }
td.standing { width: 18mm }
td.blank { width: 15mm; border: .2mm solid #000 }
tr.outside td.v { font-weight: 700 }
.weave svg { width: auto; max-width: 100% } .pairs { width: auto } .pairs + section { margin-top: 3mm } .pairs th { border-bottom: .15mm solid #888; font-weight: 400; padding-right: 5mm; vertical-align: middle } .pairs td { min-width: 30mm; font-weight: 600 }
.card { border: .35mm dashed #000; padding: 2mm 4mm 3mm } .card .pairs { width: 100% } .card tbody { display: grid; grid-template-columns: 1fr 1fr; column-gap: 8mm } .card tr { display: grid; grid-template-columns: 36mm 1fr } .card td.blank { height: 6.5mm; width: auto }
.key { grid-template-columns: 62mm 1fr; align-items: center } .key svg { max-height: 52mm } .pen { width: 100%; margin-top: 2mm } .pen th { width: 40mm } .pen td.blank { height: 7mm; white-space: pre; font-weight: 400 }
.readings td.blank { width: 25mm; height: 5.9mm } .readings td.letter { width: 6mm; font-weight: 600 } .readings th { font-size: 8.6pt }
.booth { grid-template-columns: 92mm 1fr } .large th, .large td { font-size: 10.5pt; padding: 1mm 4mm 1mm 0 }
.ladder { margin: 2mm 0 } .ladder th { border-bottom: .15mm solid #888; font-weight: 400; width: 18mm } .ladder td { text-align: center; font-size: 11pt; padding: 1.2mm } .ladder td.asked { font-weight: 700; border: .5mm solid #000 }
.machines th { font-weight: 400 } .machines td.blank { height: 11mm; width: auto }
.foot { display: grid; grid-template-columns: 1fr 1fr; gap: 1mm 6mm; font-size: 7pt; line-height: 1.25 }
.block { margin: auto -7mm 0; display: grid; grid-template-columns: repeat(4, 1fr); border-top: .35mm solid #000 }
.block div { padding: .8mm 2mm 1mm; min-height: 8.5mm; border-right: .15mm solid #000; border-top: .15mm solid #000; overflow-wrap: anywhere; font-size: 8.6pt }
.block div:nth-child(-n+4) { border-top: 0 } .block div:nth-child(4n) { border-right: 0 }
.block span { display: block; font-size: 6.6pt; color: #333 }
.wide { grid-column: span 2 }
.avoid, tr, figure { break-inside: avoid }
@media print { html { background: #fff } .sheet { width: calc(100% - .5mm); min-height: 277mm; margin: 0 } }
@media screen and (max-width: 200mm) { .sheet { width: auto; margin: 0 } .two, .foot { grid-template-columns: 1fr } }
`;

/** A complete HTML document on its own: no script, nothing loaded from elsewhere. */
export function paperDocument(title: string, sheet: readonly Html[], language: Language = 'en'): Html {
  return html`<!doctype html>
<html lang="${txt(language)}"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'">
<title>${txt(title)}</title><style>${STYLE}</style></head>
<body><main class="sheet">
${sheet.map((part) => html`${part}\n`)}</main></body></html>
`;
}

export const verdictClass = (verdict: string): string =>
  verdict === 'no verdict' ? 'none' : verdict === 'too close to call' ? 'close' : verdict;

/** Cells of the title block: what it is, and what stands there; empty ones are for a pen. */
export function blockHtml(cells: readonly (readonly [string, string])[]): Html {
  return html`<section class="block" aria-label="Title block">${cells.map(
    ([what, value]) => html`<div><span>${txt(what)}</span>${txt(value)}</div>`,
  )}</section>`;
}

export function listHtml(title: string, items: readonly string[]): Html {
  return items.length === 0
    ? NOTHING
    : html`<section><h2>${txt(title)}</h2><ul>${items.map((x) => html`<li>${txt(x)}</li>`)}</ul></section>`;
}
