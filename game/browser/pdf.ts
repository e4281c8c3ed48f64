import medium from 'pdfmake/fonts/Roboto/Roboto-Medium.ttf?inline';
import regular from 'pdfmake/fonts/Roboto/Roboto-Regular.ttf?inline';
import type { PaperFonts } from '../../scoring/browser.ts';

export { attemptPdf, classPdf } from '../../scoring/browser.ts';

/** The fonts that come with pdfmake. They stand in the program: the page may fetch nothing, and the single file has nowhere to fetch from. */
export function fonts(): PaperFonts {
  return { regular: bytesOf(regular), medium: bytesOf(medium) };
}

function bytesOf(dataAddress: string): Uint8Array {
  const packed = atob(dataAddress.slice(dataAddress.indexOf(',') + 1));
  return Uint8Array.from(packed, (letter) => letter.charCodeAt(0));
}
