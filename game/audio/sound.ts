import type { WeaveOptions, WireState } from '../../engine/index.ts';
import type { Clock } from '../core/ports.ts';
import { arcNoise } from './arc-noise.ts';
import { BeatPlayer } from './beat-player.ts';

/** Arc sound and beat; silent at volume 0. */
export class Sound {
  private context: AudioContext | null = null;
  private master: GainNode | null = null;
  private arc: { source: AudioBufferSourceNode; level: GainNode; struck_Hz: number } | null = null;
  private beat: BeatPlayer | null = null;

  constructor(private readonly clock: Clock) {}

  /** Opens the audio device at the first press anywhere (browsers allow it only then): it takes too long to do in mid-strike. */
  attach(): () => void {
    const open = (): void => {
      if (typeof AudioContext === 'undefined') return;
      this.context ??= new AudioContext({ latencyHint: 'interactive' });
    };
    window.addEventListener('pointerdown', open, { once: true });
    window.addEventListener('keydown', open, { once: true });
    return () => {
      window.removeEventListener('pointerdown', open);
      window.removeEventListener('keydown', open);
    };
  }

  /** Starts arc noise (muted until `arcOn`) and, if asked, the beat. */
  strike(volume: number, wire: WireState, weave: WeaveOptions | null, strike_ms: number): void {
    this.stop();
    const { context } = this;
    if (volume <= 0 || !context) return;
    void context.resume();
    this.master ??= new GainNode(context);
    this.master.connect(context.destination);
    this.master.gain.value = volume * volume;
    const samples = arcNoise(context.sampleRate, wire);
    const buffer = new AudioBuffer({ length: samples.length, sampleRate: context.sampleRate });
    buffer.copyToChannel(samples, 0);
    const source = new AudioBufferSourceNode(context, { buffer, loop: true });
    const level = new GainNode(context, { gain: 0 });
    const dull = new BiquadFilterNode(context, { type: 'lowpass', frequency: 5200 });
    source.connect(dull).connect(level).connect(this.master);
    source.start();
    this.arc = { source, level, struck_Hz: wire.shortCircuit_Hz };
    this.beat ??= new BeatPlayer(context, this.master, this.clock);
    if (weave) this.beat.start(weave, strike_ms);
  }

  /** Short circuits at the rate the wire has now: a far tip takes amps and slows them. */
  follow({ shortCircuit_Hz }: Pick<WireState, 'shortCircuit_Hz'>): void {
    if (!this.arc || !this.context || this.arc.struck_Hz <= 0 || shortCircuit_Hz <= 0) return;
    const { playbackRate } = this.arc.source;
    playbackRate.setTargetAtTime(shortCircuit_Hz / this.arc.struck_Hz, this.context.currentTime, 0.05);
  }

  /** Follows the arc without clicks; called every frame. */
  arcOn(on: boolean): void {
    if (!this.arc || !this.context) return;
    this.arc.level.gain.setTargetAtTime(on ? 0.5 : 0, this.context.currentTime, on ? 0.02 : 0.04);
  }

  stop(): void {
    this.beat?.stop();
    this.arc?.source.stop();
    this.arc = null;
  }
}
