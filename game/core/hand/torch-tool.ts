import type { TorchSample } from './sample.ts';

/**
 * The torch in the hand, as four states:
 *
 *     idle --press--> welding --release--> out --press--> welding
 *                        |                  |
 *                        +--- finish -------+--- finish, or RESTRIKE_S without a press --> stopped --again--> idle
 */
export type TorchState = 'idle' | 'welding' | 'out' | 'stopped';

/** After the arc goes out the attempt waits this long for another strike (crater fill, restart) before it ends. */
export const RESTRIKE_S = 4;

export interface TorchHooks {
  /** The first press: an attempt begins with this reading. */
  strike(sample: TorchSample): void;
  /** Readings of an attempt under way; none older than `until_ms` is still to come. */
  samples(samples: TorchSample[], until_ms: number): void;
  /** The hand has finished; the Worker answers with the recording. */
  finish(at_ms: number): void;
  changed(state: TorchState): void;
}

export class TorchTool {
  state: TorchState = 'idle';
  /** Last known reading, for drawing the torch; null before the hand has come near. */
  last: TorchSample | null = null;
  private out_ms = 0;

  constructor(private readonly hooks: TorchHooks) {}

  press(sample: TorchSample): void {
    this.last = sample;
    if (this.state === 'idle') {
      this.hooks.strike(sample);
      this.enter('welding');
    } else if (this.state === 'out') {
      this.hooks.samples([sample], sample.at_ms);
      this.enter('welding');
    }
  }

  /** Readings between press and release carry the trigger as it is; others only move the torch. */
  move(samples: TorchSample[]): void {
    if (samples.length === 0) return;
    this.last = samples[samples.length - 1];
    if (this.running) this.hooks.samples(samples, this.last.at_ms);
  }

  release(sample: TorchSample): void {
    this.last = sample;
    if (this.state !== 'welding') return;
    this.out_ms = sample.at_ms;
    this.hooks.samples([{ ...sample, trigger: false }], sample.at_ms);
    this.enter('out');
  }

  /** Seconds left to strike again; 0 unless the arc is out in an attempt. */
  restrikeLeft_s(now_ms: number): number {
    return this.state === 'out' ? Math.max(0, RESTRIKE_S - (now_ms - this.out_ms) / 1000) : 0;
  }

  /** @param complete_ms readings up to here have all been delivered, also where the hand rested and there were none */
  tick(now_ms: number, complete_ms: number): void {
    if (this.running) this.hooks.samples([], complete_ms);
    if (this.state === 'out' && this.restrikeLeft_s(now_ms) === 0) this.finish(now_ms);
  }

  finish(now_ms: number): void {
    if (this.state !== 'welding' && this.state !== 'out') return;
    if (this.state === 'welding' && this.last)
      this.hooks.samples([{ ...this.last, at_ms: now_ms, trigger: false }], now_ms);
    this.hooks.finish(now_ms);
    this.enter('stopped');
  }

  /** The Worker ended the attempt (end of the joint, or it could not keep up). */
  ended(): void {
    if (this.state !== 'stopped') this.enter('stopped');
  }

  again(): void {
    if (this.state !== 'idle') this.enter('idle');
  }

  get triggerDown(): boolean {
    return this.state === 'welding';
  }

  private get running(): boolean {
    return this.state === 'welding' || this.state === 'out';
  }

  private enter(state: TorchState): void {
    this.state = state;
    this.hooks.changed(state);
  }
}
