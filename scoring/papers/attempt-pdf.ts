import type { Content, TableCell } from 'pdfmake/interfaces';
import type { AttemptPaper, PaperLine } from './attempt-paper.ts';
import type { PaperFonts } from './paper-fonts.ts';
import { MM, pdfOf, TEXT_WIDTH } from './pdf.ts';
import { drawing, framed, heading, ruled, titled } from './pdf-parts.ts';
import { COUPON_CELLS, LINES_HEAD, STRIP_SAYS } from './sentences.ts';

const CUT = 58 * MM;
const GAP = 6 * MM;
const STANDING = 17 * MM;
const RIGHT = TEXT_WIDTH - CUT - GAP;

/** The report of one attempt as a PDF, one sheet of A4. Same recording, same bytes. In one piece: the sheet from top to bottom. */
export function attemptPdf(p: AttemptPaper, fonts: PaperFonts): Promise<Uint8Array> {
  return pdfOf(
    {
      title: `${p.file}: ${p.verdict}`,
      subject: p.title,
      block: [...p.block, ...COUPON_CELLS],
      content: [
        ...heading(p.title, { word: p.verdict, small: null }, p.settings),
        {
          columns: [
            {
              width: CUT,
              stack: [framed(p.cut.svg, CUT, `The cut at ${p.cut.y_mm} mm, ${p.cut.why}. Heavy strokes: not fused.`)],
            },
            {
              width: RIGHT,
              stack: [
                ...firstFix(p),
                ...titled('Then', p.after),
                ...titled('No verdict because', p.reasons),
                ...titled('To know', p.notes),
                ...smallCuts(p),
              ],
            },
          ],
          columnGap: GAP,
        },
        {
          stack: [drawing(p.strip, TEXT_WIDTH), { text: STRIP_SAYS, fontSize: 6.8, margin: [0, -7, 0, 0] }],
          margin: [0, 2, 0, 3],
        },
        ...(p.lines.length === 0 ? [] : [lines(p.lines)]),
        ...(p.below === ''
          ? []
          : [{ text: p.below, fontSize: 6, margin: [0, 2, 0, 0] as [number, number, number, number] }]),
        { text: p.hand.join(' '), margin: [0, 2, 0, 3] },
        {
          columns: [
            {
              stack: [
                { text: 'Not measured', bold: true },
                `${p.notMeasured === '' ? 'nothing: this device measures all of it' : p.notMeasured}.`,
              ],
            },
            { stack: [{ text: 'Not modelled', bold: true }, `${p.notModelled}.`] },
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
  const text = p.first === null ? 'Nothing to say about the hand.' : p.first.text;
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
  const gap = 7;
  const width = 27 * MM;
  return [
    {
      columns: p.smallCuts.map((c) => ({ width, stack: [framed(c.svg, width, `marked, ${c.y_mm} mm`)] })),
      columnGap: gap,
      margin: [0, 6, 0, 0],
    },
  ];
}

function lines(all: readonly PaperLine[]): Content {
  const rows = all.map((l): TableCell[] => [
    {
      stack: [
        { text: l.what, bold: true },
        ...(l.rule === '' ? [] : [{ text: l.rule, fontSize: 6, color: '#222222' }]),
      ],
    },
    { text: l.reading, noWrap: true },
    { text: l.limit, noWrap: true },
    drawing(l.standing, STANDING),
    { text: l.verdict, bold: l.verdict === 'outside' },
    { text: l.where, fontSize: 7 },
    { text: '' },
  ]);
  return ruled(['*', 'auto', 'auto', STANDING, 'auto', 50, 40], LINES_HEAD, rows, 6);
}
