import { POSE_RATE_HZ } from '../../../engine/index.ts';
import type { Span, Trace } from '../../attempt/trace.ts';
import { median } from '../statistics.ts';

/** The hand's middle way up the joint: its aim with the weave's own to and fro averaged out, one entry a sample. */
export interface Midline {
  span: Span;
  u_mm: Float64Array;
  y_mm: Float64Array;
  /** Entries at either end that are no mean over a whole cycle. */
  ends: number;
}

/** Stretches of a span with the arc burning and the hand on its run: what lies between the breaks. Shorter than this they say nothing. s */
const LEAST_S = 1;

export function runsIn(trace: Trace, span: Span, breaks: readonly Span[]): Span[] {
  const out: Span[] = [];
  let from = -1;
  const free = (i: number): boolean =>
    i < span.to && trace.arcOn[i] === 1 && !breaks.some((b) => i >= b.from && i < b.to);
  for (let i = span.from; i <= span.to; i++) {
    if (free(i)) {
      if (from < 0) from = i;
    } else if (from >= 0) {
      if (i - from >= LEAST_S * POSE_RATE_HZ) out.push({ from, to: i });
      from = -1;
    }
  }
  return out;
}

/** Mean of the aim over one cycle round each sample; at the ends over what there is. @param cycle_s length of a cycle */
export function midlineOf(trace: Trace, run: Span, cycle_s: number): Midline {
  const half = Math.max(1, Math.round((cycle_s * POSE_RATE_HZ) / 2));
  return {
    span: run,
    u_mm: smoothed(trace.column('aimU_mm'), run, half),
    y_mm: smoothed(trace.column('aimY_mm'), run, half),
    ends: Math.min(half, run.to - run.from),
  };
}

function smoothed(values: Float64Array, run: Span, half: number): Float64Array {
  const n = run.to - run.from;
  const sums = new Float64Array(n + 1);
  for (let i = 0; i < n; i++) sums[i + 1] = sums[i]! + values[run.from + i]!;
  const out = new Float64Array(n);
  for (let i = 0; i < n; i++) {
    // As far to one side as to the other, so that a climb is not bent at the ends.
    const reach = Math.min(half, i, n - 1 - i);
    out[i] = (sums[i + reach + 1]! - sums[i - reach]!) / (2 * reach + 1);
  }
  return out;
}

/** Samples apart over which a bend of the aim is read, and what a wandering aim of rms 1 mm reads there (median, see below). */
const BEND = Math.round(0.02 * POSE_RATE_HZ);
const BEND_OF_WANDER = 0.49;

/**
 * **Shake**: rms of the aim's wander, mm, read from how much it bends within a few hundredths of a second. A stroke of a weave is straight there, and
 * its corners are too few to move the median. The factor is that of a first-order wander with a time constant of 0.15 s:
 * `0.6745 sqrt(6 - 8 r + 2 r²)` with `r = exp(-2/15)`.
 */
export function shakeOf(trace: Trace, runs: readonly Span[]): number {
  const bends: number[] = [];
  for (const column of [trace.column('aimU_mm'), trace.column('aimY_mm')]) {
    for (const run of runs) {
      for (let i = run.from + BEND; i < run.to - BEND; i++)
        bends.push(Math.abs(column[i - BEND]! - 2 * column[i]! + column[i + BEND]!));
    }
  }
  return (median(bends) ?? 0) / BEND_OF_WANDER;
}
