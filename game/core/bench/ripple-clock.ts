/**
 * Ripples a second laid by a puddle that nobody weaves: its own swing (order of magnitude, common practice, no source). It only says
 * how close the ripples of a straight run lie; a weave's ripples are one a root crossing.
 */
const STRAIGHT_PER_S = 2.6;
/** The arc has to come this far out on one side before its way back counts as a crossing: a shaky straight hand is no weave. */
const SIDE_MM = 0.8;
/** Without a crossing for this long the hand runs straight. */
const LONGEST_BEAT_S = 2.5;

/**
 * Counts the hand's root crossings, and gives every moment its place among them: phase 3.5 is half way between the third crossing
 * and the fourth. Metal that froze at that moment carries that phase, so counting the bead's ripples counts the crossings.
 */
export class RippleClock {
  private readonly times_s: number[] = [];
  private readonly phases: number[] = [];
  private side = 0;
  private crossed_s = Number.NaN;
  private lastU_mm = 0;
  private last_s = 0;

  clear(): void {
    this.times_s.length = 0;
    this.phases.length = 0;
    this.side = 0;
    this.crossed_s = Number.NaN;
    this.lastU_mm = 0;
    this.last_s = 0;
  }

  /** Takes the arc's foot at a time, in order; call only while the arc burns. */
  add(t_s: number, footU_mm: number): void {
    if (this.times_s.length === 0) this.mark(t_s, 0);
    if (this.lastU_mm * footU_mm < 0 || (this.lastU_mm !== 0 && footU_mm === 0)) {
      const share = this.lastU_mm / (this.lastU_mm - footU_mm);
      this.crossed_s = this.last_s + share * (t_s - this.last_s);
    }
    if (Math.abs(footU_mm) >= SIDE_MM) {
      const side = Math.sign(footU_mm);
      if (this.side !== 0 && side !== this.side && !Number.isNaN(this.crossed_s)) this.cross(this.crossed_s);
      this.side = side;
    }
    this.lastU_mm = footU_mm;
    this.last_s = t_s;
  }

  /** Ripples up to a time; grows with the time, and by one from each crossing to the next. */
  phaseAt(t_s: number): number {
    const { times_s, phases } = this;
    const last = times_s.length - 1;
    if (last < 0) return 0;
    if (t_s <= times_s[0]) return phases[0];
    if (t_s >= times_s[last]) return phases[last] + this.running(t_s - times_s[last]);
    let low = 0;
    let high = last;
    while (high - low > 1) {
      const middle = (low + high) >> 1;
      if (times_s[middle] <= t_s) low = middle;
      else high = middle;
    }
    const share = (t_s - times_s[low]) / (times_s[high] - times_s[low]);
    return phases[low] + share * (phases[high] - phases[low]);
  }

  private cross(t_s: number): void {
    const gap_s = t_s - this.times_s[this.times_s.length - 1];
    if (gap_s <= 0) return;
    const ripples = gap_s > LONGEST_BEAT_S ? Math.max(1, Math.round(gap_s * STRAIGHT_PER_S)) : 1;
    this.mark(t_s, this.phases[this.phases.length - 1] + ripples);
  }

  private mark(t_s: number, phase: number): void {
    this.times_s.push(t_s);
    this.phases.push(phase);
  }

  /** Phase past the last crossing, by the beat before it; what freezes now is dimmed until the next crossing has settled it. */
  private running(since_s: number): number {
    const n = this.times_s.length;
    const beat_s = n > 1 ? this.times_s[n - 1] - this.times_s[n - 2] : Number.POSITIVE_INFINITY;
    if (beat_s > LONGEST_BEAT_S || since_s > LONGEST_BEAT_S) return since_s * STRAIGHT_PER_S;
    return Math.min(since_s / beat_s, 1);
  }
}
