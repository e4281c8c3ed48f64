import type { BenchAnswer, BenchRequest } from './bench/protocol.ts';
import type { StoredAttempt, StoredCoupon } from './session/shelf.ts';

/** Time, and waiting. The core has no other way to either. */
export interface Clock {
  /** Milliseconds since the epoch on a clock that never jumps; page and bench share it. */
  now_ms(): number;
  /** Milliseconds since the epoch by the calendar, for dates. */
  date_ms(): number;
  /** Runs something once, later. Returns a function that calls it off. */
  after(ms: number, run: () => void): () => void;
}

/** One end of a bench: what is asked here is answered through `hear`, in order. */
export interface BenchLine {
  ask(request: BenchRequest, transfer?: Transferable[]): void;
  close(): void;
}

/** @param broken told when the bench itself breaks (it could not be loaded, or ran out of memory) */
export type OpenBench = (hear: (answer: BenchAnswer) => void, broken: (message: string) => void) => BenchLine;

/** Attempts kept in this browser. Everything rejects where the browser will not store (private window, disk full). */
export interface AttemptStore {
  put(attempt: StoredAttempt): Promise<void>;
  get(id: string): Promise<StoredAttempt | undefined>;
  /** Newest first. */
  all(): Promise<StoredAttempt[]>;
  /** Takes an attempt away, with the coupons kept beside it. */
  remove(id: string): Promise<void>;
}

/** Real coupons kept beside attempts. Rejects like the attempts' store. */
export interface CouponStore {
  put(coupon: StoredCoupon): Promise<void>;
  /** Coupons of one attempt. */
  of(attempt: string): Promise<StoredCoupon[]>;
}

/** What the user has set for this browser. A store that keeps nothing is no error: settings then last as long as the page. */
export interface PreferenceStore {
  /** Whatever was kept, unchecked; null where nothing was. */
  load(): unknown;
  save(preferences: object): void;
}

/** A file the user has chosen or dropped. */
export interface ChosenFile {
  readonly name: string;
  readonly size: number;
  text(): Promise<string>;
}

/** A picture of a coupon, unpacked in this page only. */
export interface CouponPicture {
  name: string;
  blob: Blob;
  /** What an image element shows it by; `close` lets it go. */
  address: string;
  width_px: number;
  height_px: number;
}

export interface Files {
  /** Hands something to the user as a JSON file. */
  save(content: object, name: string): void;
  /**
   * Opens a picture without sending it anywhere.
   * @throws InputError or PictureProblem when it is no picture, too large or damaged
   */
  openPicture(blob: Blob, name: string): Promise<CouponPicture>;
  closePicture(picture: CouponPicture): void;
}

/** Everything the core needs of the machine it runs on; main.tsx hands in the browser's, tests their own. */
export interface Ports {
  clock: Clock;
  openBench: OpenBench;
  attempts: AttemptStore;
  coupons: CouponStore;
  preferences: PreferenceStore;
  files: Files;
  /** A name no other attempt has. */
  newId(): string;
}
