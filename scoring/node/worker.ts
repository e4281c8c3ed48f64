import { parentPort, workerData } from 'node:worker_threads';
import type { Judge } from '../class/scored.ts';
import { answerOf, type Job } from './job.ts';

// The judge comes once with the thread; then one file after another.
const judge = workerData as Judge;
parentPort?.on('message', (job: Job) => parentPort?.postMessage(answerOf(job, judge)));
