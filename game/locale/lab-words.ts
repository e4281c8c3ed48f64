import { labWords as german } from './de/lab.ts';
import { labWords as english } from './lab.ts';
import { live } from './live.ts';

/** Words of a school's lab, in the language in use. */
export const labWords = live({ en: english, de: german });
