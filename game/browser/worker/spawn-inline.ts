import MainWorker from './main.ts?worker&inline';
import { BENCH, HAND } from './names.ts';

/** Starts a Worker carried inside the page, for the single file opened without a server. */

export function spawnBench(): Worker {
  return new MainWorker({ name: BENCH });
}

export function spawnHand(): Worker {
  return new MainWorker({ name: HAND });
}
