import type { PhraseBook } from './phrase-book.ts';

/** A line of an `InputError` in parts: where, what was found, what is allowed. */
const LINE = /^(?:(.*?): )?found (.*), allowed: (.*)$/s;

/** How a language says a line of a refusal. */
export interface RefusalWords {
  place: (english: string) => string;
  line: (where: string, found: string, allowed: string) => string;
  book: PhraseBook;
}

/**
 * The message of an `InputError`, a line a problem, in a language. Lines that are no refusals are said by the book where it knows them and stay
 * as they are otherwise.
 */
export function refusalSaid(message: string, { place, line, book }: RefusalWords): string {
  return message
    .split('\n')
    .map((text) => {
      const found = LINE.exec(text);
      if (found === null) return book(text);
      const where = (found[1] ?? '').split(': ').map(place).join(': ');
      return line(where, book(found[2]!), book(found[3]!));
    })
    .join('\n');
}
