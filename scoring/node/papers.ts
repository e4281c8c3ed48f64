import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { initWasm, Resvg } from '@resvg/resvg-wasm';
import type { ClassSheet } from '../class/sheet.ts';
import type { AttemptPaper } from '../papers/attempt-paper.ts';
import { attemptPdf as setAttempt } from '../papers/attempt-pdf.ts';
import { type ClassPaper, classPaper as layClass } from '../papers/class-paper.ts';
import { classPdf as setClass } from '../papers/class-pdf.ts';
import { type ExercisePrint, exercisePrintPdf as setPrint } from '../papers/exercise-prints.ts';
import { LETTERS_FILE } from '../papers/letters.ts';
import type { PaperFonts } from '../papers/paper-fonts.ts';
import { PDF_FONT } from '../papers/pdf.ts';
import type { Exercise } from '../schema/exercise.ts';
import type { Language } from '../words/language.ts';
import { readInFolder } from './folder.ts';

/** Papers with what they need from the disk: fonts, the drawing machine, recordings of a folder. */

const fromHere = createRequire(import.meta.url);
let fonts: PaperFonts | null = null;
let ready: Promise<void> | null = null;

/** The font that comes with pdfmake. */
function fontFiles(): PaperFonts {
  const file = (style: string): Uint8Array =>
    readFileSync(fromHere.resolve(`pdfmake/fonts/Roboto/Roboto-${style}.ttf`));
  fonts ??= {
    regular: file('Regular'),
    medium: file('Medium'),
    letters: async (writing) => readFileSync(fromHere.resolve(LETTERS_FILE[writing])),
  };
  return fonts;
}

/** The report of one attempt as a PDF, one sheet of A4. Same recording, same bytes. */
export function attemptPdf(paper: AttemptPaper): Promise<Uint8Array> {
  return setAttempt(paper, fontFiles());
}

/** The class report as a PDF on A4. Same scores, same bytes. */
export function classPdf(paper: ClassPaper): Promise<Uint8Array> {
  return setClass(paper, fontFiles());
}

/** One of an exercise's papers as a PDF on A4. Same exercise, same bytes. @param inches stand beside millimetres */
export function exercisePrintPdf(
  exercise: Exercise,
  what: ExercisePrint,
  language: Language = 'en',
  inches = false,
): Promise<Uint8Array> {
  return setPrint(exercise, what, fontFiles(), language, inches);
}

/**
 * The class report. The three to see first are welded again to draw their cuts.
 * @param folder where the recordings lie
 */
export function classPaper(sheet: ClassSheet, folder: string): ClassPaper {
  return layClass(sheet, (file) => readInFolder(folder, file));
}

/**
 * A drawing as a PNG picture.
 * @param scale pixels for each pixel of the drawing
 */
export async function pngOf(svg: string, scale = 2): Promise<Uint8Array> {
  ready ??= initWasm(readFileSync(fromHere.resolve('@resvg/resvg-wasm/index_bg.wasm')));
  await ready;
  const drawing = new Resvg(svg, {
    fitTo: { mode: 'zoom', value: scale },
    font: { fontBuffers: [fontFiles().regular], defaultFontFamily: PDF_FONT, sansSerifFamily: PDF_FONT },
  });
  try {
    return drawing.render().asPng();
  } finally {
    drawing.free();
  }
}
