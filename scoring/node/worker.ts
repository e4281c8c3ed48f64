import { parentPort, workerData } from 'node:worker_threads';
import { answerFor, type Judge } from '../class/scored.ts';

// The judge comes once with the thread; then one file after another.
const judge = workerData as Judge;
parentPort?.on('message', ({ file, bytes }: Job) => parentPort?.postMessage(answerFor(bytes, file, judge)));

/** Work sent to a worker thread. */
export interface Job {
  file: string;
  bytes: Uint8Array;
}
