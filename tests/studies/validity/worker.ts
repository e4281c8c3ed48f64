import { parentPort } from 'node:worker_threads';
import type { Done, Numbered } from '../../../scoring/node/pool.ts';
import { type Answer, type Task, work } from './jobs.ts';

parentPort?.on('message', ({ id, task }: Numbered<Task>) => {
  let answer: Done<Answer>;
  try {
    answer = { id, result: work(task) };
  } catch (cause) {
    answer = { id, error: cause instanceof Error ? (cause.stack ?? cause.message) : String(cause) };
  }
  parentPort?.postMessage(answer);
});
