import type { Language } from './language.ts';

/** A catalogue in every language that has been loaded: English is always there, and stands in for one that is not. */
export class Spoken<Words> {
  private readonly others = new Map<Language, Words>();

  constructor(private readonly english: Words) {}

  in(language: Language): Words {
    return this.others.get(language) ?? this.english;
  }

  add(language: Language, words: Words): void {
    this.others.set(language, words);
  }
}
