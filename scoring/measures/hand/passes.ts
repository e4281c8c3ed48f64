import { POSE_RATE_HZ } from '../../../engine/index.ts';
import { type Span, spanBetween, type Trace } from '../../attempt/trace.ts';

/** A place counts as welded twice when the arc comes back this much later, s, having been this far away, mm. */
const LATER_S = 8;
const AWAY_MM = 12;

/**
 * Length of joint over which the arc came back to metal it had left. A restart drops back at most 10 mm over its crater and fills it
 * (technique), so the arc must have burned AWAY_MM away in between. mm.
 * @param technique stretches of arc that are technique whatever their way: crater fill, and a restart until it is past its stop
 */
export function weldedTwice_mm(trace: Trace, from_mm: number, to_mm: number, technique: readonly Span[] = []): number {
  const y = trace.column('footY_mm');
  const t = trace.column('t_s');
  const bins = Math.max(1, Math.ceil(to_mm - from_mm));
  const left_s = new Float64Array(bins).fill(Number.NaN);
  const lowest = new Float64Array(bins).fill(Number.POSITIVE_INFINITY);
  const highest = new Float64Array(bins).fill(Number.NEGATIVE_INFINITY);
  const twice = new Uint8Array(bins);
  const spared = maskOf(trace, technique);
  for (let i = 0; i < trace.length; i++) {
    if (trace.arcOn[i] === 0 || spared[i] === 1) continue;
    const here = y[i]!;
    const bin = Math.floor(here - from_mm);
    for (let b = 0; b < bins; b++) {
      if (Number.isNaN(left_s[b]!)) continue;
      lowest[b] = Math.min(lowest[b]!, here);
      highest[b] = Math.max(highest[b]!, here);
    }
    if (bin < 0 || bin >= bins) continue;
    const middle = from_mm + bin + 0.5;
    const away = Math.max(highest[bin]! - middle, middle - lowest[bin]!);
    if (t[i]! - left_s[bin]! > LATER_S && away > AWAY_MM) twice[bin] = 1;
    left_s[bin] = t[i]!;
    lowest[bin] = here;
    highest[bin] = here;
  }
  let count = 0;
  for (const b of twice) count += b;
  return count;
}

/** Downward faster than this over some seconds is vertical-down, mm/s. */
const DOWNWARD_MMPS = -0.3;
/** Half the window over which the climb is judged: longer than a weave cycle. s */
const HALF_WINDOW_S = 1.5;

function maskOf(trace: Trace, spans: readonly Span[]): Uint8Array {
  const mask = new Uint8Array(trace.length);
  for (const { from, to } of spans) mask.fill(1, from, to);
  return mask;
}

/**
 * Share of the arc time in which the torch went down the joint, a weave's own ups and downs taken out.
 * @param technique stretches that do not count: a restart drops back into its crater by right
 */
export function downwardShare(trace: Trace, span: Span, technique: readonly Span[] = []): number {
  const y = trace.column('aimY_mm');
  const spared = maskOf(trace, technique);
  const half = Math.round(HALF_WINDOW_S * POSE_RATE_HZ);
  let down = 0;
  let on = 0;
  for (let i = span.from; i < span.to; i++) {
    if (trace.arcOn[i] === 0 || spared[i] === 1) continue;
    on++;
    const a = Math.max(span.from, i - half);
    const b = Math.min(span.to - 1, i + half);
    if (b - a >= half && (y[b]! - y[a]!) / ((b - a) / POSE_RATE_HZ) < DOWNWARD_MMPS) down++;
  }
  return on > 0 ? down / on : 0;
}

/** More of the arc time downward than this is vertical-down. */
const DOWN_SHARE = 0.3;
/** Rising or falling by less than this share of the length, the way is judged by speed. */
const LEAST_RISE = 0.3;
/** An arc that burned for some seconds and rose more slowly than this went nowhere; slow hands climb at 1 mm/s. mm/s */
const NOWHERE_MMPS = 0.4;
/** Samples: 5 s. */
const LONG_ENOUGH = 5 * POSE_RATE_HZ;

/** Up or down the joint, or about it without climbing. */
export type Way = 'up' | 'down' | 'nowhere';

/**
 * Which way the torch went over a length, a weave's own ups and downs and a restart's drop taken out.
 * @param technique as for `downwardShare`
 */
export function wayOf(trace: Trace, length: { from_mm: number; to_mm: number }, technique: readonly Span[]): Way {
  const { from_mm, to_mm } = length;
  const span = spanBetween(trace, from_mm, to_mm);
  if (span === null) return 'up';
  const y = trace.column('aimY_mm');
  const rise_mm = y[span.to - 1]! - y[span.from]!;
  const rise = rise_mm / (to_mm - from_mm);
  if (rise < -LEAST_RISE) return 'down';
  if (rise < LEAST_RISE && span.to - span.from > LONG_ENOUGH) {
    // An arc that stopped soon after it had entered the length rose little of it, but it climbed all the same.
    let on = 0;
    for (let i = span.from; i < span.to; i++) on += trace.arcOn[i]!;
    if (rise_mm / (on / POSE_RATE_HZ) < NOWHERE_MMPS) return 'nowhere';
  }
  return downwardShare(trace, span, technique) > DOWN_SHARE ? 'down' : 'up';
}
