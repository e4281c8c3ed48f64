/**
 * Buffers of the surface's pictures that the bench has lent the page. It has so many and paints again when one is back, faster than the page draws: while
 * it welds a picture goes back when it has had its frame, otherwise at once.
 */
export class LentPictures {
  private readonly lent: ArrayBuffer[] = [];

  /**
   * @param isWelding whether frames are waited for
   * @param giveBack hands a buffer to the bench
   */
  constructor(
    private readonly isWelding: () => boolean,
    private readonly giveBack: (buffer: ArrayBuffer) => void,
  ) {}

  take(buffer: ArrayBuffer): void {
    this.lent.push(buffer);
    if (!this.isWelding()) this.return();
  }

  /** A frame has been drawn, or none is waited for any more. */
  return(): void {
    for (const buffer of this.lent.splice(0)) this.giveBack(buffer);
  }

  /** Their bench is gone; the next one has its own. */
  forget(): void {
    this.lent.length = 0;
  }
}
