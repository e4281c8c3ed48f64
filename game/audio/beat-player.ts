import type { WeaveOptions } from '../../engine/index.ts';
import type { Clock } from '../core/ports.ts';
import { type Beat, beatsBetween } from './beat-plan.ts';

/** Beats are handed to the audio clock this far ahead, so that a busy page drops none. */
const AHEAD_S = 0.2;
const LOOK_MS = 40;
/** Left toe lower, right toe higher; leaving is a shorter, softer tap than arriving. */
const TONE_HZ = { B: 520, A: 690 } as const;
const SHAPE = { arrive: { gain: 0.5, decay_s: 0.07 }, leave: { gain: 0.22, decay_s: 0.03 } } as const;

/** The weave's beat as two soft wooden taps, one a toe. */
export class BeatPlayer {
  private callOff: () => void = () => undefined;

  constructor(
    private readonly context: AudioContext,
    private readonly out: AudioNode,
    private readonly clock: Clock,
  ) {}

  /** @param strike_ms when the arc was struck, ms since the epoch */
  start(weave: WeaveOptions, strike_ms: number): void {
    this.stop();
    let planned_s = 0;
    const look = (): void => {
      const since_s = (this.clock.now_ms() - strike_ms) / 1000;
      const until = since_s + AHEAD_S;
      for (const beat of beatsBetween(weave, Math.max(planned_s, since_s), until))
        this.tap(beat, this.context.currentTime + beat.t_s - since_s);
      planned_s = until;
      this.callOff = this.clock.after(LOOK_MS, look);
    };
    look();
  }

  stop(): void {
    this.callOff();
  }

  private tap(beat: Beat, at_s: number): void {
    const { gain, decay_s } = SHAPE[beat.what];
    const tone = new OscillatorNode(this.context, { type: 'triangle', frequency: TONE_HZ[beat.toe] });
    const level = new GainNode(this.context, { gain: 0 });
    level.gain.setValueAtTime(0, at_s);
    level.gain.linearRampToValueAtTime(gain, at_s + 0.003);
    level.gain.exponentialRampToValueAtTime(0.0005, at_s + decay_s);
    tone.connect(level).connect(this.out);
    tone.start(at_s);
    tone.stop(at_s + decay_s + 0.02);
  }
}
