import {
  type Change,
  type FileKind,
  InputError,
  type Problem as InputProblem,
  type MuchWork,
} from '../../../scoring/index.ts';
import type { ChosenFile } from '../chosen-file.ts';

/** What went wrong, as data; the catalogue of words says it. */
export type Problem =
  | { code: 'input'; error: InputError }
  | { code: 'file-too-large'; file: string; bytes: number; most_bytes: number }
  /** An attempt that would take long to weld again. Nothing is begun until somebody who knows that says so. `file`: null of a kept one. */
  | { code: 'much-work'; file: string | null; work: MuchWork; most_s: number; goOn: () => void }
  | { code: 'picture'; picture: PictureProblem }
  /** A file that is whole, but of a kind that is not opened here. */
  | { code: 'other-kind'; file: string; kind: FileKind; source: ChosenFile }
  /** The address the page was opened by carries an exercise that cannot be read. */
  | { code: 'spoilt-link' }
  /** The browser would not keep the attempt. */
  | { code: 'not-kept' }
  /** The disk, or the browser's share of it, is full. */
  | { code: 'storage-full' }
  /** The browser keeps nothing at all. */
  | { code: 'no-store' }
  | { code: 'coupon-not-kept' }
  /** What was to be tried leaves what hand or machine can do. */
  | { code: 'no-such-change'; change: Change }
  /** Records that were spoilt, left out of a saved logbook. */
  | { code: 'logbook-left-out'; count: number }
  /** The bench at work has fallen silent. `kept_s`: how much of the attempt is kept; null: it was not being welded by hand. */
  | { code: 'bench-silent'; kept_s: number | null }
  /** The bench answered that it could not do what it was asked. */
  | { code: 'bench-refused'; message: string }
  /** The bench itself broke. */
  | { code: 'bench-broken'; message: string }
  | { code: 'no-webgl' }
  | { code: 'unexpected'; message: string };

/** A picture that cannot be used though its first bytes are those of one. */
export class PictureProblem extends Error {
  override readonly name = 'PictureProblem';
  constructor(
    readonly file: string,
    readonly why: 'cut-off' | 'cannot-be-shown',
  ) {
    super(`${file}: ${why}`);
  }
}

/** A file larger than is taken in. */
export class FileTooLarge extends Error {
  override readonly name = 'FileTooLarge';
  constructor(
    readonly file: string,
    readonly bytes: number,
    readonly most_bytes: number,
  ) {
    super(`${file}: ${bytes} bytes, at most ${most_bytes}`);
  }
}

export function problemOf(error: unknown): Problem {
  if (error instanceof InputError) return { code: 'input', error };
  if (error instanceof PictureProblem) return { code: 'picture', picture: error };
  if (error instanceof FileTooLarge)
    return { code: 'file-too-large', file: error.file, bytes: error.bytes, most_bytes: error.most_bytes };
  return { code: 'unexpected', message: messageOf(error) };
}

/** Why a store would not take something. */
export function problemOfStore(error: unknown): Problem {
  const full = error instanceof Error && error.name === 'QuotaExceededError';
  return { code: full ? 'storage-full' : 'not-kept' };
}

export function messageOf(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}

/** Marks that make no fillet: what was found, and what would be right. */
export type Refusal = Pick<InputProblem, 'found' | 'allowed'>;
