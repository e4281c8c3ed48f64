import arabic from '@fontsource/ibm-plex-sans-arabic/files/ibm-plex-sans-arabic-arabic-400-normal.woff?url';
import hebrew from '@fontsource/noto-sans-hebrew/files/noto-sans-hebrew-hebrew-400-normal.woff?url';
import medium from 'pdfmake/fonts/Roboto/Roboto-Medium.ttf?url';
import regular from 'pdfmake/fonts/Roboto/Roboto-Regular.ttf?url';
import type { Papers } from '../core/ports.ts';
import { printHtml, standPaper, stands } from './print.ts';

/** Papers go out by the browser's own print dialog, which makes PDF as well. */
export const browserPapers: Papers = {
  print: printHtml,
  onPrint: (paper) =>
    addEventListener('beforeprint', () => {
      if (!stands()) standPaper(paper());
    }),
  fonts: async () => ({
    regular: await bytesAt(regular),
    medium: await bytesAt(medium),
    letters: (writing) => bytesAt({ hebrew, arabic }[writing]),
  }),
};

/** A file of the page's own; in the single file it stands in the page itself, which may fetch nothing. */
async function bytesAt(address: string): Promise<Uint8Array> {
  const inside = /^data:[^,]*;base64,/.exec(address)?.[0];
  if (inside !== undefined) return Uint8Array.from(atob(address.slice(inside.length)), (c) => c.charCodeAt(0));
  const answer = await fetch(address);
  if (!answer.ok) throw new Error(`the font of the papers did not come (${answer.status})`);
  return new Uint8Array(await answer.arrayBuffer());
}
