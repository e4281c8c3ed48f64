import type { Language } from '../words/language.ts';
import { type ClassWords, classWords as english } from './class-words.ts';
import { classWords as german } from './de/class-words.ts';

const catalogues: Record<Language, ClassWords> = { en: english, de: german };

/** What the class sheet says, in a language. */
export function classWordsIn(language: Language): ClassWords {
  return catalogues[language];
}
