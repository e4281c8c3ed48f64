import type { TableCell } from 'pdfmake/interfaces';
import type { ExercisePaper } from './exercise-paper.ts';
import type { PaperFonts } from './paper-fonts.ts';
import { MM, pdfOf, TEXT_WIDTH } from './pdf.ts';
import { drawing, heading, pairsTable, ruled, titled } from './pdf-parts.ts';
import { sheetWordsIn } from './words-in.ts';

const WEAVE = 64 * MM;
const GAP = 6 * MM;
/** Settings with inches beside them, pt: one line each, and the sheet stays one. */
const SMALLER = 6.9;

/** The sheet of an exercise as a PDF on A4. Same exercise, same bytes. */
export function exercisePdf(p: ExercisePaper, fonts: PaperFonts): Promise<Uint8Array> {
  const w = sheetWordsIn(p.language);
  const size = p.inches ? SMALLER : undefined;
  const half = Math.ceil(p.booth.length / 2);
  const limits = p.limits.map((r): TableCell[] => [
    { text: r.what, bold: true },
    r.limit,
    { text: r.rule, fontSize: 6.4 },
  ]);
  return pdfOf(
    {
      language: p.language,
      title: p.title,
      subject: p.joint,
      block: p.block,
      content: [
        ...heading(p.title, null, p.joint),
        ...(p.story === '' ? [] : [{ text: p.story, margin: [0, 0, 0, 3] as [number, number, number, number] }]),
        ...(p.teaches === ''
          ? []
          : [{ text: p.teaches, fontSize: 12, margin: [0, 0, 0, 6] as [number, number, number, number] }]),
        {
          columns: [
            {
              width: WEAVE,
              stack: [drawing(p.weave.svg, p.weave.width_mm * MM), { text: p.weave.caption, fontSize: 6.8 }],
            },
            {
              width: TEXT_WIDTH - WEAVE - GAP,
              stack: [
                { text: w.hand.title, bold: true, margin: [0, 0, 0, 1] },
                pairsTable(p.settings, size),
                ...titled(w.look.title, p.look),
              ],
            },
          ],
          columnGap: GAP,
        },
        { text: w.limits.title, bold: true, margin: [0, 8, 0, 1] },
        { text: `${p.limitsBy}. ${p.judged}`, margin: [0, 0, 0, 2] },
        ruled(['auto', '*', 'auto'], w.limits.head, limits),
        ...(p.provenance === ''
          ? []
          : [{ text: p.provenance, fontSize: 6.4, margin: [0, 2, 0, 0] as [number, number, number, number] }]),
        {
          table: {
            widths: ['*'],
            body: [
              [
                {
                  stack: [
                    { text: w.booth.title, bold: true, margin: [0, 0, 0, 2] },
                    {
                      columns: [pairsTable(p.booth.slice(0, half), size), pairsTable(p.booth.slice(half), size)],
                      columnGap: 8 * MM,
                    },
                  ],
                },
              ],
            ],
          },
          layout: {
            hLineWidth: () => 0.8,
            vLineWidth: () => 0.8,
            hLineStyle: () => ({ dash: { length: 3 } }),
            vLineStyle: () => ({ dash: { length: 3 } }),
            paddingLeft: () => 8,
            paddingRight: () => 8,
            paddingTop: () => 5,
            paddingBottom: () => 7,
          },
          unbreakable: true,
          margin: [0, 8, 0, 0],
        },
        { text: p.cautions, fontSize: 6.8, margin: [0, 6, 0, 0] },
      ],
    },
    fonts,
  );
}
