import { POSE_RATE_HZ, type Pose } from '../../engine/index.ts';
import type { TorchSample } from '../input/sample.ts';

export const POSE_MS = 1000 / POSE_RATE_HZ;
/** A pose waits this long for a reading taken after it, so that it can be interpolated instead of guessed. */
export const WAIT_MS = 24;
/**
 * Devices send nothing while they rest. After a rest the hand was still until this long before the next reading; it did not creep
 * there all the while. Shorter than WAIT_MS, so that a pose comes out the same whether the later reading was there in time or not.
 */
const MOVE_MS = 20;

/**
 * Turns readings with time stamps into poses at the fixed rate. Pure: it reads no clock, so tests can crank it by hand.
 */
export class PoseClock {
  private readonly samples: TorchSample[] = [];
  private next = 0;

  /** @param start_ms time of pose 0, on the samples' clock */
  constructor(readonly start_ms: number) {}

  /** Number of poses handed out. */
  get count(): number {
    return this.next;
  }

  /** Adds readings; one that is older than the newest known (a device's clock may step back) takes the newest time. */
  add(samples: readonly TorchSample[]): void {
    for (const sample of samples) {
      const last = this.samples.at(-1);
      this.samples.push(last && sample.at_ms < last.at_ms ? { ...sample, at_ms: last.at_ms } : sample);
    }
  }

  /** How far the poses handed out lie behind real time, ms. */
  lag_ms(now_ms: number): number {
    return now_ms - WAIT_MS - (this.start_ms + this.next * POSE_MS);
  }

  /** The next pose if its time has come, else null. */
  take(now_ms: number): Pose | null {
    const at = this.start_ms + this.next * POSE_MS;
    const newest = this.samples.at(-1);
    if (!newest || (newest.at_ms < at && now_ms < at + WAIT_MS)) return null;
    while (this.samples.length > 1 && this.samples[1].at_ms <= at) this.samples.shift();
    this.next += 1;
    return poseAt(at, this.samples[0], this.samples[1]);
  }
}

function poseAt(at_ms: number, from: TorchSample, to: TorchSample | undefined): Pose {
  const start = to ? Math.max(from.at_ms, to.at_ms - MOVE_MS) : 0;
  const share = to && to.at_ms > start ? Math.min(1, Math.max(0, (at_ms - start) / (to.at_ms - start))) : 0;
  const mix = (a: number, b: number): number => a + (b - a) * share;
  const next = to ?? from;
  return {
    u_mm: mix(from.u_mm, next.u_mm),
    y_mm: mix(from.y_mm, next.y_mm),
    tipToWork_mm: mix(from.tipToWork_mm, next.tipToWork_mm),
    workAngle_deg: mix(from.workAngle_deg, next.workAngle_deg),
    travelAngle_deg: mix(from.travelAngle_deg, next.travelAngle_deg),
    trigger: from.trigger,
  };
}
