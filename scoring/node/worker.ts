import { parentPort, workerData } from 'node:worker_threads';
import { answerFor, type Judge } from '../class/scored.ts';

// The orders come once with the thread; then one file after another.
const orders = workerData as Orders;
parentPort?.on('message', ({ file, bytes }: Job) =>
  parentPort?.postMessage(answerFor(bytes, file, orders.judge, orders.mostWork_s)),
);

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
