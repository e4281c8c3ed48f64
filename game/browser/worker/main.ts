/// <reference lib="webworker" />
import type { BenchAnswer, BenchRequest } from '../../core/bench/protocol.ts';
import { serveBench } from '../../core/bench/serve.ts';
import { warmUp } from '../../core/bench/warm-up.ts';
import { browserClock } from '../clock.ts';

const scope = self as unknown as DedicatedWorkerGlobalScope;

warmUp();
const handle = serveBench(
  (message: BenchAnswer, transfer: Transferable[] = []) => scope.postMessage(message, transfer),
  browserClock,
);
scope.onmessage = (event: MessageEvent<BenchRequest>) => handle(event.data);
