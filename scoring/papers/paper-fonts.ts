/** The typeface's two files, in TrueType. Apart from what sets PDF, so that the package's types ask for nobody else's. */
export interface PaperFonts {
  regular: Uint8Array;
  medium: Uint8Array;
}
