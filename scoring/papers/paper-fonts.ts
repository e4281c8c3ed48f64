/** The typeface's two files, in TrueType, and those of other writing. Apart from what sets PDF, so that the package's types ask for nobody else's. */
export interface PaperFonts {
  regular: Uint8Array;
  medium: Uint8Array;
  /** Fetches the typeface of other writing, in WOFF; asked only where a text needs it. */
  letters(writing: 'hebrew' | 'arabic'): Promise<Uint8Array>;
}
