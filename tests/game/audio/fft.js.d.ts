/** What of fft.js is used here; the package brings no types. */
declare module 'fft.js' {
  export default class FFT {
    /** @param size a power of two */
    constructor(size: number);
    /** Real and imaginary parts in turn. */
    createComplexArray(): number[];
    /** Fills the lower half of the spectrum of a real signal. */
    realTransform(spectrum: number[], signal: readonly number[]): void;
  }
}
