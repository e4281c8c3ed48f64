import { english, type ScoringWords } from './en.ts';
import type { Language } from './language.ts';
import { Spoken } from './spoken.ts';

export const scoringWords = new Spoken<ScoringWords>(english);

/** What scoring says, in a language; in English until that language has been loaded (`loadLanguage`). */
export function wordsIn(language: Language): ScoringWords {
  return scoringWords.in(language);
}
