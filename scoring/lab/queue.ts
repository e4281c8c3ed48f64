import PgBoss from 'pg-boss';
import type { Versions } from './judge.ts';
import type { Store } from './store.ts';

/** One attempt to be scored by one judge. */
export interface ScoreJob {
  attempt: string;
  judge: string;
}

/** A job taken from the queue; `id` is the queue's. */
export interface TakenJob extends ScoreJob {
  id: string;
  /** How often it was taken before. */
  retries: number;
}

/** Times a job is taken again after a worker died or broke off at it. */
const RETRIES = 3;

/** Seconds after which a job whose worker fell silent is given to another; the slowest attempt allowed takes less. */
const EXPIRES_S = 900;

/** Jobs waiting to be scored by this version of engine and scoring. Workers of another version have a queue of their own. */
export interface ScoreQueue {
  /**
   * Adds jobs; one that is waiting already is not added again.
   * @param soon before everything that is not: somebody stands at the bench and waits for it
   */
  add(jobs: readonly ScoreJob[], soon: boolean): Promise<void>;
  take(most: number): Promise<TakenJob[]>;
  done(id: string): Promise<void>;
  /** Gives a job back; it is taken again, or given up after the last time. */
  broke(id: string, why: string): Promise<void>;
  waiting(): Promise<number>;
  stop(): Promise<void>;
}

/** pg-boss on the lab's own database. */
export async function openQueue(store: Store, versions: Versions, onError: (e: Error) => void): Promise<ScoreQueue> {
  const boss = new PgBoss({ db: store as PgBoss.Db, archiveCompletedAfterSeconds: 3600, deleteAfterDays: 2 });
  boss.on('error', onError);
  await boss.start();
  const name = `score-${versions.engine}-${versions.scoring}`.replaceAll(/[^\w-]/g, '_');
  await boss.createQueue(name, {
    name,
    policy: 'short',
    retryLimit: RETRIES,
    retryDelay: 1,
    retryBackoff: true,
    expireInSeconds: EXPIRES_S,
    retentionDays: 30,
  });
  return {
    add: (jobs, soon) =>
      boss.insert(
        jobs.map((data) => ({ name, data, singletonKey: `${data.attempt}:${data.judge}`, priority: soon ? 1 : 0 })),
      ),
    take: async (most) => {
      const jobs = await boss.fetch<ScoreJob>(name, { batchSize: most, includeMetadata: true });
      return jobs.map(({ id, data, retryCount }) => ({ id, ...data, retries: retryCount }));
    },
    done: (id) => boss.complete(name, id),
    broke: (id, why) => boss.fail(name, id, { why }),
    waiting: () => boss.getQueueSize(name),
    stop: () => boss.stop({ graceful: false, close: false }),
  };
}

/** Whether a job that broke off now will be given up. */
export function isLastTry(job: TakenJob): boolean {
  return job.retries >= RETRIES;
}
