import bidiFactory from 'bidi-js';
import type { Clean } from '../schema/clean.ts';

/** Writing for which a typeface of its own is fetched when a text needs it. */
export type Writing = 'hebrew' | 'arabic';

/** A piece of a line in one typeface, as PDF is set from it. `font` left out: that of the papers. */
export interface LetterRun {
  text: string;
  font?: Writing;
  /** No heavier letters are fetched. */
  bold?: false;
  /** So that its line stands as far from the next as one in the papers' typeface, though its letters reach higher. */
  lineHeight?: number;
}

type Ranges = readonly (readonly [number, number])[];

/** Code points as hexadecimal ranges. */
function ranges(text: string): Ranges {
  return text.split(' ').map((range) => {
    const [from, to = from] = range.split('-').map((c) => Number.parseInt(c, 16));
    return [from!, to!];
  });
}

/** What the typefaces have letters for: their own tables, held to them by tests/scoring/papers/letters.test.ts. */
const PAPERS = ranges(
  '20-7e a0-17f 18f 192 1a0-1a1 1af-1b0 1f0 1fa-1ff 218-21b 237 259 2bc 2c6-2c7 2c9 2d8-2dd 2f3 300-301 303 309 30f 323 384-38a 38c 38e-3a1 3a3-3ce 3d1-3d2 3d6 400-486 488-513 1e00-1e01 1e3e-1e3f 1e80-1e85 1e9e 1ea0-1ef9 1f4d 2000-200b 2010-2011 2013-2015 2017-201e 2020-2022 2025-2027 2030 2032-2033 2039-203a 203c 2044 2070 2074-208e 20a3-20a4 20a6-20ac 20b1 20b9-20ba 20bc-20bd 20c1 2105 2113 2116 2122 2126 212e 215b-215e 2202 2206 220f 2211-2212 221a 221e 222b 2248 2260 2264-2265 25a0 25ca-25cb 25cf',
);
const OTHERS: Record<Writing, Ranges> = {
  hebrew: ranges('591-5c7 5d0-5ea 5ef-5f4 20aa fb1d-fb36 fb38-fb3c fb3e fb40-fb41 fb43-fb44 fb46-fb4f'),
  arabic: ranges(
    '600-604 606-61b 61e-6a1 6a3-6e5 6e7-6ff 750-77f 8a0 8a2-8ac 8b3 8e4-8f3 8f5-8fe fb51 fb53-fb55 fb57-fb59 fb5b-fb5d fb5f-fb61 fb63-fb65 fb67-fb69 fb6b-fb6d fb6f-fb71 fb73-fb75 fb77-fb79 fb7b-fb7d fb7f-fb81 fb83 fb85 fb87 fb89 fb8b fb8d fb8f-fb91 fb93-fb95 fb97-fb99 fb9b-fb9d fb9f fba1 fba5 fba7-fba9 fbab-fbad fbaf fbb1-fbbb fbbd-fbbe fbc0-fbc1 fdf1-fdf2 fdf4 fdfa-fdfc fe70-fe74 fe76-fefc',
  ),
};
const WRITINGS = Object.keys(OTHERS) as Writing[];

/**
 * Where each typeface lies, as packages are named. That for Arabic has a glyph for every letter: one that composes letters of a stem and its
 * dots gives PDF glyphs that stand for no letter, and the text copied out of it is not what was written.
 */
export const LETTERS_FILE: Record<Writing, string> = {
  hebrew: '@fontsource/noto-sans-hebrew/files/noto-sans-hebrew-hebrew-400-normal.woff',
  arabic: '@fontsource/ibm-plex-sans-arabic/files/ibm-plex-sans-arabic-arabic-400-normal.woff',
};

/** Of each: line of the papers (1.172 em by 1.12) and what the letters reach higher than theirs, over its own line. */
const LINE: Record<Writing, number> = { hebrew: 1.07, arabic: 0.98 };

const has = (in_: Ranges, code: number): boolean => in_.some(([from, to]) => code >= from && code <= to);

/** Where a code point is found: in the papers' typeface, in another, or in none. */
export function typefaceOf(code: number): 'papers' | Writing | null {
  if (has(PAPERS, code)) return 'papers';
  return WRITINGS.find((writing) => has(OTHERS[writing], code)) ?? null;
}

