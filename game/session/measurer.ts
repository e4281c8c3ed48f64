import type { Recording } from '../../engine/index.ts';
import type { Result } from '../../scoring/index.ts';
import { BenchClient } from '../worker/client.ts';
import type { BenchAnswer } from '../worker/protocol.ts';

export interface MeasurerHooks {
  progress(share: number): void;
  done(result: Result): void;
  failed(message: string): void;
}

/** Measures attempts in a Worker of its own, so that cutting and scrubbing stay quick meanwhile. */
export class Measurer {
  private client: BenchClient | null = null;
  private job = 0;

  constructor(private readonly hooks: MeasurerHooks) {}

  measure(recording: Recording): void {
    this.job += 1;
    this.client ??= new BenchClient(
      (answer) => this.hear(answer),
      (message) => this.hooks.failed(message),
    );
    this.client.ask({ type: 'score', job: this.job, recording });
  }

  /** Drops the answer to what is being measured. */
  forget(): void {
    this.job += 1;
  }

  private hear(answer: BenchAnswer): void {
    if (!('job' in answer) || answer.job !== this.job) return;
    if (answer.type === 'progress') this.hooks.progress(answer.share);
    if (answer.type === 'failed') this.hooks.failed(answer.message);
    if (answer.type === 'scored') this.hooks.done(answer.result);
  }
}
