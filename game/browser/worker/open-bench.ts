import type { BenchAnswer, BenchRequest } from '../../core/bench/protocol.ts';
import { spawnBench } from './spawn.ts';

/** The page's end of one bench Worker. */
export class BenchClient {
  private readonly worker = spawnBench();

  /** @param failed called when the Worker itself breaks (it could not be loaded, or ran out of memory) */
  constructor(hear: (answer: BenchAnswer) => void, failed: (message: string) => void) {
    this.worker.onmessage = (event: MessageEvent<BenchAnswer>) => hear(event.data);
    this.worker.onerror = (event) => failed(event.message);
  }

  ask(request: BenchRequest, transfer: Transferable[] = []): void {
    this.worker.postMessage(request, transfer);
  }

  close(): void {
    this.worker.terminate();
  }
}
