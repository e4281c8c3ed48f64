/** Reports that need Node: PDF, PNG, and the class report, which reads its folder. */

export { pngOf } from '../node/png.ts';
export { attemptPdf } from './attempt-pdf.ts';
export { classHtml } from './class-html.ts';
export { type ClassPaper, classPaper, type FirstOnPaper } from './class-paper.ts';
export { classPdf } from './class-pdf.ts';
