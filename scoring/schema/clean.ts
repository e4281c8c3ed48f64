declare const cleanBrand: unique symbol;

/**
 * One line of text that steers nothing: no control character, no line end, no character that turns the direction of what follows or is not
 * seen. Made by `clean` alone, and the only text that terminal, table, page, drawing and PDF take.
 */
export type Clean = string & { readonly [cleanBrand]: true };

/**
 * Controls (C0, DEL, C1), line and paragraph separators, format characters such as bidi marks, tags and zero-width spaces, halves of a pair, and code
 * points that are no characters. Joiners stay, which scripts and emoji are written with; what is not seen by itself in other places (variation selectors)
 * changes a neighbour only.
 */
const STEERING = /[\p{Cc}\p{Zl}\p{Zp}\p{Cs}\p{Noncharacter_Code_Point}]|(?![\u200c\u200d])\p{Cf}/gu;

/** A text from anywhere as one clean line: what would steer is written out, `\u001b`. A clean text stays as it is. */
export function clean(text: string): Clean {
  return text.replace(STEERING, written) as Clean;
}

/** JSON in which everything that would steer a terminal is an escape; it reads back as the same value. @param indent spaces a level */
export function cleanJson(value: unknown, indent = 0): string {
  // Outside its strings JSON has line ends and spaces only, and those are ours.
  const text = JSON.stringify(value, null, indent) ?? 'null';
  return text.replace(STEERING, (c) => (c === '\n' ? c : units(c)));
}

/** Code units as JSON and JavaScript write them. */
function units(c: string): string {
  return Array.from({ length: c.length }, (_, i) => `\\u${c.charCodeAt(i).toString(16).padStart(4, '0')}`).join('');
}

function written(c: string): string {
  const code = c.codePointAt(0)!;
  return code > 0xffff ? `\\u{${code.toString(16)}}` : units(c);
}
