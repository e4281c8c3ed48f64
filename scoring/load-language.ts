import type { Language } from './words/language.ts';

/** Loads what scoring says in a language, so that a page fetches only the ones it speaks. Until then it says it in English. */
export async function loadLanguage(language: Language): Promise<void> {
  if (language === 'de') (await import('./german.ts')).speakGerman();
}
