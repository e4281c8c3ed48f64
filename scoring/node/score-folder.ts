import { availableParallelism } from 'node:os';
import { join } from 'node:path';
import { MOST_WORK_S } from '../attempt/work.ts';
import { type Answer, type BadFile, byFile, type Judge, type OtherFile, type Scored } from '../class/scored.ts';
import { digest } from '../exercises/digest.ts';
import { clean } from '../schema/clean.ts';
import { InputError } from '../schema/problem.ts';
import { listFolder, readInFolder } from './folder.ts';
import { JOURNAL_NAME, Journal } from './journal.ts';
import { beside, workThrough } from './pool.ts';
import type { Job, Orders } from './worker.ts';

/** How a folder is scored. */
export interface FolderOptions {
  judge?: Judge;
  /** Worker threads, 1 to 64; left out: one for each core, no more than there are files. */
  workers?: number;
  /** File the finished scores are kept in; left out: a hidden file in the folder itself; null: none is kept. */
  journal?: string | null;
  /** Key of the seals in the journal, which only the folder's owner has; left out or null: a plain digest, which any writer can make. */
  secret?: Uint8Array | null;
  /** A file that would take longer to weld is named and left out, s of a core of today; left out: 300. Infinity: none is. */
  mostWork_s?: number;
  /** Score every file again, whatever the journal holds. */
  fresh?: boolean;
  /** Called after each file. */
  progress?: (p: Progress) => void;
}

/** How far it is, after each file. */
export interface Progress {
  done: number;
  total: number;
  /** Files taken from the journal. */
  known: number;
  /** File just finished. */
  file: string;
}

/** Everything a folder came to. */
export interface FolderScores {
  folder: string;
  /** Sorted by file name, at any worker count. */
  scored: Scored[];
  bad: BadFile[];
  /** Whole files of ours that are no attempts, left alone. */
  others: OtherFile[];
  /** Names of files that are no recordings by their ends, left alone. */
  passedOver: string[];
  /** Subfolders, which are not looked into. */
  folders: string[];
  /** How many scores came from the journal. */
  known: number;
  /** Files scored again although the journal has a row of them: what is wrong with the row. */
  again: { file: string; why: string }[];
  /** Lines of the journal that are no rows. */
  spoiltRows: number;
  /** Why finished scores could not be kept; null where they were. */
  journalFault: string | null;
}

const NO_JUDGE: Judge = { exercise: null, profile: null };
/** Most worker threads. */
export const MOST_WORKERS = 64;

/**
 * Scores every recording of a folder on worker threads. A bad file is named and the rest is scored.
 * @throws InputError when the folder itself cannot be read
 */
export async function scoreFolder(folder: string, options: FolderOptions = {}): Promise<FolderScores> {
  const { files, folders, passedOver } = listFolder(folder);
  const judge = options.judge ?? NO_JUDGE;
  const path = options.journal === undefined ? join(folder, JOURNAL_NAME) : options.journal;
  const journal = new Journal({ path, judge, fresh: options.fresh === true, secret: options.secret ?? null });
  const scored: Scored[] = [];
  const bad: BadFile[] = [];
  const others: OtherFile[] = [];
  const again: FolderScores['again'] = [];
  let known = 0;
  const tell = (file: string): void =>
    options.progress?.({ done: scored.length + bad.length + others.length, total: files.length, known, file });

  const waiting = [...files];
  /** The next file that has to be welded; those in the journal and those that cannot be read are settled on the way. */
  const next = (): Job | null => {
    for (let file = waiting.shift(); file !== undefined; file = waiting.shift()) {
      try {
        const bytes = readInFolder(folder, file);
        const sha256 = digest(bytes);
        const before = journal.find(file, sha256);
        if (before === undefined) {
          const why = journal.whyAgain(sha256);
          if (why !== null) again.push({ file, why });
          return { file, bytes };
        }
        scored.push(before);
        known++;
      } catch (error) {
        if (!(error instanceof InputError)) throw error;
        bad.push({ file, reason: error.message });
      }
      tell(file);
    }
    return null;
  };
  const workers = Math.min(options.workers ?? availableParallelism(), files.length, MOST_WORKERS);
  await workThrough<Job, Answer>({
    worker: beside(import.meta.url, 'worker'),
    data: { judge, mostWork_s: options.mostWork_s ?? MOST_WORK_S } satisfies Orders,
    threads: workers,
    next,
    answered: ({ file }, answer) => {
      if (answer.ok) {
        scored.push(answer.scored);
        journal.add(answer.scored);
      } else if (answer.kind === undefined) bad.push({ file, reason: answer.reason });
      else others.push({ file, kind: answer.kind });
      tell(file);
    },
    brokeOff: ({ file }, why) => {
      bad.push({ file, reason: clean(`${file}: scoring broke off (${why})`) });
      tell(file);
    },
  });
  scored.sort(byFile);
  bad.sort(byFile);
  others.sort(byFile);
  again.sort(byFile);
  return {
    folder,
    scored,
    bad,
    others,
    passedOver,
    folders,
    known,
    again,
    spoiltRows: journal.spoilt,
    journalFault: journal.fault,
  };
}
