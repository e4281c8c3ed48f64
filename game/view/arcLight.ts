/**
 * Smooths the arc's light for the eye. The real arc may come and go many times a second (stubbing, a nervous trigger); the picture may
 * not: WCAG 2.3.1 allows no more than three flashes in any second. The light therefore follows on and off only after each state has
 * lasted DWELL_S, which leaves at most 1 / (2 x DWELL_S) = 2.3 flashes a second, and moves between them without a step.
 */
const DWELL_S = 0.22;
const RISE_S = 0.07;
const FALL_S = 0.12;
/** The room stays dark this long after the arc goes out, so that a short stop does not throw the lights up. */
const DARK_AFTER_S = 0.9;
const ROOM_S = 0.22;
/** Changes smaller than this are not seen. */
const SEEN = 0.004;

export interface ArcLight {
  /** Light of the arc, 0 to 1. */
  light: number;
  /** Darkness of the room, 0 to 1. */
  dark: number;
}

export class ArcLightFilter {
  private on = false;
  private asked = false;
  private since_s = Number.POSITIVE_INFINITY;
  private out_s = Number.POSITIVE_INFINITY;
  private readonly state: ArcLight = { light: 0, dark: 0 };

  /** Moves `dt_s` on. `still` (reduced motion) jumps the room's light instead of fading it, at most as often as the arc may flash. */
  step(arcOn: boolean, dt_s: number, still: boolean): ArcLight {
    const dt = Math.min(Math.max(dt_s, 0), 0.25);
    this.since_s += dt;
    this.asked = arcOn;
    if (arcOn !== this.on && this.since_s >= DWELL_S) {
      this.on = arcOn;
      this.since_s = 0;
    }
    this.out_s = this.on ? 0 : this.out_s + dt;
    const wanted = this.on ? 1 : 0;
    const tau = this.on ? RISE_S : FALL_S;
    this.state.light += (wanted - this.state.light) * (1 - Math.exp(-dt / tau));
    const dark = this.out_s < DARK_AFTER_S ? 1 : 0;
    this.state.dark = still ? dark : this.state.dark + (dark - this.state.dark) * (1 - Math.exp(-dt / ROOM_S));
    return this.state;
  }

  /** Light or room still on their way. */
  get fading(): boolean {
    const waiting = this.asked !== this.on || (!this.on && this.out_s < DARK_AFTER_S);
    const light = Math.abs(this.state.light - (this.on ? 1 : 0));
    return waiting || light > SEEN || Math.abs(this.state.dark - (this.wantsDark ? 1 : 0)) > SEEN;
  }

  /** True while the room is meant to be dark; the page's own colours follow it. */
  get wantsDark(): boolean {
    return this.out_s < DARK_AFTER_S;
  }
}
