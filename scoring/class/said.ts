import type { Language } from '../words/language.ts';
import { upper } from '../words/names.ts';
import { wordsIn } from '../words/words.ts';
import type { Entry } from './entry.ts';

/** Why an attempt is kept and not counted, in a language. */
export function notCountedSaid({ notCounted }: Entry, language: Language): string[] {
  return notCounted.map((why) => partSaid(why, language));
}

/** What does not fit about an attempt that counts all the same, in a language. */
export function mismatchesSaid({ mismatches }: Entry, language: Language): string[] {
  return mismatches.map((what) => partSaid(what, language));
}

/** A part of such a list: a phrase, or a sentence of the verdict without its full stop and capital letter. */
function partSaid(english: string, language: Language): string {
  const { phrase } = wordsIn(language);
  const said = phrase(english);
  if (said !== english) return said;
  const sentence = `${upper(english)}.`;
  const whole = phrase(sentence);
  return whole === sentence ? english : whole.replace(/\.$/, '');
}
