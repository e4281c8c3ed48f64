import { describe, expect, it } from 'vitest';
import { type Done, type Numbered, runPool, workThrough } from '../../../scoring/node/pool.ts';

const worker = new URL('./pool-worker.mjs', import.meta.url);
const tasks = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10];

describe('worker threads', () => {
  it.each([1, 3, 40])('give the same results in the order of the tasks with %i of them', async (threads) => {
    const seen: number[] = [];
    const results = await runPool<number, number>(worker, 2, tasks, threads, (done) => seen.push(done));
    expect(results).toEqual(tasks.map((n) => 2 * n));
    expect(seen).toEqual(tasks);
  });

  it('fail with the words of the task that failed, and begin no further ones', async () => {
    let done = 0;
    const run = runPool<number, number>(worker, 2, [1, 13, ...tasks], 1, (n) => {
      done = n;
    });
    await expect(run).rejects.toThrow('thirteen is refused');
    expect(done).toBe(1);
  });

  it('fail, and do not wait for ever, when a thread dies', async () => {
    await expect(runPool<number, number>(worker, 2, [1, 99, 2], 2)).rejects.toThrow('the worker thread ended');
  });

  it('name the job a thread died at and go on with another thread', async () => {
    const waiting = [1, 99, 2, 3].map((task, id): Numbered<number> => ({ id, task }));
    const answers: Done<number>[] = [];
    const broken: number[] = [];
    await workThrough<Numbered<number>, Done<number>>({
      worker,
      data: 2,
      threads: 1,
      next: () => waiting.shift() ?? null,
      answered: (_job, answer) => answers.push(answer),
      brokeOff: (job) => broken.push(job.task),
    });
    expect(broken).toEqual([99]);
    expect(answers).toEqual([0, 2, 3].map((id, n) => ({ id, result: 2 * (n + 1) })));
  });
});
