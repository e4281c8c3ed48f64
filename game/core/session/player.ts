import { POSE_RATE_HZ } from '../../../engine/index.ts';
import type { TraceLog } from '../bench/trace-log.ts';
import type { State } from './state.ts';

/** How fast a replay may go, against the time it was welded in. */
export const PACES = [0.1, 0.25, 0.5, 1, 2, 4] as const;

/** Moments nearer than this are the same, s. */
const APART_S = 0.02;

/** Plays the attempt on the bench back, at its own pace or another, and says which moment of it is on show. */
export class Player {
  constructor(
    private readonly session: { readonly trace: TraceLog; seek(t_s: number | null): void },
    private readonly state: State,
  ) {}

  /** Moves a running replay on; at its end the finished piece comes back. */
  advance(dt_s: number): void {
    const { state, session } = this;
    if (!state.playing.value) return;
    const at = (state.shownTime.value ?? 0) + dt_s * state.pace.value;
    if (at >= state.duration_s.value) {
      state.playing.value = false;
      session.seek(null);
    } else session.seek(at);
  }

  /** Goes to the next root crossing with which a weave cycle begins, or back to the one before. */
  step(way: 1 | -1): void {
    const { state, session } = this;
    state.playing.value = false;
    const at = state.shownTime.value ?? state.duration_s.value;
    const all = state.result.value?.motion.crossings ?? [];
    const begins = all.filter((c, i) => c.cycle !== all[i - 1]?.cycle).map((c) => c.t_s);
    const next = way === 1 ? begins.find((t) => t > at + APART_S) : begins.filter((t) => t < at - APART_S).at(-1);
    if (next !== undefined) session.seek(next);
    else session.seek(way === 1 ? null : 0);
  }

  /** Row of the trace now on show: the newest while welding, the replay's otherwise; -1 for none. */
  get row(): number {
    const { length } = this.session.trace;
    const shown = this.state.shownTime.value;
    if (shown === null) return length - 1;
    return Math.min(length - 1, Math.max(0, Math.round(shown * POSE_RATE_HZ) - 1));
  }
}
