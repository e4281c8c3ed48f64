import { parentPort } from 'node:worker_threads';
import type { Done, Numbered } from '../../../scoring/node/pool.ts';
import { caseOf, type Task } from './figures.ts';
import { type Outcomes, readOutcomes } from './outcomes.ts';

parentPort?.on('message', ({ id, task }: Numbered<Task>) => {
  let answer: Done<Outcomes>;
  try {
    answer = { id, result: readOutcomes(caseOf(task)) };
  } catch (cause) {
    answer = { id, error: cause instanceof Error ? (cause.stack ?? cause.message) : String(cause) };
  }
  parentPort?.postMessage(answer);
});
