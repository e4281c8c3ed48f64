/// <reference lib="webworker" />
import type { BenchAnswer, BenchRequest } from '../../core/bench/protocol.ts';
import { serveBench } from '../../core/bench/serve.ts';
import { warmUp } from '../../core/bench/warm-up.ts';
import { doTask, type HandTask } from '../../core/desk/tasks.ts';
import { browserClock } from '../clock.ts';
import { HAND } from './names.ts';

// One program for both kinds of Worker: the engine is then fetched once, and stands once in the single file.
const scope = self as unknown as DedicatedWorkerGlobalScope;

if (scope.name === HAND) {
  scope.onmessage = (event: MessageEvent<HandTask>) => scope.postMessage(doTask(event.data));
} else {
  warmUp();
  const handle = serveBench(
    (message: BenchAnswer, transfer: Transferable[] = []) => scope.postMessage(message, transfer),
    browserClock,
  );
  scope.onmessage = (event: MessageEvent<BenchRequest>) => handle(event.data);
}
