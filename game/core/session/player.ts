import { POSE_RATE_HZ } from '../../../engine/index.ts';
import type { TraceLog } from '../bench/trace-log.ts';
import type { State } from './state.ts';

/** Plays the attempt on the bench back at its own pace, and says which moment of it is on show. */
export class Player {
  constructor(
    private readonly session: { readonly trace: TraceLog; seek(t_s: number | null): void },
    private readonly state: State,
  ) {}

  /** Moves a running replay on; at its end the finished piece comes back. */
  advance(dt_s: number): void {
    const { state, session } = this;
    if (!state.playing.value) return;
    const at = (state.shownTime.value ?? 0) + dt_s;
    if (at >= state.duration_s.value) {
      state.playing.value = false;
      session.seek(null);
    } else session.seek(at);
  }

  /** Row of the trace now on show: the newest while welding, the replay's otherwise; -1 for none. */
  get row(): number {
    const { length } = this.session.trace;
    const shown = this.state.shownTime.value;
    if (shown === null) return length - 1;
    return Math.min(length - 1, Math.max(0, Math.round(shown * POSE_RATE_HZ) - 1));
  }
}
