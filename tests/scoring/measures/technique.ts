import type { Pose } from '../../../engine/index.ts';

/** Hands that stop, restart and fill, put together from the robot's own poses; each takes poses and gives poses (see `Weld.hand`). */

/** The torch held in one place. */
function held(p: Pose, seconds: number, trigger: boolean): Pose[] {
  return Array.from({ length: Math.round(seconds * 100) }, () => ({ ...p, trigger }));
}

/** The torch moved straight, arc burning. */
function moved(from: Pose, to: Pose, seconds: number): Pose[] {
  const n = Math.round(seconds * 100);
  return Array.from({ length: n }, (_, i) => {
    const f = (i + 1) / n;
    return {
      ...to,
      u_mm: from.u_mm + f * (to.u_mm - from.u_mm),
      y_mm: from.y_mm + f * (to.y_mm - from.y_mm),
      trigger: true,
    };
  });
}

/** After the last arc: `times` short arcs on the root, a little under the place where it went out. */
export function reStruck(times: number, on_s = 0.5, off_s = 0.8, under_mm = 1): (poses: Pose[]) => Pose[] {
  return (poses) => {
    const last = poses.map((p) => p.trigger).lastIndexOf(true);
    const at = { ...poses[last]!, u_mm: 0, y_mm: poses[last]!.y_mm - under_mm };
    const out = poses.slice(0, last + 1);
    for (let k = 0; k < times; k++) out.push(...held(at, off_s, false), ...held(at, on_s, true));
    return [...out, ...held(at, 2, false)];
  };
}

/** Stops at a height, lets the crater go cold for 12 s, and goes on as if nothing had been. */
export function restartOnCrater(y_mm: number): (poses: Pose[]) => Pose[] {
  return (poses) => {
    const i = poses.findIndex((p) => p.y_mm > y_mm && Math.abs(p.u_mm) < 0.3);
    return [...poses.slice(0, i), ...held(poses[i]!, 12, false), ...poses.slice(i)];
  };
}

/** Stops at a height, strikes 8 mm above (about 12 above the middle of the crater), drops back into the crater, waits until it is full, and goes on. */
export function restartFromAbove(y_mm: number, above_mm = 8): (poses: Pose[]) => Pose[] {
  return (poses) => {
    const i = poses.findIndex((p) => p.y_mm > y_mm && Math.abs(p.u_mm) < 0.3);
    const stop = poses[i]!;
    const strike = { ...stop, u_mm: 0, y_mm: stop.y_mm + above_mm };
    const crater = { ...stop, u_mm: 0, y_mm: stop.y_mm - 3 };
    return [
      ...poses.slice(0, i),
      ...held(stop, 12, false),
      ...held(strike, 0.1, true),
      ...moved(strike, crater, 0.5),
      ...held(crater, 1.2, true),
      ...moved(crater, stop, 0.5),
      ...poses.slice(i),
    ];
  };
}

/** The whole run as taps: arc on and off in turn, climbing all the while. */
export function tapped(on_s: number, off_s: number): (poses: Pose[]) => Pose[] {
  return (poses) => poses.map((p, i) => ({ ...p, trigger: p.trigger && (i / 100) % (on_s + off_s) < on_s }));
}
