import type { AdviceCode } from '../schema/result.ts';
import type { Language } from '../words/language.ts';
import { Spoken } from '../words/spoken.ts';
import { type ClassWords, classWords } from './class-words.ts';
import { faultName } from './faults.ts';

export const spokenOfClass = new Spoken<{ sheet: ClassWords; fault: (code: AdviceCode) => string }>({
  sheet: classWords,
  fault: faultName,
});

/** What the class sheet says, in a language. */
export function classWordsIn(language: Language): ClassWords {
  return spokenOfClass.in(language).sheet;
}

/** A fault in an instructor's words, in a language. */
export function faultSaid(code: AdviceCode, language: Language): string {
  return spokenOfClass.in(language).fault(code);
}
