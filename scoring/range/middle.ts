import { type Axis, axes, type RangePlan, type RangePoint } from './plan.ts';
import { holds, type RangeResult } from './weld-point.ts';

/** The middle of a working range: the combination farthest from anything that does not hold. */
export interface Middle {
  point: RangePoint;
  result: RangeResult;
  /** Steps of the sweep in any direction, corners too, within which everything holds. The edge of the sweep counts as not holding. */
  room: number;
  /** How far each swept setting may go from here, the others left alone, before something does not hold or the sweep ends. */
  give: Partial<Record<Axis, { down: number; up: number }>>;
  /** Largest hand amount tried that still holds here, over all seeds. */
  handHolds: number | null;
}

/**
 * Finds the middle as the centre of the largest box of combinations that all hold; among equals the one that takes the less steady hand,
 * then the one nearest to the centroid of all that hold, then the first. Null where nothing holds.
 */
export function middleOf(
  plan: RangePlan,
  points: readonly RangePoint[],
  results: readonly RangeResult[],
): Middle | null {
  const swept = axes.filter((axis) => plan.values[axis].length > 1);
  // A box can only stand round the middle of an axis with three values or more.
  const boxed = axes.filter((axis) => plan.values[axis].length > 2);
  const held = new Set(results.filter((r) => holds(r.verdict)).map((r) => r.index));
  if (held.size === 0) return null;
  const lookup = new Map(points.map((p) => [keyOf(plan, p.pattern, placeOf(plan, p)), p.index]));
  const stands = (pattern: string, place: readonly number[]): boolean => {
    const index = lookup.get(keyOf(plan, pattern, place));
    return index !== undefined && held.has(index);
  };
  const centroid = axes.map((_, k) => {
    let sum = 0;
    for (const index of held) sum += placeOf(plan, points[index]!)[k]!;
    return sum / held.size;
  });
  let best: { point: RangePoint; room: number; hand: number; off: number } | null = null;
  for (const index of held) {
    const point = points[index]!;
    const place = placeOf(plan, point);
    const room = roomAt(boxed, place, (p) => stands(point.pattern, p));
    const off = place.reduce((sum, x, k) => sum + (x - centroid[k]!) ** 2, 0);
    const hand = results[index]!.handHolds ?? 0;
    if (best === null || room > best.room || (room === best.room && better({ hand, off }, best)))
      best = { point, room, hand, off };
  }
  const { point, room } = best!;
  const place = placeOf(plan, point);
  const give: Middle['give'] = {};
  for (const axis of swept) {
    const k = axes.indexOf(axis);
    const values = plan.values[axis];
    const reach = (way: number): number => {
      let i = place[k]!;
      while (stands(point.pattern, replaced(place, k, i + way))) i += way;
      return Math.abs(values[i]! - values[place[k]!]!);
    };
    give[axis] = { down: tidy(reach(-1)), up: tidy(reach(1)) };
  }
  return { point, result: results[point.index]!, room, give, handHolds: results[point.index]!.handHolds };
}

function better(a: { hand: number; off: number }, b: { hand: number; off: number }): boolean {
  return a.hand > b.hand || (a.hand === b.hand && a.off < b.off - 1e-9);
}

/** Position of a point on each axis, as an index into the axis' values. */
function placeOf(plan: RangePlan, p: RangePoint): number[] {
  return axes.map((axis) => plan.values[axis].indexOf(p.at[axis]));
}

function keyOf(plan: RangePlan, pattern: string, place: readonly number[]): string {
  return place.some((i, k) => i < 0 || i >= plan.values[axes[k]!].length) ? 'off' : `${pattern} ${place.join(' ')}`;
}

/** Half width, in steps of the sweep, of the largest box round a place that holds throughout. */
function roomAt(
  swept: readonly Axis[],
  place: readonly number[],
  stands: (place: readonly number[]) => boolean,
): number {
  if (swept.length === 0) return 0;
  for (let room = 0; ; room++) {
    if (!shellHolds(swept, place, room + 1, stands)) return room;
  }
}

function shellHolds(
  swept: readonly Axis[],
  place: readonly number[],
  reach: number,
  stands: (place: readonly number[]) => boolean,
): boolean {
  let boxes: number[][] = [[...place]];
  for (const axis of swept) {
    const k = axes.indexOf(axis);
    const next: number[][] = [];
    for (const at of boxes) for (let d = -reach; d <= reach; d++) next.push(replaced(at, k, at[k]! + d));
    boxes = next;
  }
  return boxes.every(stands);
}

function tidy(x: number): number {
  return Math.round(x * 1000) / 1000 + 0;
}

function replaced(place: readonly number[], k: number, value: number): number[] {
  const out = [...place];
  out[k] = value;
  return out;
}
