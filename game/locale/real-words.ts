import { real as german } from './de/real.ts';
import { live } from './live.ts';
import { real as english } from './real.ts';

/** Words of the sheets on which a cut is measured by hand, in the language in use. */
export const real = live({ en: english, de: german });
