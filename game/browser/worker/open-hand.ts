import type { HandAnswer } from '../../core/desk/tasks.ts';
import type { OpenHand } from '../../core/ports.ts';
import { spawnHand } from './spawn.ts';

/** A helping hand in a Worker of its own. */
export const openHand: OpenHand = (hear, broken) => {
  const worker = spawnHand();
  worker.onmessage = (event: MessageEvent<HandAnswer>) => hear(event.data);
  worker.onerror = (event) => broken(event.message);
  return {
    ask: (task, transfer = []) => worker.postMessage(task, transfer),
    close: () => worker.terminate(),
  };
};

/** One core stays with the page, for whoever looks on; on small machines there is still one hand. */
export const hands = Math.min(8, Math.max(1, (navigator.hardwareConcurrency || 2) - 1));
