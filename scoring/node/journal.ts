import { appendFileSync, readFileSync, statSync } from 'node:fs';
import { hmac } from '@noble/hashes/hmac.js';
import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js';
import { z } from 'zod';
import { ENGINE_VERSION } from '../../engine/index.ts';
import { judgeDigest, keptScoreSchema } from '../class/score-key.ts';
import type { Judge, Scored } from '../class/scored.ts';
import { digest } from '../exercises/digest.ts';
import { SCORING_VERSION } from '../version.ts';
import { whyNot, writeText } from './files.ts';

/** Name of the journal kept in a scored folder. */
export const JOURNAL_NAME = '.toehold-scored.jsonl';

/** Largest journal read back, bytes; a larger one is passed over and everything is scored again. */
const MOST_JOURNAL = 200_000_000;

/** A finished score with what made it. */
const rowSchema = z.strictObject({
  judge: z.string(),
  engine: z.string(),
  scoring: z.string(),
  scored: keptScoreSchema,
});
type Row = z.infer<typeof rowSchema>;

/**
 * Seal over a row as written: keyed by the secret of the folder's owner where there is one, so that nobody else can make it; a plain digest
 * otherwise, which tells an accident and no forger.
 */
function sealOf(row: string, secret: Uint8Array | null): string {
  return secret === null
    ? `sha256:${digest(row)}`
    : `hmac-sha256:${bytesToHex(hmac(sha256, secret, utf8ToBytes(row)))}`;
}

/** Why a row is not taken over although it is about the very bytes. */
const NOT_TAKEN = {
  seal: 'its row in the journal does not bear its seal',
  keyless: 'its row in the journal is sealed without this secret',
  keyed: 'its row in the journal is sealed with a secret that was not given',
  shape: 'its row in the journal is not one that scoring writes',
  two: 'the journal has two different scores of it',
} as const;

export interface JournalOptions {
  /** Null: nothing is kept. */
  path: string | null;
  judge: Judge;
  /** Begin an empty journal. */
  fresh: boolean;
  /** Key of the rows' seals; null: rows bear a plain digest. */
  secret: Uint8Array | null;
}

/**
 * Scores already made, one JSON line each, added as each file is done, so that an interrupted run goes on where it stopped. A row stands for
 * a file's content, judge, engine and scoring together; one that bears no seal of its own is not believed.
 */
export class Journal {
  readonly #path: string | null;
  readonly #judge: string;
  readonly #secret: Uint8Array | null;
  readonly #known = new Map<string, Row['scored']>();
  readonly #notTaken = new Map<string, string>();
  #spoilt = 0;
  #fault: string | null = null;

  constructor({ path, judge, fresh, secret }: JournalOptions) {
    this.#path = path;
    this.#judge = judgeDigest(judge);
    this.#secret = secret;
    if (path === null) return;
    try {
      if (fresh) writeText(path, '');
      else this.#read(path);
    } catch (cause) {
      this.#fault = whyNot(cause);
    }
  }

  /** Why nothing more is kept; null while all is well. */
  get fault(): string | null {
    return this.#fault;
  }

  /** Lines that are no row at all, the one an interruption cut off left out. */
  get spoilt(): number {
    return this.#spoilt;
  }

  /** The finished score of a file's content. */
  find(file: string, sha256: string): Scored | undefined {
    const scored = this.#known.get(sha256);
    return scored === undefined ? undefined : { file, ...scored };
  }

  /** Why the journal's row about this content is not believed; null where there is none, or only ones of another judge. */
  whyAgain(sha256: string): string | null {
    return this.#known.has(sha256) ? null : (this.#notTaken.get(sha256) ?? null);
  }

  add({ file: _file, ...scored }: Scored): void {
    if (this.#path === null || this.#fault !== null) return;
    const row: Row = { judge: this.#judge, engine: ENGINE_VERSION, scoring: SCORING_VERSION, scored };
    try {
      const text = JSON.stringify(row);
      appendFileSync(this.#path, `{"seal":"${sealOf(text, this.#secret)}","row":${text}}\n`);
    } catch (cause) {
      this.#fault = whyNot(cause);
    }
  }

  #read(path: string): void {
    const stat = statSync(path, { throwIfNoEntry: false });
    if (stat === undefined) return;
    if (!stat.isFile()) {
      this.#fault = 'something that is not a file';
      return;
    }
    if (stat.size > MOST_JOURNAL) return;
    const text = readFileSync(path, 'utf8');
    const lines = text.split('\n');
    const cutOff = lines.pop()!;
    for (const line of lines) if (line !== '' && !this.#take(line)) this.#spoilt++;
    // A line cut off by an interruption must not swallow the next one.
    if (cutOff !== '') appendFileSync(path, '\n');
  }

  /** @returns whether the line is a row of whatever standing */
  #take(line: string): boolean {
    let entry: { seal?: unknown; row?: { scored?: { sha256?: unknown } } | null } | null;
    try {
      entry = JSON.parse(line);
    } catch {
      return false;
    }
    const row = entry?.row;
    const of = row?.scored?.sha256;
    if (typeof of !== 'string') return false;
    const seal = String(entry?.seal);
    if (seal !== sealOf(JSON.stringify(row), this.#secret)) {
      const keyed = seal.startsWith('hmac-');
      const why = keyed === (this.#secret !== null) ? 'seal' : keyed ? 'keyed' : 'keyless';
      this.#notTaken.set(of, NOT_TAKEN[why]);
      return true;
    }
    const parsed = rowSchema.safeParse(row);
    if (!parsed.success) this.#notTaken.set(of, NOT_TAKEN.shape);
    else this.#keep(parsed.data);
    return true;
  }

  #keep({ judge, engine, scoring, scored }: Row): void {
    const of = scored.sha256;
    if (judge !== this.#judge) return;
    if (engine !== ENGINE_VERSION || scoring !== SCORING_VERSION) {
      this.#notTaken.set(of, `its row in the journal is of engine ${engine} and scoring ${scoring}`);
      return;
    }
    const before = this.#known.get(of);
    if (before === undefined && this.#notTaken.get(of) !== NOT_TAKEN.two) this.#known.set(of, scored);
    // Scoring has one answer: of two that differ one is made up, and which cannot be told.
    else if (before !== undefined && JSON.stringify(before) !== JSON.stringify(scored)) {
      this.#known.delete(of);
      this.#notTaken.set(of, NOT_TAKEN.two);
    }
  }
}
