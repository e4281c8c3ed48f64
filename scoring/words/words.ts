import { german } from './de/words.ts';
import { english, type ScoringWords } from './en.ts';
import type { Language } from './language.ts';

const catalogues: Record<Language, ScoringWords> = { en: english, de: german };

/** What scoring says, in a language. */
export function wordsIn(language: Language): ScoringWords {
  return catalogues[language];
}
