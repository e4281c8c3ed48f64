import type { Language } from '../words/language.ts';
import { type AttemptWords, attemptWords as english } from './attempt-words.ts';
import { attemptWords as german } from './de/attempt-words.ts';
import { sheetWords as germanSheets } from './de/sheet-words.ts';
import { sheetWords as englishSheets, type SheetWords } from './sheet-words.ts';

const catalogues: Record<Language, AttemptWords> = { en: english, de: german };

/** The words of an attempt's report, in a language. */
export function attemptWordsIn(language: Language): AttemptWords {
  return catalogues[language];
}

const sheets: Record<Language, SheetWords> = { en: englishSheets, de: germanSheets };

/** The words of the sheets of an exercise, in a language. */
export function sheetWordsIn(language: Language): SheetWords {
  return sheets[language];
}
