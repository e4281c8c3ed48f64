import type { Content, TableCell } from 'pdfmake/interfaces';
import type { AttemptPaper } from './attempt-paper.ts';
import type { PaperFonts } from './paper-fonts.ts';
import { MM, pdfOf, TEXT_WIDTH } from './pdf.ts';
import { drawing, framed, heading, ruled, titled } from './pdf-parts.ts';
import { attemptWordsIn } from './words-in.ts';

const CUT = 58 * MM;
const GAP = 6 * MM;
const STANDING = 17 * MM;
const RIGHT = TEXT_WIDTH - CUT - GAP;

/** The report of one attempt as a PDF, one sheet of A4. Same recording, same bytes. In one piece: the sheet from top to bottom. */
export function attemptPdf(p: AttemptPaper, fonts: PaperFonts): Promise<Uint8Array> {
  const w = attemptWordsIn(p.language);
  return pdfOf(
    {
      language: p.language,
      title: `${p.file}: ${w.verdict[p.verdict]}`,
      subject: p.title,
      block: [...p.block, ...w.couponCells],
      content: [
        ...heading(p.title, { word: w.verdict[p.verdict], small: null }, p.settings),
        {
          columns: [
            {
              width: CUT,
              stack: [framed(p.cut.svg, CUT, w.cut(w.said(p.cut.y_mm), p.cut.why))],
            },
            {
              width: RIGHT,
              stack: [
                ...firstFix(p),
                ...titled(w.after, p.after),
                ...titled(w.because, p.reasons),
                ...titled(w.toKnow, p.notes),
                ...smallCuts(p),
              ],
            },
          ],
          columnGap: GAP,
        },
        {
          stack: [drawing(p.strip, TEXT_WIDTH), { text: w.stripSays, fontSize: 6.8, margin: [0, -7, 0, 0] }],
          margin: [0, 2, 0, 3],
        },
        ...(p.lines.length === 0 ? [] : [lines(p)]),
        ...(p.below === ''
          ? []
          : [{ text: p.below, fontSize: 6, margin: [0, 2, 0, 0] as [number, number, number, number] }]),
        { text: p.hand.join(' '), margin: [0, 2, 0, 3] },
        {
          columns: [
            {
              stack: [{ text: w.notMeasured, bold: true }, `${p.notMeasured === '' ? w.allMeasured : p.notMeasured}.`],
            },
            { stack: [{ text: w.notModelled, bold: true }, `${p.notModelled}.`] },
          ],
          columnGap: GAP,
          fontSize: 6.8,
        },
        { text: p.cautions.join(' '), fontSize: 6.8, margin: [0, 3, 0, 0] },
      ],
    },
    fonts,
  );
}

function firstFix(p: AttemptPaper): Content[] {
  const text = p.first === null ? attemptWordsIn(p.language).nothing : p.first.text;
  return [
    {
      table: {
        widths: ['*'],
        body: [
          [
            {
              stack: [
                { text, fontSize: 12, lineHeight: 1.15 },
                ...(p.first?.where
                  ? [{ text: p.first.where, fontSize: 7, margin: [0, 2, 0, 0] as [number, number, number, number] }]
                  : []),
              ],
            },
          ],
        ],
      },
      layout: {
        hLineWidth: () => 0,
        vLineWidth: (i) => (i === 0 ? 2.6 : 0),
        paddingLeft: () => 8,
        paddingTop: () => 0,
        paddingBottom: () => 0,
      },
    },
  ];
}

function smallCuts(p: AttemptPaper): Content[] {
  if (p.smallCuts.length === 0) return [];
  const w = attemptWordsIn(p.language);
  const gap = 7;
  const width = 27 * MM;
  return [
    {
      columns: p.smallCuts.map((c) => ({ width, stack: [framed(c.svg, width, w.marked(w.said(c.y_mm)))] })),
      columnGap: gap,
      margin: [0, 6, 0, 0],
    },
  ];
}

function withInch(text: string, inch: string | null): TableCell {
  const said = { text, noWrap: true };
  return inch === null ? said : { stack: [said, { text: inch, fontSize: 6, color: '#222222', noWrap: true }] };
}

function lines(p: AttemptPaper): Content {
  const w = attemptWordsIn(p.language);
  const rows = p.lines.map((l): TableCell[] => [
    {
      stack: [
        { text: l.what, bold: true },
        ...(l.rule === '' ? [] : [{ text: l.rule, fontSize: 6, color: '#222222' }]),
      ],
    },
    withInch(l.reading, l.readingInch),
    withInch(l.limit, l.limitInch),
    drawing(l.standing, STANDING),
    { text: w.verdict[l.verdict], bold: l.verdict === 'outside' },
    { text: l.where, fontSize: 7 },
    { text: '' },
  ]);
  return ruled(['*', 'auto', 'auto', STANDING, 'auto', 50, 40], w.head, rows, 6);
}
