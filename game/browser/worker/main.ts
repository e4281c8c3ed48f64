/// <reference lib="webworker" />

import { languages, loadLanguage } from '../../../scoring/index.ts';
import type { BenchAnswer, BenchRequest } from '../../core/bench/protocol.ts';
import { serveBench } from '../../core/bench/serve.ts';
import { warmUp } from '../../core/bench/warm-up.ts';
import { doTask, type HandTask } from '../../core/desk/tasks.ts';
import { browserClock } from '../clock.ts';
import { HAND } from './names.ts';

// One program for both kinds of Worker: the engine is then fetched once, and stands once in the single file.
const scope = self as unknown as DedicatedWorkerGlobalScope;

/** What comes before the languages are here waits for them: every request may ask for one. */
const waiting: MessageEvent[] = [];
scope.onmessage = (event) => waiting.push(event);

const take =
  scope.name === HAND
    ? (event: MessageEvent<HandTask>) => scope.postMessage(doTask(event.data))
    : (
        (handle) => (event: MessageEvent<BenchRequest>) =>
          handle(event.data)
      )(openBench());

function openBench(): (request: BenchRequest) => void {
  warmUp();
  return serveBench(
    (message: BenchAnswer, transfer: Transferable[] = []) => scope.postMessage(message, transfer),
    browserClock,
  );
}

// One that cannot be fetched is said in English.
void Promise.allSettled(languages.map(loadLanguage)).then(() => {
  scope.onmessage = take;
  for (const event of waiting.splice(0)) take(event);
});
