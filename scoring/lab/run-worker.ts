import { hostname } from 'node:os';
import type { Logger } from 'pino';
import { InputError } from '../index.ts';
import { AttemptFiles } from './attempt-files.ts';
import { digestOf } from './digests.ts';
import { realDisk } from './disk.ts';
import { VERSIONS } from './judge.ts';
import { POST_AT_ONCE } from './lab.ts';
import { openQueue } from './queue.ts';
import { openScorer } from './scorer.ts';
import { Scores } from './scores.ts';
import { type Environment, recordStore } from './settings.ts';
import { Statements } from './statements.ts';
import { openStore } from './store.ts';
import { Worker } from './worker.ts';

/** `npm run lab -- worker`: until stopped, then the jobs begun are finished. @throws InputError without a DATABASE_URL */
export async function runWorker(
  o: { data: string; threads: number; env: Environment; log: Logger },
  untilStopped: () => Promise<void>,
): Promise<void> {
  const { env, log } = o;
  if (env.DATABASE_URL === undefined) {
    throw new InputError('DATABASE_URL', [
      {
        path: '',
        found: 'nothing',
        allowed: 'the PostgreSQL of the lab; the embedded database takes one process only, which scores by itself',
      },
    ]);
  }
  const store = await openStore({ url: env.DATABASE_URL });
  const queue = await openQueue(store, VERSIONS, (e) => log.error(e, 'queue'));
  const scorer = openScorer(Math.max(1, o.threads), env.LAB_SLOWEST_S);
  const files = new AttemptFiles(o.data, realDisk);
  const records = recordStore(env);
  const told = records === null ? null : new Statements(store.db, records, VERSIONS);
  if (told !== null)
    await queue.post(
      (id) => told.send(id),
      () => told.waiting(POST_AT_ONCE),
    );
  const worker = new Worker({
    name: `${hostname()}:${process.pid}`,
    queue,
    scores: new Scores(store.db, VERSIONS, told),
    scorer,
    readAttempt: async (digest) => (await files.readAttempt(digest)) ?? fetchAttempt(digest, env),
    ears: {
      scored: (job, took_ms, written) =>
        log.info({ attempt: job.attempt.slice(0, 12), took_ms: Math.round(took_ms), written }, 'scored'),
      fault: (job, why) => log.error({ attempt: job?.attempt.slice(0, 12), why }, 'scoring broke off'),
    },
  });
  worker.start();
  log.info({ threads: scorer.threads, ...VERSIONS }, 'worker started');
  await untilStopped();
  log.info('stopping');
  await worker.stop();
  await scorer.stop();
  await queue.stop();
  await store.close();
}

/** From the service over the network, where its folder is on another machine. What arrives must have the digest asked for. */
async function fetchAttempt(digest: string, env: Environment): Promise<Uint8Array | null> {
  if (env.LAB_URL === undefined || env.LAB_WORKER_TOKEN === undefined) return null;
  const answer = await fetch(new URL(`/api/worker/attempts/${digest}`, env.LAB_URL), {
    headers: { authorization: `Bearer ${env.LAB_WORKER_TOKEN}` },
    signal: AbortSignal.timeout(30_000),
  });
  if (answer.status === 404) return null;
  if (!answer.ok) throw new Error(`the lab at ${env.LAB_URL} answered ${answer.status} when asked for an attempt`);
  const bytes = new Uint8Array(await answer.arrayBuffer());
  return digestOf(bytes) === digest ? bytes : null;
}
