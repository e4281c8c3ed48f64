import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import pdfmake from 'pdfmake';
import type { Content, TDocumentDefinitions } from 'pdfmake/interfaces';
import { MM_PER_INCH } from '../lines/limit.ts';

/** Font of the papers, which comes with pdfmake. */
export const PDF_FONT = 'Roboto';

const fromHere = createRequire(import.meta.url);
const STYLES = ['Regular', 'Medium'] as const;
const fontFile = (style: (typeof STYLES)[number]): string =>
  fromHere.resolve(`pdfmake/fonts/Roboto/Roboto-${style}.ttf`);

/** The font's file, for drawings set without a page round them. */
export function fontBytes(): Uint8Array {
  return readFileSync(fontFile('Regular'));
}

const A4 = { width_pt: 595.28, height_pt: 841.89 } as const;
/** Points in a millimetre. */
export const MM = 72 / MM_PER_INCH;
const EDGE = 9 * MM;
const INSIDE = 7 * MM;
/** Height of a row of the title block, its padding of 2 above and below counted. */
const ROW = 23;
/** Width between the frame's inner margins. */
export const TEXT_WIDTH = A4.width_pt - 2 * (EDGE + INSIDE);

export interface PdfPaper {
  title: string;
  subject: string;
  content: Content[];
  /** Rows of four cells: what, value. */
  block: readonly (readonly [string, string])[];
}

let ready = false;

function prepare(): void {
  if (ready) return;
  pdfmake.setFonts({
    [PDF_FONT]: {
      normal: fontFile('Regular'),
      bold: fontFile('Medium'),
    },
  });
  // Everything that is set comes from this program; nothing is fetched or read because a text asks for it.
  pdfmake.setUrlAccessPolicy(() => false);
  pdfmake.setLocalAccessPolicy((path) => STYLES.some((style) => path === fontFile(style)));
  ready = true;
}

/** A4 as an engineering drawing's sheet: thin frame, title block at the foot of each page. The same content gives the same bytes. */
export async function pdfOf(paper: PdfPaper): Promise<Uint8Array> {
  prepare();
  const rows = Math.ceil(paper.block.length / 4);
  const foot = rows * ROW + 1;
  const definition: TDocumentDefinitions = {
    pageSize: 'A4',
    pageMargins: [EDGE + INSIDE, EDGE + 5 * MM, EDGE + INSIDE, EDGE + foot + 6],
    // A date would make every run's bytes differ; the day of the attempt stands in the title block.
    info: {
      title: paper.title,
      subject: paper.subject,
      creator: 'Toehold',
      producer: 'Toehold',
      creationDate: new Date(0),
    },
    defaultStyle: { font: PDF_FONT, fontSize: 8, lineHeight: 1.12 },
    background: [
      {
        canvas: [
          {
            type: 'rect',
            x: EDGE,
            y: EDGE,
            w: A4.width_pt - 2 * EDGE,
            h: A4.height_pt - 2 * EDGE,
            lineWidth: 1,
          },
        ],
      },
    ],
    footer: (page, pages) => ({
      margin: [EDGE, 6, EDGE, 0],
      table: {
        widths: ['*', '*', '*', '*'],
        heights: ROW - 4,
        body: blockRows(paper.block, pages > 1 ? `page ${page} of ${pages}` : ''),
      },
      layout: {
        hLineWidth: (i) => (i === 0 ? 1 : i === rows ? 0 : 0.4),
        vLineWidth: (i) => (i === 0 || i === 4 ? 0 : 0.4),
        paddingLeft: () => 5,
        paddingRight: () => 3,
        paddingTop: () => 2,
        paddingBottom: () => 2,
      },
    }),
    content: paper.content,
  };
  return new Uint8Array(await pdfmake.createPdf(definition).getBuffer());
}

function blockRows(block: PdfPaper['block'], page: string): Content[][] {
  const rows: Content[][] = [];
  for (let i = 0; i < block.length; i += 4) {
    const row = block.slice(i, i + 4).map(
      ([what, value]): Content => ({
        stack: [
          { text: what, fontSize: 5.6, color: '#333333' },
          { text: value === '' ? ' ' : value, fontSize: value.length > 30 ? 6.2 : 7.6 },
        ],
      }),
    );
    while (row.length < 4) row.push({ text: page, fontSize: 6.2, alignment: 'right' });
    rows.push(row);
  }
  return rows;
}
