import { type TraceColumn, TraceLog } from '../bench/trace-log.ts';
import type { Clock } from '../ports.ts';
import type { State } from './state.ts';

/** Least time between two read-outs while welding. */
const READ_OUT_MS = 150;

/** The trace of the attempt on the bench as it comes in, and what its newest row says, a few times a second. */
export class LiveTrace {
  readonly log = new TraceLog();
  private read_ms = 0;

  constructor(
    private readonly clock: Clock,
    private readonly state: Pick<State, 'live'>,
  ) {}

  /** Adds rows as the bench posts them. */
  append(rows: ArrayBuffer): void {
    this.log.append(new Float32Array(rows));
    const now_ms = this.clock.now_ms();
    const row = this.log.length - 1;
    if (row < 0 || now_ms - this.read_ms < READ_OUT_MS) return;
    this.read_ms = now_ms;
    const at = (column: TraceColumn): number => this.log.value(row, column);
    this.state.live.value = {
      t_s: at('t_s'),
      aimY_mm: at('aimY_mm'),
      current_A: at('current_A'),
      tipToWork_mm: at('tipToWork_mm'),
      nozzleTouching: at('nozzleTouching') === 1,
    };
  }

  clear(): void {
    this.log.clear();
    this.read_ms = 0;
    this.state.live.value = null;
  }
}
