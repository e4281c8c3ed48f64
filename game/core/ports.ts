import type { PaperFonts } from '../../scoring/index.ts';
import type { BenchAnswer, BenchRequest } from './bench/protocol.ts';
import type { ChosenFile } from './chosen-file.ts';
import type { HandAnswer, HandTask } from './desk/tasks.ts';
import type { PracticeRecord } from './practice/record.ts';
import type { AttemptEntry, StoredAttempt, StoredCoupon } from './session/shelf.ts';
import type { DraftChunk, DraftHead } from './session/unfinished.ts';

/** A moment of the calendar: ISO 8601 in UTC for files; day (2026-03-14) and time of day (1532) where the user is, for names. */
export interface WrittenDate {
  iso: string;
  day: string;
  minute: string;
}

/** Time, and waiting. The core has no other way to either. */
export interface Clock {
  /** Milliseconds since the epoch on a clock that never jumps; page and bench share it. */
  now_ms(): number;
  /** Milliseconds since the epoch by the calendar, for dates. */
  date_ms(): number;
  /** The same moment as people write it. */
  written(date_ms: number): WrittenDate;
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

/** A helping hand at the desk: does one task after another, away from the page. */
export interface HandLine {
  ask(task: HandTask, transfer?: Transferable[]): void;
  close(): void;
}

/** @param broken told when the hand itself breaks; what it was at is then not answered */
export type OpenHand = (hear: (answer: HandAnswer) => void, broken: (message: string) => void) => HandLine;

/** Addresses that carry something in their last part, which no server is ever sent. */
export interface Links {
  /** An address of this page that carries a text; null where it would be too long to be handed on. */
  to(text: string): Promise<string | null>;
  /** What the address this page was opened by carries, if anything; it is taken out of the address. @throws where it is spoilt */
  carried(): Promise<string | null>;
  /** Calls when another such address is opened in this page. */
  hear(opened: () => void): void;
}

/** What papers are printed by. */
export interface Papers {
  /** Prints a complete page of HTML by the browser's own dialog. */
  print(html: string): void;
  /** Asked for a paper when the user prints by the browser's own key or menu; null leaves the page as it stands. */
  onPrint(paper: () => string | null): void;
  /** The font that PDF is set in. */
  fonts(): Promise<PaperFonts>;
}

/**
 * What this browser keeps of attempts. It holds what it is given and judges nothing; what it hands out may be spoilt. Everything rejects
 * where the browser will not store: with a QuotaExceededError where the disk is full.
 */
export interface AttemptStore {
  /** Keeps an attempt with its entry for the list, and lets go of what was kept of it while it was welded: all of it or nothing. */
  put(attempt: StoredAttempt, entry: AttemptEntry): Promise<void>;
  /** Undefined where there is none. */
  get(id: string): Promise<unknown>;
  /** Ids of all attempts. */
  ids(): Promise<string[]>;
  entries(): Promise<unknown[]>;
  putEntry(entry: AttemptEntry): Promise<void>;
  /** Takes away everything under an id: attempt, entry, coupons, what was kept while it was welded. */
  remove(id: string): Promise<void>;
  /** Keeps a piece of an attempt under way, or, without a chunk, its head alone. */
  putChunk(head: DraftHead, chunk: DraftChunk | null): Promise<void>;
  /** Heads of attempts that have not ended. */
  drafts(): Promise<unknown[]>;
  draft(id: string): Promise<unknown>;
  chunks(id: string): Promise<unknown[]>;
}

/** What is practised beside attempts: own judgements, drills, tests after a while, faults named. Rejects like the attempts' store. */
export interface PracticeStore {
  put(record: PracticeRecord): Promise<void>;
  /** Whatever is kept, unchecked. */
  all(): Promise<unknown[]>;
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

/** Files of a folder, or several chosen together. */
export interface ChosenFiles {
  files: ChosenFile[];
  /** Subfolders, which are not looked into. */
  folders: string[];
  /** Folders that could no longer be read. */
  lost?: string[];
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

/** Finished scores of a class's files, so that a class scored once is not scored again. It holds what it is given and judges nothing. */
export interface ScoreStore {
  /** Undefined where there is none. */
  get(key: string): Promise<unknown>;
  put(key: string, score: object): Promise<void>;
  /** Lets go of all of them: they carry names. */
  clear(): Promise<void>;
}

export interface Files {
  /** Hands something to the user as a JSON file. */
  save(content: object, name: string): void;
  /** Hands something to the user as it is. */
  saveAs(content: string | Uint8Array, name: string, type: string): void;
  /**
   * Opens a picture without sending it anywhere.
   * @throws InputError or PictureProblem when it is no picture, too large or damaged
   */
  openPicture(blob: Blob, name: string): Promise<CouponPicture>;
  closePicture(picture: CouponPicture): void;
}

/** Other tabs on the same store. */
export interface Tabs {
  /** Says that the store has changed. */
  tell(): void;
  /** Another tab has said so. */
  hear(changed: () => void): void;
}

/** Whether the browser has promised not to clear the store when its disk runs short; null where it cannot be asked (plain http). */
export interface Persistence {
  granted(): Promise<boolean | null>;
  ask(): Promise<boolean | null>;
}

/** Everything the core needs of the machine it runs on; main.tsx hands in the browser's, tests their own. */
export interface Ports {
  clock: Clock;
  openBench: OpenBench;
  openHand: OpenHand;
  /** How many hands this machine has room for beside the page. */
  hands: number;
  papers: Papers;
  links: Links;
  attempts: AttemptStore;
  coupons: CouponStore;
  practice: PracticeStore;
  scores: ScoreStore;
  preferences: PreferenceStore;
  files: Files;
  tabs: Tabs;
  persistence: Persistence;
  /** A name no other attempt has. */
  newId(): string;
}
