/** The arc may move this far up or down before the picture moves with it. */
const DEAD_ZONE_MM = 0.8;
/** Critically damped spring, radians a second: slow enough that the weave's own up and down is not felt. */
const SPRING_RAD_PER_S = 2;
/** Past this the picture does not glide but cuts: a restart elsewhere, a jump in a replay. */
const CUT_MM = 20;
/** The spring trails a hand that climbs at 2 mm/s by this much in the mean; the picture's middle is set ahead by it. */
const TRAIL_MM = 2.3;
/** With motion reduced the picture stands still until the arc leaves this much either side of its middle, then steps. */
const STILL_HALF_MM = 6;
const STEP_MM = 6;

/**
 * The height the close view looks at, following the arc up the joint without its weave: never sideways, and up only as the work climbs.
 */
export class Follow {
  private at_mm: number;
  private speed_mmps = 0;
  private fresh = true;

  constructor(at_mm = 0) {
    this.at_mm = at_mm;
  }

  /** Height up the joint that belongs at the arc's place in the picture, mm. */
  get y_mm(): number {
    return this.at_mm + TRAIL_MM;
  }

  get settled(): boolean {
    return Math.abs(this.speed_mmps) < 0.01;
  }

  /** Forgets the arc: the next step cuts to where it is. */
  release(): void {
    this.fresh = true;
  }

  /** @param still reduced motion: steps instead of gliding */
  step(arcY_mm: number, dt_s: number, still: boolean): void {
    const off = arcY_mm - this.y_mm;
    if (this.fresh || Math.abs(off) > CUT_MM) {
      this.fresh = false;
      this.speed_mmps = 0;
      this.at_mm = arcY_mm - TRAIL_MM;
      return;
    }
    if (still) {
      this.speed_mmps = 0;
      if (Math.abs(off) > STILL_HALF_MM)
        this.at_mm += STEP_MM * Math.sign(off) * Math.ceil((Math.abs(off) - STILL_HALF_MM) / STEP_MM);
      return;
    }
    const away = arcY_mm - this.at_mm;
    const goal = this.at_mm + away - Math.max(-DEAD_ZONE_MM, Math.min(DEAD_ZONE_MM, away));
    this.spring(goal, Math.min(Math.max(dt_s, 0), 0.25));
  }

  /** The exact motion of a critically damped spring over `dt_s`: the same whatever the frame rate. */
  private spring(goal_mm: number, dt_s: number): void {
    const w = SPRING_RAD_PER_S;
    const x0 = this.at_mm - goal_mm;
    const c = this.speed_mmps + w * x0;
    const e = Math.exp(-w * dt_s);
    this.at_mm = goal_mm + (x0 + c * dt_s) * e;
    this.speed_mmps = (this.speed_mmps - w * c * dt_s) * e;
  }
}
