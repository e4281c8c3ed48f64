import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { initWasm, Resvg } from '@resvg/resvg-wasm';
import { fontBytes, PDF_FONT } from '../papers/pdf.ts';

let ready: Promise<void> | null = null;

/**
 * A drawing as a PNG picture.
 * @param scale pixels for each pixel of the drawing
 */
export async function pngOf(svg: string, scale = 2): Promise<Uint8Array> {
  ready ??= initWasm(readFileSync(createRequire(import.meta.url).resolve('@resvg/resvg-wasm/index_bg.wasm')));
  await ready;
  const drawing = new Resvg(svg, {
    fitTo: { mode: 'zoom', value: scale },
    font: { fontBuffers: [fontBytes()], defaultFontFamily: PDF_FONT, sansSerifFamily: PDF_FONT },
  });
  try {
    return drawing.render().asPng();
  } finally {
    drawing.free();
  }
}
