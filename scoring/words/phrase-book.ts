/**
 * A language's word for texts that were said in English where they were found out: in a file, a Worker, a kept score. A phrase may have holes:
 * `{1}` a part of its own, said by the same book where it is a phrase itself; `{#1}` a number; `{=1}` somebody's own text, left as it is.
 */
export type PhraseBook = (english: string) => string;

interface Entry {
  form: RegExp;
  /** Numbers of the holes in the order they stand in. */
  holes: { number: string; kind: string }[];
  said: string;
}

const HOLE = /\{([#=]?)(\d)\}/g;
const IN_FORM: Readonly<Record<string, string>> = {
  '': '(.+?)',
  '=': '(.+?)',
  '#': '(-?\\d+(?:\\.\\d+)?(?:e[+-]?\\d+)?)',
};

/**
 * A book of phrases.
 * @param table what each phrase is in the language; a hole is named there by its number alone
 * @param decimal what stands between units and tenths
 */
export function phraseBook(table: Readonly<Record<string, string>>, decimal: string): PhraseBook {
  const whole = new Map<string, string>();
  const entries: (Entry & { letters: number })[] = [];
  for (const [english, said] of Object.entries(table)) {
    const holes = [...english.matchAll(HOLE)].map(([, kind, number]) => ({ kind: kind!, number: number! }));
    if (holes.length === 0) {
      whole.set(english, said);
      continue;
    }
    const parts = english.split(/\{[#=]?\d\}/).map(escaped);
    const form = parts.map((part, i) => part + (holes[i] === undefined ? '' : IN_FORM[holes[i].kind]!)).join('');
    entries.push({ form: new RegExp(`^${form}$`, 's'), holes, said, letters: parts.join('').length });
  }
  // The phrase that says most by itself is meant; the emptier ones come last.
  entries.sort((a, b) => b.letters - a.letters);

  const say: PhraseBook = (english) => {
    const known = whole.get(english);
    if (known !== undefined) return known;
    if (isNumber(english)) return english.replace('.', decimal);
    for (const { form, holes, said } of entries) {
      const found = form.exec(english);
      if (found === null) continue;
      const parts = new Map(
        holes.map(({ kind, number }, i) => [number, kind === '=' ? found[i + 1]! : say(found[i + 1]!)]),
      );
      return said.replace(/\{(\d)\}/g, (_, number: string) => parts.get(number) ?? '');
    }
    return english;
  };
  return say;
}

function isNumber(text: string): boolean {
  return /^-?\d+(?:\.\d+)?$/.test(text);
}

function escaped(text: string): string {
  return text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');
}
