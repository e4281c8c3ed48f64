import type { Content, TableCell } from 'pdfmake/interfaces';
import { nobodyFirst } from '../class/sheet-text.ts';
import { classWordsIn } from '../class/words-in.ts';
import { seeFirst } from './class-html.ts';
import { type ClassPaper, type FirstOnPaper, MANY } from './class-paper.ts';
import type { PaperFonts } from './paper-fonts.ts';
import { pdfOf, TEXT_WIDTH } from './pdf.ts';
import { framed, heading, ruled, titled } from './pdf-parts.ts';

const GAP = 14;
const CUT = (TEXT_WIDTH - 2 * GAP) / 3;
const SMALL_CUT = 0.6 * CUT;

/** The class report as a PDF on A4. Same scores, same bytes. */
export function classPdf(p: ClassPaper, fonts: PaperFonts): Promise<Uint8Array> {
  const w = classWordsIn(p.language);
  const { head, rows: cells, same, wraps } = p.table;
  const rows = cells.map((row): TableCell[] => [
    ...row.map((text, i) => ({ text, bold: i === 0, fontSize: cells.length > MANY ? 6.7 : 7.2, noWrap: !wraps[i] })),
    { text: '' },
  ]);
  return pdfOf(
    {
      language: p.language,
      title: p.title,
      subject: p.headline,
      block: p.block,
      content: [
        ...heading(p.title, null, p.headline),
        { text: p.common, fontSize: 12, margin: [0, 0, 0, 8] },
        { text: p.first.length === 0 ? nobodyFirst(p.sheet, p.language) : seeFirst(p), bold: true },
        {
          columns: p.first.map((f) => ({ width: CUT, stack: first(f, p.table.rows.length > MANY ? SMALL_CUT : CUT) })),
          columnGap: GAP,
          margin: [0, 3, 0, 2],
        },
        ...(p.first.length === 0
          ? []
          : [{ text: p.firstRule, fontSize: 6.4, margin: [0, 2, 0, 0] as [number, number, number, number] }]),
        {
          stack: [
            ...(same === ''
              ? []
              : [{ text: same, fontSize: 6.8, margin: [0, 0, 0, 2] as [number, number, number, number] }]),
            ruled([...head.slice(2).map(() => 'auto'), '*', 38], head, rows, head.length - 1),
          ],
          margin: [0, 8, 0, 0],
        },
        ...(p.weeks === null ? [] : weeks(p.weeks, w.weeks)),
        ...p.lists.flatMap(([title, items]) => titled(title, items)),
        { text: w.notModelled(p.notModelled), fontSize: 6.8, margin: [0, 8, 0, 0] },
        { text: p.cautions, fontSize: 6.8, margin: [0, 2, 0, 0] },
      ],
    },
    fonts,
  );
}

function weeks({ rule, head, rows }: NonNullable<ClassPaper['weeks']>, title: string): Content[] {
  const cells = rows.map((row) => row.map((text, i): TableCell => ({ text, bold: i === 0, fontSize: 7.2 })));
  return [
    { text: title, bold: true, margin: [0, 8, 0, 1] },
    { text: rule, fontSize: 6.4, margin: [0, 0, 0, 2] },
    ruled(
      head.map((_, i) => (i < 3 ? 'auto' : '*')),
      head,
      cells,
    ),
  ];
}

function first(f: FirstOnPaper, width: number): Content[] {
  return [
    ...(f.cut === null ? [{ text: f.caption, fontSize: 6.8 }] : [framed(f.cut, width, f.caption)]),
    { text: f.who, bold: true, fontSize: 10, margin: [0, 5, 0, 0] },
    { text: [{ text: f.fault, bold: true }, `, ${f.times}`] },
    { text: f.says, margin: [0, 1, 0, 1] },
    { text: f.file, fontSize: 6.2 },
  ];
}
