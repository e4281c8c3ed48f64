import { noFaults, POSE_RATE_HZ, type Pose, weaveHand } from '../../engine/index.ts';
import type { Exercise } from '../../scoring/index.ts';

/** Length of weave the pacer shows before it starts over, mm. */
const SHOWN_MM = 16;
const REST_S = 0.8;

/** Shows the exercise's weave with the torch before the arc is struck: a demonstration, not something to chase. */
export class Pacer {
  private of: Exercise | null = null;
  private path: Pose[] = [];
  private since_ms = 0;

  get running(): boolean {
    return this.of !== null;
  }

  step(exercise: Exercise, now_ms: number): Pose | null {
    if (this.of !== exercise) {
      const weave = { ...exercise.demonstration, length_mm: SHOWN_MM };
      this.of = exercise;
      this.path = [...weaveHand(weave, noFaults())].filter((pose) => pose.trigger);
      this.since_ms = now_ms;
    }
    const at = Math.floor(((now_ms - this.since_ms) / 1000) * POSE_RATE_HZ);
    if (at >= this.path.length + REST_S * POSE_RATE_HZ) this.since_ms = now_ms;
    return this.path[Math.min(at, this.path.length - 1)] ?? null;
  }

  stop(): void {
    this.of = null;
  }
}
