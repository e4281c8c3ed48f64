import { type Language, loadLanguage } from '../../scoring/index.ts';
import { en, type Words } from './en.ts';
import { live } from './live.ts';

export { ready } from './live.ts';

/** A language is a catalogue of the same type as the English one, which stands in for one that has not been loaded. */
const catalogues: Record<Language, Words> = { en, de: en };

/** The words in use, in the language in use. */
export const words = live(catalogues);

/** Fetches a language: the page's words are made of what scoring says, so that comes first. Rejects where it cannot be fetched. */
export async function loadWords(language: Language): Promise<void> {
  await loadLanguage(language);
  if (language === 'de') catalogues.de = (await import('./de/de.ts')).de;
}
