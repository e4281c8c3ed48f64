import { POSE_RATE_HZ, type Pose } from '../../../engine/index.ts';
import type { TorchSample } from '../hand/sample.ts';

export const POSE_MS = 1000 / POSE_RATE_HZ;
/**
 * Devices send nothing while they rest. After a rest the hand was still until this long before the next reading; it did not creep
 * there all the while.
 */
export const MOVE_MS = 20;
/** The page may be this late with readings (a slow picture) before the attempt is stopped: later, and the hand no longer sees its puddle. */
export const PAGE_MAY_LAG_MS = 750;

/**
 * Turns readings with time stamps into poses at the fixed rate. The page says up to when its readings are complete; a pose is made only
 * when everything that bears on it is known, so the same hand gives the same poses however busy the page is. Reads no clock itself.
 */
export class PoseClock {
  private readonly samples: TorchSample[] = [];
  private next = 0;
  private known_ms: number;

  /** @param start_ms time of pose 0, on the samples' clock */
  constructor(readonly start_ms: number) {
    this.known_ms = start_ms;
  }

  /**
   * Adds readings. One that is older than the newest known (a device's clock may step back) takes the newest time.
   * @param until_ms no reading older than this is still to come
   */
  add(samples: readonly TorchSample[], until_ms: number): void {
    for (const sample of samples) {
      const last = this.samples.at(-1);
      this.samples.push(last && sample.at_ms < last.at_ms ? { ...sample, at_ms: last.at_ms } : sample);
    }
    this.known_ms = Math.max(this.known_ms, until_ms);
  }

  /**
   * How far real time is ahead of the poses for want of computing, ms; a page that has said nothing for longer than it may counts too.
   */
  lag_ms(now_ms: number): number {
    const behind = this.known_ms - MOVE_MS - (this.start_ms + this.next * POSE_MS);
    return Math.max(behind, now_ms - this.known_ms - PAGE_MAY_LAG_MS);
  }

  /** The next pose if all that bears on it is known, else null. */
  take(): Pose | null {
    const at = this.start_ms + this.next * POSE_MS;
    const newest = this.samples.at(-1);
    if (!newest || (newest.at_ms < at && this.known_ms < at + MOVE_MS)) return null;
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
