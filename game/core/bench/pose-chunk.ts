import { POSE_RATE_HZ, type Pose, QUANTUM, type Recording } from '../../../engine/index.ts';

/** Poses as a recording has them: whole numbers of the quanta, a column each. */
export type PoseColumns = Recording['poses'];

/** Poses handed on together: a second of the weld. */
const CHUNK = POSE_RATE_HZ;

export function noPoses(): PoseColumns {
  return { u: [], y: [], tip: [], work: [], travel: [], trigger: [] };
}

/** Gathers the poses of an attempt under way, so that they can be kept before it ends. */
export class PoseChunks {
  private columns = noPoses();
  private from = 0;

  /** @param pose as recorded (quantised) */
  add(pose: Pose): void {
    const { u, y, tip, work, travel, trigger } = this.columns;
    u.push(Math.round(pose.u_mm / QUANTUM.u_mm));
    y.push(Math.round(pose.y_mm / QUANTUM.y_mm));
    tip.push(Math.round(pose.tipToWork_mm / QUANTUM.tipToWork_mm));
    work.push(Math.round(pose.workAngle_deg / QUANTUM.workAngle_deg));
    travel.push(Math.round(pose.travelAngle_deg / QUANTUM.travelAngle_deg));
    trigger.push(pose.trigger ? 1 : 0);
  }

  /** All that was added and not taken. */
  rest(): PoseColumns {
    return this.columns;
  }

  /** A full chunk with the number of its first pose, or null while there is none. */
  take(): { from: number; poses: PoseColumns } | null {
    const { length } = this.columns.u;
    if (length < CHUNK) return null;
    const chunk = { from: this.from, poses: this.columns };
    this.from += length;
    this.columns = noPoses();
    return chunk;
  }
}
