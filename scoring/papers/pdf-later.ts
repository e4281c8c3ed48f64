import type { AttemptPaper } from './attempt-paper.ts';
import type { BoothPaper } from './booth-paper.ts';
import type { ClassPaper } from './class-paper.ts';
import type { ExercisePaper } from './exercise-paper.ts';
import type { MacroPaper } from './macro-paper.ts';
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

/** The sheet of an exercise as a PDF on A4. */
export async function exercisePdf(paper: ExercisePaper, fonts: PaperFonts): Promise<Uint8Array> {
  return (await import('./exercise-pdf.ts')).exercisePdf(paper, fonts);
}

/** The sheet for readings of macros as a PDF on A4. */
export async function macroPdf(paper: MacroPaper, fonts: PaperFonts): Promise<Uint8Array> {
  return (await import('./macro-pdf.ts')).macroPdf(paper, fonts);
}

/** The booth card as a PDF on A4. */
export async function boothPdf(paper: BoothPaper, fonts: PaperFonts): Promise<Uint8Array> {
  return (await import('./booth-pdf.ts')).boothPdf(paper, fonts);
}
