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

/** Statements that wait are sent every so many seconds, so many at once; one the store does not take is tried again so often, then at the next look. */
const POST_S = 2;
const POST_BATCH = 50;
const POST_RETRIES = 3;
/** How often the table is looked through for what has no job, s. */
const POST_LOOK_S = 30;

/** When nobody is at school, as cron says it. */
const NIGHTLY = '17 3 * * *';

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

/** The queue with what else the lab has done in the background. */
export interface LabQueue extends ScoreQueue {
  /** Sends statements as they come, each again and again with longer pauses until it has gone; `look` says which are left. */
  post(send: (id: string) => Promise<void>, look: () => Promise<string[]>): Promise<void>;
  /** Runs something every night, in one process of the lab. */
  nightly(name: string, run: () => Promise<void>, at?: string): Promise<void>;
}

/** pg-boss on the lab's own database. */
export async function openQueue(store: Store, versions: Versions, onError: (e: Error) => void): Promise<LabQueue> {
  const boss = new PgBoss({ db: store as PgBoss.Db, archiveCompletedAfterSeconds: 3600, deleteAfterDays: 2 });
  boss.on('error', onError);
  await boss.start();
  let posting: NodeJS.Timeout | undefined;
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
    post: async (send, look) => {
      const statements = 'statements';
      await boss.createQueue(statements, {
        name: statements,
        policy: 'short',
        retryLimit: POST_RETRIES,
        retryDelay: 2,
        retryBackoff: true,
        // A batch at a store that answers nothing takes its patience once: the first fault gives all of it back.
        expireInSeconds: EXPIRES_S,
        retentionDays: 30,
      });
      const queued = async (): Promise<void> => {
        const ids = await look();
        await boss.insert(ids.map((id) => ({ name: statements, data: { id }, singletonKey: id })));
      };
      await boss.work<{ id: string }>(
        statements,
        { pollingIntervalSeconds: POST_S, batchSize: POST_BATCH },
        async (jobs) => {
          for (const { data } of jobs) await send(data.id);
        },
      );
      // In the table they are safe; a job that was lost or given up is made again.
      posting = setInterval(() => void queued().catch(onError), POST_LOOK_S * 1000);
      posting.unref();
      await queued();
    },
    nightly: async (job, run, at = NIGHTLY) => {
      await boss.createQueue(job, { name: job, policy: 'singleton', retryLimit: RETRIES, expireInSeconds: EXPIRES_S });
      await boss.schedule(job, at);
      await boss.work(job, { pollingIntervalSeconds: 60 }, run);
    },
    stop: async () => {
      clearInterval(posting);
      await boss.stop({ graceful: false, close: false });
    },
  };
}

/** Whether a job that broke off now will be given up. */
export function isLastTry(job: TakenJob): boolean {
  return job.retries >= RETRIES;
}
