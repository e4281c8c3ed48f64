import { Worker } from 'node:worker_threads';

/** One job going to a worker, and what comes back. */
export interface Job<T> {
  id: number;
  task: T;
}
export type Done<R> = { id: number; result: R } | { id: number; error: string };

/**
 * Runs tasks on worker threads. Results are in the order of the tasks however many workers there are and whichever is done first.
 * @param worker module that answers each `Job` posted to it with a `Done`
 * @param data given to every worker as `workerData`
 * @param onDone called after each task with how many are done
 * @throws Error with the worker's message when a task fails
 */
export async function runPool<T, R>(
  worker: URL,
  data: unknown,
  tasks: readonly T[],
  workers: number,
  onDone: (done: number) => void = () => {},
): Promise<R[]> {
  const results = new Array<R>(tasks.length);
  let next = 0;
  let done = 0;
  const started = Array.from({ length: Math.max(1, Math.min(workers, tasks.length)) }, () => start(worker, data));
  const serve = (thread: Worker): Promise<void> =>
    new Promise((resolve, reject) => {
      const send = (): void => {
        if (next >= tasks.length) {
          resolve();
          return;
        }
        const id = next++;
        thread.postMessage({ id, task: tasks[id]! } satisfies Job<T>);
      };
      thread.on('message', (answer: Done<R>) => {
        if ('error' in answer) {
          reject(new Error(answer.error));
          return;
        }
        results[answer.id] = answer.result;
        onDone(++done);
        send();
      });
      thread.on('error', reject);
      send();
    });
  try {
    await Promise.all(started.map(serve));
    return results;
  } finally {
    await Promise.all(started.map((thread) => thread.terminate()));
  }
}

/** A thread has to be taught TypeScript before it can run a module from source. */
function start(worker: URL, data: unknown): Worker {
  if (!worker.pathname.endsWith('.ts')) return new Worker(worker, { workerData: data });
  const teach = `import('tsx/esm/api').then((loader) => { loader.register(); return import(${JSON.stringify(worker.href)}); });`;
  return new Worker(teach, { workerData: data, eval: true });
}

/** A module beside the caller, whether it runs built or from source. */
export function beside(caller: string, name: string): URL {
  return new URL(`./${name}${caller.endsWith('.ts') ? '.ts' : '.js'}`, caller);
}
