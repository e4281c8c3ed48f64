import type { Papers } from '../core/ports.ts';
import { printHtml, standPaper, stands } from './print.ts';

/** Papers go out by the browser's own print dialog, which makes PDF as well. */
export const browserPapers: Papers = {
  print: printHtml,
  onPrint: (paper) =>
    addEventListener('beforeprint', () => {
      if (!stands()) standPaper(paper());
    }),
};
