import { hostname } from 'node:os';
import type { Logger } from 'pino';
import { labApp } from './app.ts';
import { AttemptFiles } from './attempt-files.ts';
import { type Disk, realDisk } from './disk.ts';
import { type FolderLock, lockFolder } from './folder-lock.ts';
import { VERSIONS, type Versions } from './judge.ts';
import { newMetrics } from './metrics.ts';
import { openPapers } from './papers.ts';
import type { Parts, Settings } from './parts.ts';
import { openQueue } from './queue.ts';
import { rebuild } from './rebuild.ts';
import { eraseTooOld, tooOld } from './retention.ts';
import { openScorer, type Scorer } from './scorer.ts';
import { Scores } from './scores.ts';
import { Sessions } from './sessions.ts';
import { type RecordStore, Statements } from './statements.ts';
import { openStore, type Store, type StorePlace } from './store.ts';
import { Worker, whyOf } from './worker.ts';

/** How a lab is opened. */
export interface LabOptions {
  /** Where attempts, receipts and judges lie; the embedded database too. */
  folder: string;
  /** Address of a PostgreSQL server; null: the embedded database. */
  databaseUrl: string | null;
  /** Scoring threads of this process; 0: workers elsewhere do it all. */
  threads: number;
  slowest_s: number;
  settings: Settings;
  /** Told of every score; left out: nobody is. */
  recordStore?: RecordStore | null;
  log: Logger;
  versions?: Versions;
  disk?: Disk;
  /** When what is too old goes, as cron says it in UTC; left out: at night. */
  forgetsAt?: string;
}

/** Statements queued at once. */
export const POST_AT_ONCE = 200;

/** A lab at work, without a port. */
export interface Lab {
  app: ReturnType<typeof labApp>;
  parts: Parts;
  worker: Worker | null;
  stop(): Promise<void>;
}

/**
 * Opens folder, database, queue and scoring threads, puts back what the files know and the database does not, and queues what is not scored.
 * @throws InputError when another lab uses the folder
 */
export async function openLab(o: LabOptions): Promise<Lab> {
  const { log, versions = VERSIONS } = o;
  // On a server several services may share a folder: names are digests and files appear whole.
  const lock = o.databaseUrl === null ? lockFolder(o.folder) : null;
  const place: StorePlace = o.databaseUrl === null ? { folder: o.folder } : { url: o.databaseUrl };
  const store = await openStore(place).catch((cause) => {
    lock?.release();
    throw cause;
  });
  const files = new AttemptFiles(o.folder, o.disk ?? realDisk);
  const metrics = newMetrics();
  const queue = await openQueue(store, versions, (e) => log.error(e, 'queue'));
  const scorer = o.threads === 0 ? null : openScorer(o.threads, o.slowest_s);
  const told = o.recordStore ? new Statements(store.db, o.recordStore, versions) : null;
  const worker =
    scorer === null
      ? null
      : new Worker({
          name: `${hostname()}:${process.pid}`,
          queue,
          scores: new Scores(store.db, versions, told),
          scorer,
          readAttempt: (digest) => files.readAttempt(digest),
          ears: {
            scored: (job, took_ms, written) => {
              metrics.scored.inc({ written: written ? 'yes' : 'no' });
              metrics.scoring.observe(took_ms / 1000);
              log.info({ attempt: job.attempt.slice(0, 12), took_ms: Math.round(took_ms), written }, 'scored');
            },
            fault: (job, why) => {
              metrics.faults.inc();
              log.error({ attempt: job?.attempt.slice(0, 12), why }, 'scoring broke off');
            },
          },
        });
  const parts: Parts = {
    store,
    files,
    queue,
    sessions: new Sessions(store.db),
    versions,
    log,
    metrics,
    papers: openPapers(),
    settings: o.settings,
    queued: () => worker?.wake(),
  };
  if (lock !== null) await files.clearParts();
  const back = await rebuild(store.db, files);
  for (const { file, why } of back.spoilt) log.error({ file, why }, 'a spoilt file');
  if (back.restored > 0) log.warn({ restored: back.restored }, 'attempts that the database did not know');
  if (told !== null)
    await queue.post(
      (id) => told.send(id),
      () => told.waiting(POST_AT_ONCE),
    );
  const { keepDays } = o.settings;
  if (keepDays !== null) {
    await queue.nightly(
      'forget',
      async () => {
        const erased = await eraseTooOld(store.db, files, await tooOld(store.db, keepDays, new Date()));
        log.info({ ...erased, keepDays }, 'too old and erased');
      },
      o.forgetsAt,
    );
  }
  if (worker !== null) {
    // Jobs begun by a process that died stay with it until they expire; nobody should wait for that.
    if (store.kind === 'embedded') await worker.sweep(new Date(Date.now() + 86_400_000));
    worker.start();
  }
  return { app: labApp(parts), parts, worker, stop: () => stop({ worker, scorer, store, parts, lock, log }) };
}

async function stop(o: {
  worker: Worker | null;
  scorer: Scorer | null;
  store: Store;
  parts: Parts;
  lock: FolderLock | null;
  log: Logger;
}): Promise<void> {
  const steps: [string, () => Promise<unknown> | unknown][] = [
    ['worker', () => o.worker?.stop()],
    ['threads', () => o.scorer?.stop()],
    ['papers', () => o.parts.papers.stop()],
    ['queue', () => o.parts.queue.stop()],
    ['database', () => o.store.close()],
    ['folder', () => o.lock?.release()],
  ];
  for (const [what, step] of steps) {
    try {
      await step();
    } catch (cause) {
      o.log.error({ what, why: whyOf(cause) }, 'did not stop well');
    }
  }
}
