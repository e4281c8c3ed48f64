import type { Content, TableCell } from 'pdfmake/interfaces';
import type { MacroPaper } from './macro-paper.ts';
import type { PaperFonts } from './paper-fonts.ts';
import { MM, pdfOf, TEXT_WIDTH } from './pdf.ts';
import { drawing, heading, pairsTable, penTable } from './pdf-parts.ts';

const KEY = 56 * MM;
const GAP = 6 * MM;
const PEN = 22 * MM;
/** Beside millimetres and inches, so that no row takes a second line. */
const NARROW_PEN = 18 * MM;
const ROW = 5.2 * MM;

/** The macro sheet as a PDF on A4. Same exercise, same bytes. */
export function macroPdf(p: MacroPaper, fonts: PaperFonts): Promise<Uint8Array> {
  return pdfOf(
    {
      language: p.language,
      title: p.title,
      subject: p.joint,
      block: p.block,
      content: [
        ...heading(p.title, null, p.joint),
        {
          columns: [
            { width: KEY, stack: [drawing(p.key.svg, KEY)] },
            {
              width: TEXT_WIDTH - KEY - GAP,
              stack: [
                p.how,
                { text: p.key.caption, margin: [0, 3, 0, 3] },
                p.limits,
                { stack: [pairsTable(p.opened)], margin: [0, 5, 0, 0] },
              ],
            },
          ],
          columnGap: GAP,
        },
        ...p.cuts.map((cut) => cutTable(p, cut)),
        { text: p.cautions, fontSize: 6.8, margin: [0, 6, 0, 0] },
      ],
    },
    fonts,
  );
}

function cutTable(p: MacroPaper, cut: string): Content {
  const rows = p.readings.map((r): TableCell[] => [
    { text: r.letter === '' ? ' ' : r.letter, bold: true },
    r.what,
    { text: r.giveOrTake, noWrap: true },
    ...p.readers.map(() => ' '),
  ]);
  return {
    stack: [
      { text: cut, bold: true, fontSize: 9, margin: [0, 0, 0, 1] },
      penTable(
        [8, '*', 'auto', ...p.readers.map(() => (p.inches ? NARROW_PEN : PEN))],
        ['', '', p.byHand, ...p.readers],
        rows,
        {
          penFrom: 3,
          height: ROW - 4,
        },
      ),
    ],
    unbreakable: true,
    margin: [0, 8, 0, 0],
  };
}
