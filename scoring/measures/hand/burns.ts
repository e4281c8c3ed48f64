import type { Span, Trace } from '../../attempt/trace.ts';

/** Breaks shorter than this are the arc's own stutter, not the trigger let go. s */
const LEAST_BREAK_S = 0.25;
/** The arc's place at its start and at its end is a mean over this long, so that one sample does not decide. s */
const PLACE_S = 0.1;
/** An arc no longer than this that went nowhere is a short one: a re-strike or a tap. s, mm. Common practice, no source. */
const SHORT_S = 1.2;
const SHORT_WAY_MM = 5;

/** One unbroken arc. */
export interface Burn extends Span {
  from_s: number;
  to_s: number;
  /** Arc foot where it was struck and where it went out, mm up the joint. */
  struck_mm: number;
  out_mm: number;
  /** A re-strike or a tap, by its time and way; a run otherwise. */
  short: boolean;
}

/** The arcs of an attempt in order of time, parted where the arc was out for a quarter of a second or more. */
export function burnsOf(trace: Trace): Burn[] {
  const spans: Span[] = [];
  const t = trace.column('t_s');
  for (let i = 0; i < trace.length; i++) {
    if (trace.arcOn[i] === 0) continue;
    const last = spans[spans.length - 1];
    if (last !== undefined && t[i]! - t[last.to - 1]! < LEAST_BREAK_S) last.to = i + 1;
    else spans.push({ from: i, to: i + 1 });
  }
  return spans.map((span) => asBurn(trace, span));
}

function asBurn(trace: Trace, span: Span): Burn {
  const y = trace.column('footY_mm');
  const t = trace.column('t_s');
  const samples = Math.min(Math.round(100 * PLACE_S), span.to - span.from);
  const meanOf = (from: number): number => {
    let sum = 0;
    for (let i = from; i < from + samples; i++) sum += y[i]!;
    return sum / samples;
  };
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (let i = span.from; i < span.to; i++) {
    low = Math.min(low, y[i]!);
    high = Math.max(high, y[i]!);
  }
  return {
    ...span,
    from_s: t[span.from]!,
    to_s: t[span.to - 1]!,
    struck_mm: meanOf(span.from),
    out_mm: meanOf(span.to - samples),
    short: t[span.to - 1]! - t[span.from]! <= SHORT_S && high - low <= SHORT_WAY_MM,
  };
}
