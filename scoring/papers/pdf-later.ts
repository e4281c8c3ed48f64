import type { AttemptPaper } from './attempt-paper.ts';
import type { ClassPaper } from './class-paper.ts';
import type { PaperFonts } from './paper-fonts.ts';

/** Papers as PDF for a page: what sets them is fetched when one is first wanted. Same paper, same bytes as the command line's. */

/** The class report as a PDF on A4. */
export async function classPdf(paper: ClassPaper, fonts: PaperFonts): Promise<Uint8Array> {
  return (await import('./class-pdf.ts')).classPdf(paper, fonts);
}

/** The report of one attempt as a PDF, one sheet of A4. */
export async function attemptPdf(paper: AttemptPaper, fonts: PaperFonts): Promise<Uint8Array> {
  return (await import('./attempt-pdf.ts')).attemptPdf(paper, fonts);
}
