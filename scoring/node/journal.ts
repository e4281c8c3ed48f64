import { appendFileSync, readFileSync, statSync } from 'node:fs';
import { ENGINE_VERSION } from '../../engine/index.ts';
import { digest, type Judge, type Scored, scoredSchema } from '../class/scored.ts';
import { exercises } from '../exercises/ready.ts';
import { profiles } from '../profiles/ready.ts';
import { SCORING_VERSION } from '../version.ts';
import { whyNot, writeText } from './files.ts';

/** Name of the journal kept in a scored folder. */
export const JOURNAL_NAME = '.toehold-scored.jsonl';

/** Largest journal read back, bytes; a larger one is passed over and everything is scored again. */
const MOST_JOURNAL = 200_000_000;

/**
 * What was judged by, as a digest: engine, scoring, ready exercises and profiles, and those given on the command line. A score made by another
 * judge is not taken over.
 */
function judgeDigest(judge: Judge): string {
  return digest(JSON.stringify([ENGINE_VERSION, SCORING_VERSION, exercises, profiles, judge.exercise, judge.profile]));
}

/**
 * Scores already made, one JSON line each, added as each file is done, so that an interrupted run goes on where it stopped. Keyed by
 * file name, content and judge.
 */
export class Journal {
  readonly #path: string | null;
  readonly #judge: string;
  readonly #known = new Map<string, Scored>();
  #fault: string | null = null;

  /** @param path null: nothing is kept */
  constructor(path: string | null, judge: Judge, fresh: boolean) {
    this.#path = path;
    this.#judge = judgeDigest(judge);
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

  find(file: string, sha256: string): Scored | undefined {
    return this.#known.get(`${file}\n${sha256}`);
  }

  add(scored: Scored): void {
    if (this.#path === null || this.#fault !== null) return;
    try {
      appendFileSync(this.#path, `${JSON.stringify({ judge: this.#judge, scored })}\n`);
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
    for (const line of text.split('\n')) this.#take(line);
    // A line cut off by an interruption must not swallow the next one.
    if (text !== '' && !text.endsWith('\n')) appendFileSync(path, '\n');
  }

  /** Takes a line in if it is whole and by the same judge; a spoilt line only means that its file is scored again. */
  #take(line: string): void {
    if (!line.includes(this.#judge)) return;
    let entry: unknown;
    try {
      entry = JSON.parse(line);
    } catch {
      return;
    }
    const { judge, scored } = entry as { judge?: unknown; scored?: unknown };
    const parsed = scoredSchema.safeParse(scored);
    if (judge === this.#judge && parsed.success)
      this.#known.set(`${parsed.data.file}\n${parsed.data.sha256}`, parsed.data);
  }
}
