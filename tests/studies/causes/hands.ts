/**
 * Faulty hands as changes of a pose stream: what a hand does wrong on top of a weave that is otherwise followed. All lengths in mm of the
 * joint, times in s. Nothing here knows what the advice looks at.
 */
import { POSE_RATE_HZ, type Pose } from '../../../engine/index.ts';

/** Changes the poses of a whole attempt. */
export type Change = (poses: readonly Pose[]) => Pose[];

const climbedTo = (poses: readonly Pose[], y_mm: number): number => {
  // The hand's mid-line, not its reach: the mean height over the second around.
  const half = POSE_RATE_HZ / 2;
  for (let n = half; n + half < poses.length; n++) {
    let sum = 0;
    for (let k = n - half; k < n + half; k++) sum += poses[k]!.y_mm;
    if (sum / (2 * half) >= y_mm) return n;
  }
  return poses.length;
};

/** Stops climbing at a height and goes on weaving on the spot. */
export const stall =
  (at_mm: number, seconds: number, period_s: number): Change =>
  (poses) => {
    const from = climbedTo(poses, at_mm);
    const cycle = Math.round(period_s * POSE_RATE_HZ);
    const one = poses.slice(from, from + cycle);
    const climb = one.length > 1 ? (one.at(-1)!.y_mm - one[0]!.y_mm) * (1 + 1 / one.length) : 0;
    const level = one.map((p, n) => ({ ...p, y_mm: p.y_mm - (climb * n) / one.length }));
    const out = poses.slice(0, from);
    for (let n = 0; n < seconds * POSE_RATE_HZ; n++) out.push(level[n % level.length]!);
    return [...out, ...poses.slice(from)];
  };

/** Leaves out a stretch of the joint: the hand jumps up over it. */
export const jump =
  (from_mm: number, over_mm: number): Change =>
  (poses) => {
    const a = climbedTo(poses, from_mm);
    const b = climbedTo(poses, from_mm + over_mm);
    return [...poses.slice(0, a), ...poses.slice(b)];
  };

/** The hand slips sideways off the joint's middle for a moment, and comes back. */
export const slip =
  (at_mm: number, aside_mm: number, seconds: number): Change =>
  (poses) => {
    const from = climbedTo(poses, at_mm);
    const to = from + Math.round(seconds * POSE_RATE_HZ);
    return poses.map((p, n) => (n >= from && n < to ? { ...p, u_mm: p.u_mm + aside_mm } : p));
  };

/** The trigger comes off for a moment and the hand goes on climbing as if nothing had been. */
export const arcLost =
  (at_mm: number, seconds: number): Change =>
  (poses) => {
    const from = climbedTo(poses, at_mm);
    const to = from + Math.round(seconds * POSE_RATE_HZ);
    return poses.map((p, n) => (n >= from && n < to ? { ...p, trigger: false } : p));
  };

/** Stops, waits until all is cold, and strikes again some way above the crater without going back into it. */
export const restartAbove =
  (at_mm: number, above_mm: number): Change =>
  (poses) => {
    const a = climbedTo(poses, at_mm);
    const b = climbedTo(poses, at_mm + above_mm);
    const rest = { ...poses[a]!, trigger: false };
    return [...poses.slice(0, a), ...Array.from({ length: 6 * POSE_RATE_HZ }, () => rest), ...poses.slice(b)];
  };

/** Stops, waits until all is cold, and goes on from the cold crater at once. */
export const restartOnCold =
  (at_mm: number): Change =>
  (poses) => {
    const a = climbedTo(poses, at_mm);
    const rest = { ...poses[a]!, trigger: false };
    return [...poses.slice(0, a), ...Array.from({ length: 6 * POSE_RATE_HZ }, () => rest), ...poses.slice(a)];
  };

/** Turns back before one toe over a stretch of the joint: right of the root for `side` 1, left for -1. */
export const skipToe =
  (side: 1 | -1, from_mm: number, to_mm: number, reach_mm = 0): Change =>
  (poses) => {
    const a = climbedTo(poses, from_mm);
    const b = climbedTo(poses, to_mm);
    return poses.map((p, n) => (n >= a && n < b && side * p.u_mm > reach_mm ? { ...p, u_mm: side * reach_mm } : p));
  };

/** The whole weave stands to one side. */
export const aside =
  (u_mm: number): Change =>
  (poses) =>
    poses.map((p) => ({ ...p, u_mm: p.u_mm + u_mm }));

/** Tip, work angle or push held otherwise from a height on. */
export const held =
  (change: { tip_mm?: number; work_deg?: number; push_deg?: number }, from_mm = Number.NEGATIVE_INFINITY): Change =>
  (poses) => {
    const a = from_mm === Number.NEGATIVE_INFINITY ? 0 : climbedTo(poses, from_mm);
    return poses.map((p, n) =>
      n < a
        ? p
        : {
            ...p,
            tipToWork_mm: p.tipToWork_mm + (change.tip_mm ?? 0),
            workAngle_deg: p.workAngle_deg + (change.work_deg ?? 0),
            travelAngle_deg: p.travelAngle_deg + (change.push_deg ?? 0),
          },
    );
  };

/** Played faster or slower as a whole from a height on: beat, pauses and travel together. */
export const hurried =
  (factor: number, from_mm = Number.NEGATIVE_INFINITY): Change =>
  (poses) => {
    const a = from_mm === Number.NEGATIVE_INFINITY ? 0 : climbedTo(poses, from_mm);
    const out = poses.slice(0, a);
    for (let at = a; at < poses.length - 1; at += factor) out.push(poses[Math.floor(at)]!);
    return out;
  };

/** Moves in fits and starts: climbs in steps of this length and stands between. */
export const fits =
  (step_mm: number): Change =>
  (poses) => {
    const first = poses[0]!.y_mm;
    let mean = first;
    return poses.map((p) => {
      mean += (p.y_mm - mean) / (0.6 * POSE_RATE_HZ);
      const stepped = first + Math.floor((mean - first) / step_mm) * step_mm;
      return { ...p, y_mm: p.y_mm - mean + stepped };
    });
  };

/** Ends with the trigger off at once at a height in the judged length: the rest stays bare. */
export const giveUp =
  (at_mm: number): Change =>
  (poses) => {
    const a = climbedTo(poses, at_mm);
    const rest = { ...poses[a]!, trigger: false };
    return [...poses.slice(0, a), ...Array.from({ length: 2 * POSE_RATE_HZ }, () => rest)];
  };

/** From the top of the joint down. */
export const downhill =
  (length_mm: number): Change =>
  (poses) =>
    poses.map((p) => ({ ...p, y_mm: length_mm - p.y_mm, travelAngle_deg: -p.travelAngle_deg }));
