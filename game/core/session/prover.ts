import { type AttemptRecording, canBeProved, type Result } from '../../../scoring/index.ts';
import type { HandLine, OpenHand } from '../ports.ts';
import type { State } from './state.ts';

/**
 * Proves the first sentence on the attempt itself: a helping hand, away from page and bench, welds it again with one thing changed at a time. Stopped
 * as soon as something else comes onto the bench; a hand that breaks leaves the sentence as it was said.
 */
export class Prover {
  private line: HandLine | null = null;

  constructor(
    private readonly openHand: OpenHand,
    private readonly state: State,
  ) {}

  prove(recording: AttemptRecording, result: Result): void {
    this.stop();
    if (!canBeProved(result)) return;
    this.state.proof.value = 'trying';
    this.line = this.openHand(
      (answer) => this.done(answer.type === 'prove first' ? answer.proof : null),
      () => this.done(null),
    );
    this.line.ask({ type: 'prove first', recording, result });
  }

  stop(): void {
    this.done(null);
  }

  private done(proof: Exclude<State['proof']['value'], 'trying'>): void {
    this.line?.close();
    this.line = null;
    this.state.proof.value = proof;
  }
}
