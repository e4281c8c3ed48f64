import { de } from './de/de.ts';
import { en } from './en.ts';
import { live } from './live.ts';

export { ready } from './live.ts';

/** The words in use, in the language in use. A language is a catalogue of the same type as the English one. */
export const words = live({ en, de });
