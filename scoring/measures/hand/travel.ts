import { POSE_RATE_HZ } from '../../../engine/index.ts';
import type { Span, Trace } from '../../attempt/trace.ts';
import { slope } from '../statistics.ts';

/**
 * **Travel speed**: slope of the aim's height over arc time, mm/s; negative downward. **Drift**: travel over the top third of the stretch
 * less that over the bottom third. Mean of manual welds as EN 1011-1 takes it: length over arc time.
 * @param breaks stretches taken out of the clock: arc out at a stop, crater fill, a restart until it is past its stop
 */
export function travel(
  trace: Trace,
  span: Span,
  breaks: readonly Span[] = [],
): { travel_mmps: number | null; drift_mmps: number | null } {
  const third = (span.to - span.from) / 3;
  const whole = slopeOf(trace, span, breaks);
  if (third < POSE_RATE_HZ) return { travel_mmps: whole, drift_mmps: null };
  const low = slopeOf(trace, { from: span.from, to: Math.round(span.from + third) }, breaks);
  const high = slopeOf(trace, { from: Math.round(span.to - third), to: span.to }, breaks);
  return { travel_mmps: whole, drift_mmps: low === null || high === null ? null : high - low };
}

function slopeOf(trace: Trace, span: Span, breaks: readonly Span[]): number | null {
  const t: number[] = [];
  const y: number[] = [];
  const waits = breaks.filter((b) => b.to > span.from && b.from < span.to);
  let next = 0;
  let out = 0;
  for (let i = span.from; i < span.to; i++) {
    while (next < waits.length && waits[next]!.to <= i) next++;
    const wait = waits[next];
    if (wait !== undefined && i >= wait.from) {
      out++;
      continue;
    }
    if (trace.arcOn[i] === 0) continue;
    t.push(trace.column('t_s')[i]! - out / POSE_RATE_HZ);
    y.push(trace.column('aimY_mm')[i]!);
  }
  return t.length < 20 ? null : slope(t, y);
}

/** Mean of a column while the arc burned, and how much it grew from the bottom third to the top third. */
export function held(
  trace: Trace,
  span: Span,
  name: 'tipToWork_mm' | 'workAngle_deg' | 'travelAngle_deg',
): { mean: number | null; drift: number | null } {
  const values = trace.column(name);
  const third = (span.to - span.from) / 3;
  const mean = meanOf(trace, values, span.from, span.to);
  const low = meanOf(trace, values, span.from, Math.round(span.from + third));
  const high = meanOf(trace, values, Math.round(span.to - third), span.to);
  return { mean, drift: low === null || high === null ? null : high - low };
}

function meanOf(trace: Trace, values: Float64Array, from: number, to: number): number | null {
  let sum = 0;
  let count = 0;
  for (let i = from; i < to; i++) {
    if (trace.arcOn[i] === 0 || Number.isNaN(values[i]!)) continue;
    sum += values[i]!;
    count++;
  }
  return count > 0 ? sum / count : null;
}
