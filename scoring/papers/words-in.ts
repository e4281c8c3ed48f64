import type { Language } from '../words/language.ts';
import { Spoken } from '../words/spoken.ts';
import { type AttemptWords, attemptWords } from './attempt-words.ts';
import { type SheetWords, sheetWords } from './sheet-words.ts';

export const spokenOnPaper = new Spoken<{ attempt: AttemptWords; sheets: SheetWords }>({
  attempt: attemptWords,
  sheets: sheetWords,
});

/** The words of an attempt's report, in a language. */
export function attemptWordsIn(language: Language): AttemptWords {
  return spokenOnPaper.in(language).attempt;
}

/** The words of the sheets of an exercise, in a language. */
export function sheetWordsIn(language: Language): SheetWords {
  return spokenOnPaper.in(language).sheets;
}
