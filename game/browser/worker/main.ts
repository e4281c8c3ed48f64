/// <reference lib="webworker" />
import { ENGINE_VERSION } from '../../../engine/index.ts';
import { Bench } from '../../core/bench/bench.ts';
import type { BenchAnswer, BenchRequest } from '../../core/bench/protocol.ts';
import { warmUp } from '../../core/bench/warm-up.ts';

const scope = self as unknown as DedicatedWorkerGlobalScope;

const bench = new Bench((message: BenchAnswer, transfer: Transferable[] = []) => scope.postMessage(message, transfer));

scope.onmessage = (event: MessageEvent<BenchRequest>) => {
  const request = event.data;
  try {
    bench.handle(request);
  } catch (error) {
    const message = error instanceof Error ? error.message : String(error);
    const job = 'job' in request ? request.job : -1;
    scope.postMessage({ type: 'failed', job, doing: request.type, message } satisfies BenchAnswer);
  }
};

warmUp();
scope.postMessage({ type: 'ready', engine: ENGINE_VERSION } satisfies BenchAnswer);
