/** Papers as PDF where there is no Node: the same bytes as from `toehold/scoring/node`, with the fonts handed in. Heavy; import it when it is needed. */

export { attemptPdf } from './papers/attempt-pdf.ts';
export { classPdf } from './papers/class-pdf.ts';
export type { PaperFonts } from './papers/pdf.ts';
