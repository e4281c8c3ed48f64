/** A file the user has chosen or dropped. */
export interface ChosenFile {
  readonly name: string;
  readonly size: number;
  /** When it was last changed, ms since the epoch. */
  readonly lastModified: number;
  /** All of it. Rejects where it can no longer be read: taken away, or on a stick that was pulled out. */
  arrayBuffer(): Promise<ArrayBuffer>;
}
