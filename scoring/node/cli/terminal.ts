export interface Terminal {
  out(text: string): void;
  err(text: string): void;
  /** Somebody looks at `err` as it is written: a line may be written over, to show how far the work is. */
  live?: boolean;
}

/** A name or sentence without control and direction characters, which could steer the terminal; line ends stay. */
export function plain(text: string): string {
  return text.replace(/(?!\n)[\p{Cc}\p{Bidi_Control}]/gu, (c) => `\\u${c.charCodeAt(0).toString(16).padStart(4, '0')}`);
}
