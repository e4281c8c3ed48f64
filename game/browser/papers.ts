import type { Papers } from '../core/ports.ts';
import { printHtml } from './print.ts';

/** Sets papers. What makes PDF is large and fetched when it is first wanted. */
export const browserPapers: Papers = {
  print: printHtml,
  async classPdf(paper) {
    const { classPdf, fonts } = await import('./pdf.ts');
    return classPdf(paper, fonts());
  },
  async attemptPdf(paper) {
    const { attemptPdf, fonts } = await import('./pdf.ts');
    return attemptPdf(paper, fonts());
  },
};