const JOINER = /[\u200c\u200d]/;
/** Letters about it do not join (Unicode Standard, chapter 9.2). */
const NON_JOINER = '\u200c';
const NO_BREAK = '\u00a0';
const bidi = bidiFactory();

/**
 * Texts as they are set: left as they are where the papers' typeface has all their letters, else in pieces from left to right as they stand
 * on the line (UAX 9), each in one typeface. Letters that none has give way to a number in brackets, and are listed.
 */
export class Lettering {
  /** Typefaces needed besides the papers' own. */
  readonly needed = new Set<Writing>();
  private readonly numbers = new Map<string, number>();

  set(text: Clean): string | LetterRun[] {
    if ([...text].every((c) => has(PAPERS, c.codePointAt(0)!))) return text;
    // A letter and its marks may be one letter in the typeface.
    const known = this.numbered(text.normalize('NFC'));
    const runs = visual(known);
    for (const { font } of runs) if (font) this.needed.add(font);
    return runs.length === 1 && runs[0]!.font === undefined ? runs[0]!.text : runs;
  }

  /** What the numbers stand for, by code points; empty where there are none. */
  list(): string {
    return [...this.numbers]
      .map(([letters, n]) => `[${n}] ${[...letters].map((c) => `U+${code(c)}`).join(' ')}`)
      .join(', ');
  }

  private numbered(text: string): string {
    let out = '';
    let missing = '';
    const end = (): void => {
      if (missing === '') return;
      const n = this.numbers.get(missing) ?? this.numbers.size + 1;
      this.numbers.set(missing, n);
      out += `[${n}]`;
      missing = '';
    };
    for (const c of text) {
      const joiner = JOINER.test(c);
      // A joiner belongs to what it joins.
      if (joiner ? missing !== '' : typefaceOf(c.codePointAt(0)!) === null) missing += c;
      else {
        end();
        out += c;
      }
    }
    end();
    return out;
  }
}

function code(c: string): string {
  return c.codePointAt(0)!.toString(16).toUpperCase().padStart(4, '0');
}

/** A line's pieces from left to right. Within a piece of Hebrew or Arabic the order is that of reading: what sets it turns it round. */
function visual(text: string): LetterRun[] {
  const embedding = bidi.getEmbeddingLevels(text, 'ltr');
  const { levels } = embedding;
  const mirrored = bidi.getMirroredCharactersMap(text, levels);
  const runs: (LetterRun & { level: number })[] = [];
  let parted = false;
  for (let i = 0; i < text.length; ) {
    const c = String.fromCodePoint(text.codePointAt(i)!);
    // No typeface draws joiners. What one keeps apart are two pieces: each takes the forms of its own ends.
    if (JOINER.test(c)) {
      parted ||= c === NON_JOINER;
      i += c.length;
      continue;
    }
    const level = levels[i]!;
    const face = typefaceOf(c.codePointAt(0)!);
    const font = face === 'papers' || face === null ? undefined : face;
    // Inside what reads from the right a line is not broken: its order would be another.
    const shown = c === ' ' && level % 2 === 1 ? NO_BREAK : (mirrored.get(i) ?? c);
    const last = runs.at(-1);
    const turnedAlone = level % 2 === 1 && font === undefined;
    if (last && last.level === level && last.font === font && !turnedAlone && !parted) last.text += shown;
    else
      runs.push({
        text: shown,
        level,
        ...(font === undefined ? {} : { font, bold: false as const, lineHeight: LINE[font] }),
      });
    parted = false;
    i += c.length;
  }
  const highest = Math.max(0, ...runs.map((run) => run.level));
  for (let level = highest; level > 0; level--) turn(runs, (run) => run.level >= level);
  return joined(runs);
}

/** Turns every stretch of runs of a kind round. */
function turn<T>(runs: T[], is: (run: T) => boolean): void {
  for (let from = 0; from < runs.length; from++) {
    if (!is(runs[from]!)) continue;
    let to = from;
    while (to + 1 < runs.length && is(runs[to + 1]!)) to++;
    runs.splice(from, to - from + 1, ...runs.slice(from, to + 1).reverse());
    from = to;
  }
}

/** Neighbours in the papers' typeface made one. */
function joined(runs: readonly (LetterRun & { level: number })[]): LetterRun[] {
  const out: LetterRun[] = [];
  for (const { level: _level, ...run } of runs) {
    const last = out.at(-1);
    if (last && last.font === undefined && run.font === undefined) last.text += run.text;
    else out.push(run);
  }
  return out;
}
