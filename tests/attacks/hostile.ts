/** Texts that would steer what they are shown on, and files with one in every place that takes a free text. */
import { createRandom } from '../../engine/index.ts';

const ESC = '\u001b';
/** Whole attacks, each with a word that gives it away where it gets through. */
const WHOLE = [
  `${ESC}[2J${ESC}[HFORGED`,
  `${ESC}]0;FORGED\u0007`,
  `${ESC}]8;;http://forged.example${ESC}\\FORGED${ESC}]8;;${ESC}\\`,
  `${ESC}[1A${ESC}[2KFORGED`,
  `${ESC}c${ESC}[?1049h`,
  '\u009b2J\u009d0;FORGED\u009c',
  'name\r\nFORGED: within.',
  'name\nFORGED,within\n',
  'name\rFORGED',
  '\u2028FORGED\u2029',
  '\b\b\b\bFORGED\u007f',
  '\u202egnorw\u202c FORGED',
  '\u2067\u2066FORGED\u2069',
  '\u200eFORGED\u200f\u061c',
  '=HYPERLINK("http://forged.example","FORGED")',
  '+FORGED()',
  '-1+FORGED',
  '@FORGED',
  '\t=FORGED',
  ' =FORGED',
  '\uff1dFORGED',
  'a;=FORGED',
  'a","=FORGED","',
  "a';=FORGED;'",
  '"',
  "''",
  ',,,;;;',
  '<script>FORGED()</script>',
  '"><img src=x onerror=FORGED()>',
  "' onload='FORGED()",
  '</text></svg><script>FORGED()</script>',
  '</style><script>FORGED()</script>',
  ']]><!--FORGED-->',
  '&lt;script&gt;&#x46;ORGED',
  '<a href="javascript:FORGED()">FORGED</a>',
  '%s%n{{FORGED}}$`FORGED`',
  '\u0000FORGED\ufeff\ufffe\uffff',
  '\ud800FORGED\udc00',
  '\u05e9\u05dc\u05d5\u05dd \u0645\u0631\u062d\u0628\u0627',
  'Zo\u0308e \ud83d\udc69\ud83c\udffd\u200d\ud83c\udfed \u65e5\u672c\u8a9e',
  '\u{e0001}\u{e0046}FORGED',
  'o\u0335\u0321\u0322\u0327\u0328\u0317\u0318',
  '../../FORGED',
  '__proto__',
] as const;
const PIECES = [
  ...'=+-@\t\r\n"\',;|<>&/\\%\u0000\u0007\b\u001b[]\u0085\u009b\u200b\u200e\u202e\u2066\u2069\u2028\ufeff aZ0\u00e9\u05d0',
];

/** Hostile texts by number: the whole ones in turn, then ones made of their pieces. */
export function hostile(seed: number): string {
  if (seed < WHOLE.length) return WHOLE[seed]!;
  const random = createRandom(seed);
  const pick = <T>(from: readonly T[]): T => from[Math.min(from.length - 1, Math.floor(random.next() * from.length))]!;
  let text = '';
  for (let n = Math.floor(1 + 12 * random.next()); n > 0; n--) text += random.next() < 0.2 ? pick(WHOLE) : pick(PIECES);
  return text;
}

export const WHOLE_TEXTS = WHOLE.length;

/**
 * A value with a hostile text in every place that takes one: each string is exchanged in turn and stays so where the reader still takes it.
 * @param takes whether the whole still is what it was
 */
export function poisoned<T>(
  value: T,
  takes: (changed: unknown) => boolean,
  text: (place: number) => string,
): { value: T; places: number } {
  const copy = structuredClone(value);
  let places = 0;
  const visit = (at: Record<string, unknown> | unknown[]): void => {
    for (const [key, inner] of Object.entries(at)) {
      if (typeof inner === 'object' && inner !== null) {
        if (!Array.isArray(inner) || typeof inner[0] !== 'number') visit(inner as Record<string, unknown>);
        continue;
      }
      if (typeof inner !== 'string') continue;
      const set = (now: string): void => {
        (at as Record<string, unknown>)[key] = now;
      };
      set(text(places));
      if (takes(copy)) places++;
      else {
        set(text(places).slice(0, 30));
        if (takes(copy)) places++;
        else set(inner);
      }
    }
  };
  visit(copy as Record<string, unknown>);
  return { value: copy, places };
}
