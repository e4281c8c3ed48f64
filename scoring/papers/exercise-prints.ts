import type { Exercise } from '../schema/exercise.ts';
import type { Language } from '../words/language.ts';
import { boothHtml } from './booth-html.ts';
import { boothPaper } from './booth-paper.ts';
import { exerciseHtml } from './exercise-html.ts';
import { exercisePaper } from './exercise-paper.ts';
import { macroHtml } from './macro-html.ts';
import { macroPaper } from './macro-paper.ts';
import type { PaperFonts } from './paper-fonts.ts';
import { boothPdf, exercisePdf, macroPdf } from './pdf-later.ts';

/** What is printed of an exercise: its sheet, the sheet for macros of its coupons, the card for the booth. */
export const EXERCISE_PRINTS = ['sheet', 'macros', 'booth'] as const;
/** What is printed of an exercise. */
export type ExercisePrint = (typeof EXERCISE_PRINTS)[number];

/** One of its papers as an HTML document that prints on one sheet of A4. `inches` stand beside millimetres. @throws InputError when its profile is not there */
export function exercisePrintHtml(
  exercise: Exercise,
  what: ExercisePrint,
  language: Language = 'en',
  inches = false,
): string {
  switch (what) {
    case 'sheet':
      return exerciseHtml(exercisePaper(exercise, undefined, language, inches));
    case 'macros':
      return macroHtml(macroPaper(exercise, language, inches));
    case 'booth':
      return boothHtml(boothPaper(exercise, language, inches));
  }
}

/** One of its papers as a PDF on A4; same exercise, same bytes. @throws InputError when its profile is not there */
export async function exercisePrintPdf(
  exercise: Exercise,
  what: ExercisePrint,
  fonts: PaperFonts,
  language: Language = 'en',
  inches = false,
): Promise<Uint8Array> {
  switch (what) {
    case 'sheet':
      return exercisePdf(exercisePaper(exercise, undefined, language, inches), fonts);
    case 'macros':
      return macroPdf(macroPaper(exercise, language, inches), fonts);
    case 'booth':
      return boothPdf(boothPaper(exercise, language, inches), fonts);
  }
}
