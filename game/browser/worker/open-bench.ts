import type { BenchAnswer } from '../../core/bench/protocol.ts';
import type { OpenBench } from '../../core/ports.ts';
import { spawnBench } from './spawn.ts';

/** A bench in a Worker of its own. */
export const openBench: OpenBench = (hear, broken) => {
  const worker = spawnBench();
  worker.onmessage = (event: MessageEvent<BenchAnswer>) => hear(event.data);
  worker.onerror = (event) => broken(event.message);
  return {
    ask: (request, transfer = []) => worker.postMessage(request, transfer),
    close: () => worker.terminate(),
  };
};
