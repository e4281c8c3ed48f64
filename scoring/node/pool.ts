import { Worker } from 'node:worker_threads';

/** Memory a worker may take; more, and the job it was at is named as the one that broke off. */
const LIMITS = { maxOldGenerationSizeMb: 2048 } as const;

/** Threads that do one kind of job. A worker answers every message, which is a job, with one message. */
export interface Crew<J, A> {
  /** Module of the worker; `beside` finds it built or in the sources. */
  worker: URL;
  /** Given once to every thread as `workerData`. */
  data: unknown;
  threads: number;
  /** The next job, or null when there are no more. */
  next: () => J | null;
  /** Called as each job is finished. */
  answered: (job: J, answer: A) => void;
  /** Called when a thread ended at a job instead of answering (out of memory, or it could not start). Another takes over. */
  brokeOff: (job: J, why: string) => void;
}

/** Works through all jobs, each thread at one at a time. Which thread takes which job is chance; what comes out is not. */
export async function workThrough<J, A>(crew: Crew<J, A>): Promise<void> {
  await Promise.all(Array.from({ length: crew.threads }, () => oneThread(crew)));
}

/** One task going to a worker of `runPool`, and what comes back. */
export interface Numbered<T> {
  id: number;
  task: T;
}
export type Done<R> = { id: number; result: R } | { id: number; error: string };

/**
 * Runs tasks on worker threads. Results are in the order of the tasks however many threads there are and whichever is done first.
 * @param worker module that answers each `Numbered` task with a `Done`
 * @param data given to every worker as `workerData`
 * @param onDone called after each task with how many are done
 * @throws Error with the worker's message when a task fails; tasks not begun are left
 */
export async function runPool<T, R>(
  worker: URL,
  data: unknown,
  tasks: readonly T[],
  threads: number,
  onDone: (done: number) => void = () => {},
): Promise<R[]> {
  const results = new Array<R>(tasks.length);
  let begun = 0;
  let done = 0;
  const faults: string[] = [];
  await workThrough<Numbered<T>, Done<R>>({
    worker,
    data,
    threads: Math.max(1, Math.min(threads, tasks.length)),
    next: () => {
      if (faults.length > 0 || begun >= tasks.length) return null;
      const id = begun++;
      return { id, task: tasks[id]! };
    },
    answered: ({ id }, answer) => {
      if ('error' in answer) faults.push(answer.error);
      else {
        results[id] = answer.result;
        onDone(++done);
      }
    },
    brokeOff: (_job, why) => faults.push(why),
  });
  if (faults.length > 0) throw new Error(faults[0]);
  return results;
}

/** A module beside the caller, whether it runs built or from source. */
export function beside(caller: string, name: string): URL {
  return new URL(`./${name}${caller.endsWith('.ts') ? '.ts' : '.js'}`, caller);
}

async function oneThread<J, A>(crew: Crew<J, A>): Promise<void> {
  let thread: Worker | null = null;
  try {
    for (let job = crew.next(); job !== null; job = crew.next()) {
      thread ??= start(crew.worker, crew.data);
      const said = await ask<A>(thread, job);
      if (said.ended) {
        thread = null;
        crew.brokeOff(job, said.why);
      } else crew.answered(job, said.answer);
    }
  } finally {
    await thread?.terminate();
  }
}

/** From the built library a worker is JavaScript; from the sources it is TypeScript, which a thread has to be taught first. */
function start(worker: URL, data: unknown): Worker {
  const fromSource = worker.pathname.endsWith('.ts');
  const teach = `import('tsx/esm/api').then((loader) => { loader.register(); return import(${JSON.stringify(worker.href)}); });`;
  const thread = new Worker(fromSource ? teach : worker, {
    workerData: data,
    resourceLimits: LIMITS,
    eval: fromSource,
  });
  // An error without a listener would end the whole program; what is asked next hears of it through `exit`.
  thread.on('error', () => undefined);
  return thread;
}

function ask<A>(thread: Worker, job: unknown): Promise<{ ended: false; answer: A } | { ended: true; why: string }> {
  return new Promise((resolve) => {
    let why = 'the worker thread ended';
    const answered = (answer: A): void => settle(() => resolve({ ended: false, answer }));
    const failed = (error: Error): void => {
      why = error.message;
    };
    const gone = (): void => settle(() => resolve({ ended: true, why }));
    const settle = (resolved: () => void): void => {
      thread.off('message', answered);
      thread.off('error', failed);
      thread.off('exit', gone);
      resolved();
    };
    thread.on('message', answered);
    thread.on('error', failed);
    thread.on('exit', gone);
    thread.postMessage(job);
  });
}
