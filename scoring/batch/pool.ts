import { Worker } from 'node:worker_threads';
import type { Answer, Job } from './job.ts';
import type { Judge } from './scored.ts';

/** Memory a worker may take; more, and its file is named as the one that broke off. */
const LIMITS = { maxOldGenerationSizeMb: 2048 } as const;

/** From the built library the worker is JavaScript; from the sources it is TypeScript, which a thread has to be taught first. */
const FROM_SOURCE = import.meta.url.endsWith('.ts');
const WORKER = new URL(FROM_SOURCE ? './worker.ts' : './worker.js', import.meta.url);
const TEACH = `import('tsx/esm/api').then((loader) => { loader.register(); return import(${JSON.stringify(WORKER.href)}); });`;

/**
 * Worker threads, each at one file at a time. Which thread takes which file is chance; what comes out is not.
 * @param next the next job, or null when there are no more
 * @param done called as each is finished
 */
export async function workThrough(
  workers: number,
  judge: Judge,
  next: () => Job | null,
  done: (job: Job, answer: Answer) => void,
): Promise<void> {
  await Promise.all(Array.from({ length: workers }, () => oneThread(judge, next, done)));
}

async function oneThread(
  judge: Judge,
  next: () => Job | null,
  done: (job: Job, answer: Answer) => void,
): Promise<void> {
  let worker: Worker | null = null;
  try {
    for (let job = next(); job !== null; job = next()) {
      worker ??= start(judge);
      const answer = await ask(worker, job);
      if (answer.ended) worker = null;
      done(job, answer.answer);
    }
  } finally {
    await worker?.terminate();
  }
}

function start(judge: Judge): Worker {
  const worker = new Worker(FROM_SOURCE ? TEACH : WORKER, {
    workerData: judge,
    resourceLimits: LIMITS,
    eval: FROM_SOURCE,
  });
  // An error without a listener would end the whole program; what is asked next hears of it through `exit`.
  worker.on('error', () => undefined);
  return worker;
}

/** The worker's answer; `ended` when the thread is gone (out of memory, or it could not start) and another has to take over. */
function ask(worker: Worker, job: Job): Promise<{ answer: Answer; ended: boolean }> {
  return new Promise((resolve) => {
    let why = 'the worker thread ended';
    const answered = (answer: Answer): void => settle(answer, false);
    const failed = (error: Error): void => {
      why = error.message;
    };
    const gone = (): void => settle({ ok: false, reason: `${job.file}: scoring broke off (${why})` }, true);
    const settle = (answer: Answer, ended: boolean): void => {
      worker.off('message', answered);
      worker.off('error', failed);
      worker.off('exit', gone);
      resolve({ answer, ended });
    };
    worker.on('message', answered);
    worker.on('error', failed);
    worker.on('exit', gone);
    worker.postMessage(job);
  });
}
