import { type HandFaults, POSE_RATE_HZ, type Pose, type WeaveOptions, weaveHand } from '../../../engine/index.ts';
import type { PoseSource } from './real-time.ts';

/** The robot hand's poses at the pace of a clock, for demonstrations. */
export class RobotSource implements PoseSource {
  private readonly hand: Iterator<Pose>;
  private count = 0;
  /** When the first pose was taken. */
  private start_ms: number | null = null;
  /** The weave has come to its end. */
  done = false;

  constructor(weave: WeaveOptions, faults: HandFaults) {
    this.hand = weaveHand(weave, faults)[Symbol.iterator]();
  }

  take(now_ms: number): Pose | null {
    this.start_ms ??= now_ms;
    if (this.done || this.lag_ms(now_ms) < 0) return null;
    const next = this.hand.next();
    if (next.done) {
      this.done = true;
      return null;
    }
    this.count += 1;
    return next.value;
  }

  lag_ms(now_ms: number): number {
    return this.done || this.start_ms === null ? 0 : now_ms - this.start_ms - (this.count * 1000) / POSE_RATE_HZ;
  }
}
