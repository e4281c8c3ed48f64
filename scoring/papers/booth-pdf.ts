import type { Content, TableCell } from 'pdfmake/interfaces';
import type { BoothPaper } from './booth-paper.ts';
import type { PaperFonts } from './paper-fonts.ts';
import { MM, pdfOf } from './pdf.ts';
import { heading, pairsTable, penTable } from './pdf-parts.ts';
import { sheetWordsIn } from './words-in.ts';

const MACHINE_ROW = 9.5 * MM;

/** The booth card as a PDF on A4. Same exercise, same bytes. */
export function boothPdf(p: BoothPaper, fonts: PaperFonts): Promise<Uint8Array> {
  const w = sheetWordsIn(p.language).booth;
  return pdfOf(
    {
      language: p.language,
      title: p.title,
      subject: p.title,
      block: p.block,
      content: [
        ...heading(p.title, null, ''),
        {
          columns: [
            { width: '*', stack: [pairsTable(p.asks, 10)] },
            {
              width: '*',
              stack: [
                { text: w.six, bold: true, margin: [0, 0, 0, 2] },
                { ol: p.steps.map((text) => ({ text, margin: [0, 0, 0, 2] })) },
              ],
            },
          ],
          columnGap: 6 * MM,
        },
        ladder(p),
        { text: p.foot, margin: [0, 2, 0, 6] },
        penTable(
          p.machines.map(() => '*'),
          p.machines,
          Array.from({ length: p.rows }, () => p.machines.map((): TableCell => ' ')),
          { penFrom: 0, height: MACHINE_ROW },
        ),
        { text: p.cautions, fontSize: 6.8, margin: [0, 6, 0, 0] },
      ],
    },
    fonts,
  );
}

/** Centimetres in six seconds over metres a minute; what is asked for stands in a heavier frame. */
function ladder({ ladder: steps, language }: BoothPaper): Content {
  const w = sheetWordsIn(language).booth;
  const row = (what: string, of: 'cm' | 'feed' | 'inPerMin'): TableCell[] => [
    { text: what, margin: [0, 3, 0, 3] },
    ...steps.map(
      (step): TableCell => ({
        text: step[of] ?? '',
        bold: step.asked,
        fontSize: 11,
        alignment: 'center',
        margin: [0, 2, 0, 2],
        ...(step.asked ? { fillColor: '#e2e2e2' } : {}),
      }),
    ),
  ];
  const inches = steps.some((step) => step.inPerMin !== null) ? [row('in/min', 'inPerMin')] : [];
  const rows = [row(w.cm, 'cm'), row('m/min', 'feed'), ...inches];
  return {
    table: { widths: ['auto', ...steps.map(() => '*')], body: rows },
    layout: {
      hLineWidth: () => 0.5,
      vLineWidth: (i) => (i === 0 ? 0 : 0.5),
      paddingLeft: (i) => (i === 0 ? 0 : 1),
      paddingRight: (i) => (i === 0 ? 6 : 1),
    },
    margin: [0, 10, 0, 2],
  };
}
