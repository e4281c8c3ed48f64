import pdfmake from 'pdfmake';
import type { Content, TDocumentDefinitions } from 'pdfmake/interfaces';
import { MM_PER_INCH } from '../lines/limit.ts';
import { clean } from '../schema/clean.ts';
import type { Language } from '../words/language.ts';
import { wordsIn } from '../words/words.ts';
import { Lettering, type Writing } from './letters.ts';
import type { PaperFonts } from './paper-fonts.ts';

/** Font of the papers, which comes with pdfmake. */
export const PDF_FONT = 'Roboto';

/** Names as the fonts give them themselves: by these the text of drawings finds a font the page has already used. */
const REGULAR = `${PDF_FONT}-Regular`;
const MEDIUM = `${PDF_FONT}-Medium`;

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
  language: Language;
  title: string;
  subject: string;
  content: Content[];
  /** Rows of four cells: what, value. */
  block: readonly (readonly [string, string])[];
}

/** Where pdfmake looks for files before anywhere else; its published types leave it out. */
interface Memory {
  writeFileSync(name: string, content: Uint8Array): void;
}

/** Fonts lie in pdfmake's own memory, and everything that is set comes from this program: nothing is fetched or read because a text asks. */
function prepare({ regular, medium }: PaperFonts, others: readonly [Writing, Uint8Array][]): void {
  const { virtualfs } = pdfmake as unknown as { virtualfs: Memory };
  virtualfs.writeFileSync(REGULAR, regular);
  virtualfs.writeFileSync(MEDIUM, medium);
  for (const [writing, file] of others) virtualfs.writeFileSync(writing, file);
  pdfmake.setFonts({
    [PDF_FONT]: { normal: REGULAR, bold: MEDIUM },
    ...Object.fromEntries(others.map(([writing]) => [writing, { normal: writing, bold: writing }])),
  });
  pdfmake.setUrlAccessPolicy(() => false);
  // The browser's build has no files to be kept from.
  if ('setLocalAccessPolicy' in pdfmake) pdfmake.setLocalAccessPolicy(() => false);
}

/** A4 as an engineering drawing's sheet: thin frame, title block at the foot of each page. The same content gives the same bytes. */
export async function pdfOf(paper: PdfPaper, fonts: PaperFonts): Promise<Uint8Array> {
  const lettering = new Lettering();
  const set = <T>(content: T): T => lettered(content, lettering) as T;
  const content = set(paper.content);
  set(paper.block);
  const unset = lettering.list();
  if (unset !== '')
    content.push({ text: clean(wordsIn(paper.language).unset(unset)), fontSize: 6.2, margin: [0, 3, 0, 0] });
  const needed = [...lettering.needed].sort();
  prepare(fonts, await Promise.all(needed.map(async (w) => [w, await fonts.letters(w)] as [Writing, Uint8Array])));
  const rows = Math.ceil(paper.block.length / 4);
  const foot = rows * ROW + 1;
  const definition: TDocumentDefinitions = {
    pageSize: 'A4',
    // Node and browsers pack the same content into other bytes; twice the size is little for a sheet.
    compress: false,
    pageMargins: [EDGE + INSIDE, EDGE + 5 * MM, EDGE + INSIDE, EDGE + foot + 6],
    // A date would make every run's bytes differ; the day of the attempt stands in the title block.
    info: {
      title: clean(paper.title),
      subject: clean(paper.subject),
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
        body: set(blockRows(paper.block, pages > 1 ? `page ${page} of ${pages}` : '')),
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
    content,
  };
  return new Uint8Array(await pdfmake.createPdf(definition).getBuffer());
}

/** Everything to be set with its texts cleaned and in typefaces that have their letters. Drawings are clean from `draw`; what is neither has no text in it. */
function lettered(content: unknown, lettering: Lettering): unknown {
  if (typeof content === 'string') {
    const set = lettering.set(clean(content));
    return typeof set === 'string' ? set : { text: set };
  }
  if (Array.isArray(content)) return content.map((one) => lettered(one, lettering));
  if (typeof content !== 'object' || content === null) return content;
  return Object.fromEntries(
    Object.entries(content).map(([key, value]) => {
      if (key === 'svg') return [key, value];
      if (key === 'text' && typeof value === 'string') return [key, lettering.set(clean(value))];
      return [key, lettered(value, lettering)];
    }),
  );
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
