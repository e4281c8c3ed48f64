import { signal } from '@preact/signals-core';
import { type Language, languages } from '../../scoring/index.ts';

/** The language on screen. Whatever is drawn from words is drawn anew when it changes. */
export const language = signal<Language>('en');

/** Languages by their own names, as they stand in the list to choose from. */
export const languageNames: Record<Language, string> = { en: 'English', de: 'Deutsch' };

/** The first of the languages a browser asks for that there is; English where there is none of them. */
export function languageFor(asked: readonly string[]): Language {
  for (const tag of asked) {
    const found = languages.find((l) => tag.toLowerCase().split('-')[0] === l);
    if (found) return found;
  }
  return 'en';
}
