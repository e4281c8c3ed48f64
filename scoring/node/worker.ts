import { parentPort, workerData } from 'node:worker_threads';
import { EngineError } from '../../engine/index.ts';
import { type Judge, type Scored, scoreBytes } from '../class/scored.ts';
import { clean } from '../schema/clean.ts';
import { InputError } from '../schema/problem.ts';

// The orders come once with the thread; then one file after another.
const orders = workerData as Orders;
parentPort?.on('message', (job: Job) => parentPort?.postMessage(answerOf(job, orders)));

/** How every file of a folder is scored. */
export interface Orders {
  judge: Judge;
  /** Most work one file may be, s of a core of today. */
  mostWork_s: number;
}

/** Work sent to a worker thread. */
export interface Job {
  file: string;
  bytes: Uint8Array;
}

export type Answer = { ok: true; scored: Scored } | { ok: false; reason: string };

/** Does a job; whatever goes wrong comes back as a sentence, so that the next file is scored all the same. */
export function answerOf(job: Job, { judge, mostWork_s }: Orders): Answer {
  try {
    return { ok: true, scored: scoreBytes(job.bytes, job.file, judge, mostWork_s) };
  } catch (error) {
    if (error instanceof InputError) return { ok: false, reason: error.message };
    if (error instanceof EngineError) return { ok: false, reason: clean(`${job.file}: ${error.message}`) };
    const why = error instanceof Error ? `${error.name}: ${error.message}` : String(error);
    return { ok: false, reason: clean(`${job.file}: scoring broke off (${why})`) };
  }
}
