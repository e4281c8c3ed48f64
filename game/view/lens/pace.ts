/** Part of a frame's time the close view may take. */
const MAY_TAKE_S = 0.008;
/** What the plain view costs of the full one; order of magnitude, measured without a graphics card. */
const PLAIN_COST = 0.42;
/** Coarser than this the lens shows less than the plain view drawn finely. */
const COARSEST_LENS = 0.5;
const COARSEST = 0.35;
/** Frames slower than this, on average, make the picture coarser; a long run of fast ones sharpens it again. */
const SLOW_FRAME_S = 1 / 42;
const FAST_FRAME_S = 1 / 55;
const AVERAGE = 0.2;
const SETTLE_FRAMES = 8;
const SHARPEN_FRAMES = 400;
const STEP = 0.85;
const RAREST = 3;

/**
 * How finely, how plainly and how often the close view is drawn, so that the weld never waits for its picture. Coarser comes first,
 * then the plain view, then fewer pictures.
 */
export class Pace {
  /** Share of full resolution along an edge. */
  share = 1;
  /** The machine cannot draw the lens in time. */
  plain = false;
  /** A picture every so many frames. */
  every = 1;
  private mean_s = 1 / 60;
  private since = 0;
  private frame = 0;

  /** Takes the time one picture of the lens took, drawn at `share` of full resolution. */
  timed(took_s: number, share: number): void {
    const whole_s = took_s / (share * share);
    const lens = Math.sqrt(MAY_TAKE_S / whole_s);
    this.plain = lens < COARSEST_LENS;
    this.share = Math.min(1, Math.max(COARSEST, this.plain ? Math.sqrt(MAY_TAKE_S / (whole_s * PLAIN_COST)) : lens));
    const left_s = whole_s * this.share * this.share * (this.plain ? PLAIN_COST : 1);
    this.every = Math.min(RAREST, Math.max(1, Math.ceil(left_s / (2 * MAY_TAKE_S))));
  }

  /** True if this frame is one to draw; call once a frame while things move. */
  due(): boolean {
    this.frame += 1;
    return this.frame % this.every === 0;
  }

  /** Takes the time between two frames while the picture moves. */
  judge(dt_s: number): void {
    this.mean_s += AVERAGE * (dt_s - this.mean_s);
    this.since += 1;
    if (this.mean_s > SLOW_FRAME_S && this.since > SETTLE_FRAMES) this.ease();
    else if (this.mean_s < FAST_FRAME_S && this.since > SHARPEN_FRAMES) this.sharpen();
  }

  private ease(): void {
    this.since = 0;
    if (this.share > (this.plain ? COARSEST : COARSEST_LENS)) this.share = Math.max(COARSEST, this.share * STEP);
    else if (!this.plain) this.plain = true;
    else if (this.every < RAREST) this.every += 1;
  }

  private sharpen(): void {
    this.since = 0;
    if (this.every > 1) this.every -= 1;
    else this.share = Math.min(1, this.share / STEP);
  }
}
