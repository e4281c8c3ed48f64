import { parentPort, workerData } from 'node:worker_threads';
import { pointsOf, type RangePlan } from '../../range/plan.ts';
import { type RangeResult, weldPoint } from '../../range/weld-point.ts';
import type { Done, Numbered } from '../pool.ts';

/** Welds combinations of one plan, by their index. */
const plan = workerData as RangePlan;
const points = pointsOf(plan);

parentPort?.on('message', ({ id, task }: Numbered<number>) => {
  let answer: Done<RangeResult>;
  try {
    answer = { id, result: weldPoint(plan, points[task]!) };
  } catch (cause) {
    answer = { id, error: cause instanceof Error ? cause.message : String(cause) };
  }
  parentPort?.postMessage(answer);
});
