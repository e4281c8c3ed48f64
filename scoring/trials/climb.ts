import type { RecordedHand } from './hand.ts';
import { type Columns, emptyColumns, whole } from './warp.ts';

/** Window over which the climb of a straight run is told from its wobble, samples. */
const STRAIGHT_WINDOW = 100;
/** Slowest climb a change may ask for, mm/s. */
const SLOWEST_MMPS = 0.4;

/**
 * Climbs faster or slower with the same beat, width and pauses: the steps up get bigger or smaller. The hand stops at the height where it
 * stopped before; a slower one goes on with the cycles it made last.
 * @returns null where the hand never climbed or would hardly climb any more
 */
export function climbing(columns: Columns, hand: RecordedHand, by_mmps: number): Columns | null {
  const { span, travel_mmps } = hand;
  if (span === null || travel_mmps === null || travel_mmps < SLOWEST_MMPS) return null;
  const rate = (travel_mmps + by_mmps) / travel_mmps;
  if (travel_mmps + by_mmps < SLOWEST_MMPS) return null;
  if (rate === 1) return { ...columns };
  const middle = midLine(columns, hand);
  const top = middle[span.to - 1]!;
  const out = emptyColumns();
  const push = (i: number, y: number): void => {
    out.u.push(columns.u[i]!);
    out.y.push(whole(y));
    out.tip.push(columns.tip[i]!);
    out.work.push(columns.work[i]!);
    out.travel.push(columns.travel[i]!);
    out.trigger.push(columns.trigger[i]!);
  };
  let at = middle[0]!;
  for (let i = 0; i < span.to; i++) {
    if (i > 0) at += rate * (middle[i]! - middle[i - 1]!);
    push(i, at + columns.y[i]! - middle[i]!);
    if (i > span.from && at >= top && columns.trigger[i] === 1) break;
  }
  if (rate < 1) {
    const back = hand.period > 0 ? hand.period : Math.min(STRAIGHT_WINDOW, span.to - span.from);
    const step = travel_mmps + by_mmps;
    for (let m = 0; at < top; m++) {
      const i = span.to - back + (m % back);
      at += step;
      push(i, at + columns.y[i]! - middle[i]!);
    }
  }
  const stopped = out.y[out.y.length - 1]!;
  for (let i = span.to; i < columns.y.length; i++) push(i, stopped + columns.y[i]! - columns.y[span.to - 1]!);
  return out;
}

/** Height of the climbing mid-line at every sample: the mean over one cycle, shorter at the ends, in quanta. */
function midLine(columns: Columns, hand: RecordedHand): Float64Array {
  const n = columns.y.length;
  const sums = new Float64Array(n + 1);
  for (let i = 0; i < n; i++) sums[i + 1] = sums[i]! + columns.y[i]!;
  const half = Math.floor((hand.period > 0 ? hand.period : STRAIGHT_WINDOW) / 2);
  const from = hand.span?.from ?? 0;
  const to = hand.span?.to ?? n;
  const middle = new Float64Array(n);
  for (let i = 0; i < n; i++) {
    const reach = i < from || i >= to ? 0 : Math.min(half, i - from, to - 1 - i);
    middle[i] = (sums[i + reach + 1]! - sums[i - reach]!) / (2 * reach + 1);
  }
  return middle;
}
