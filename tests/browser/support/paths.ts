import { type WeaveOptions, weaveAt } from '../../../engine/index.ts';
import type { HandPath, Place } from './bench.ts';

/** The path a steady hand takes through a weave, from the shelf to `top_mm`. */
export function weavePath(weave: WeaveOptions, top_mm: number): HandPath {
  return (t_s) => {
    const y = weave.start_mm + weave.travel_mmps * Math.max(0, t_s - weave.shelf_s);
    if (y >= top_mm) return null;
    const { u_mm, ahead_mm } = weaveAt(weave, (t_s * weave.cyclesPerSecond) % 1);
    return { u_mm, y_mm: y + ahead_mm };
  };
}

/** Walks through places at a steady speed, mm/s, and rests at each, so that a busy machine sends a reading from every corner. */
export function polyline(places: readonly Place[], speed_mmps: number, rest_s: number): HandPath {
  return (t_s) => {
    let left = t_s * speed_mmps;
    for (let i = 1; i < places.length; i++) {
      const [from, to] = [places[i - 1], places[i]];
      const length = Math.hypot(to.u_mm - from.u_mm, to.y_mm - from.y_mm);
      if (left <= rest_s * speed_mmps) return from;
      left -= rest_s * speed_mmps;
      if (left <= length) {
        const share = left / length;
        return {
          u_mm: from.u_mm + share * (to.u_mm - from.u_mm),
          y_mm: from.y_mm + share * (to.y_mm - from.y_mm),
        };
      }
      left -= length;
    }
    return null;
  };
}

/** Distance of a place from a polyline, mm. */
export function distanceTo(place: Place, line: readonly Place[]): number {
  let least = Number.POSITIVE_INFINITY;
  for (let i = 1; i < line.length; i++) {
    const [a, b] = [line[i - 1], line[i]];
    const du = b.u_mm - a.u_mm;
    const dy = b.y_mm - a.y_mm;
    const length2 = du * du + dy * dy;
    const share =
      length2 === 0 ? 0 : Math.min(1, Math.max(0, ((place.u_mm - a.u_mm) * du + (place.y_mm - a.y_mm) * dy) / length2));
    least = Math.min(least, Math.hypot(place.u_mm - a.u_mm - share * du, place.y_mm - a.y_mm - share * dy));
  }
  return least;
}
