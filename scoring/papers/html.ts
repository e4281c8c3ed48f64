import { escapeText, type Svg } from '../draw/svg.ts';

declare const htmlBrand: unique symbol;
/** Markup of ours with every text in it cleaned and escaped. Made by `html` and `drawn` alone, and the only thing a page is put together from. */
export type Html = string & { readonly [htmlBrand]: true };

type Piece = Html | readonly Html[] | Text;
/** A text from anywhere, which is escaped, or a piece of markup, which is not. */
interface Text {
  text: string;
}

/** A text to be put into markup: shown letter for letter. */
export function txt(text: string): Text {
  return { text };
}

/** Markup as written in the source, its pieces put in: markup as it is, texts escaped. A bare string is refused by the compiler. */
export function html(markup: TemplateStringsArray, ...pieces: readonly Piece[]): Html {
  return markup.map((part, i) => part + (i < pieces.length ? set(pieces[i]!) : '')).join('') as Html;
}

function set(piece: Piece): string {
  if (typeof piece === 'string') return piece;
  return 'text' in piece ? escapeText(piece.text) : piece.join('');
}

/** A drawing, in which every text is escaped already. */
export function drawn(svg: Svg): Html {
  return svg as string as Html;
}

export const NOTHING: Html = html``;
