import { POSE_RATE_HZ } from '../../../engine/index.ts';
import type { Span, Trace } from '../../attempt/trace.ts';
import type { Restart, Stop } from '../../schema/motion.ts';
import { milli } from '../precision.ts';

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
function burnsOf(trace: Trace): Burn[] {
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
  const samples = Math.min(Math.round(POSE_RATE_HZ * PLACE_S), span.to - span.from);
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

/** Struck higher than this above the place where the arc went out is above the crater; practice is about 10 mm, no source. */
const LEAST_ABOVE_MM = 3;
/** The arc is back in the crater when it comes down to this close above the place where it went out, mm. */
const BACK_MM = 1;
/** ... within this long of the strike: later it is a pass over the bead. s */
const WITHIN_S = 6;

/**
 * **Restart**: how the arc was taken up again after a stop in mid length. Practice (no source): strike about 10 mm above the crater,
 * drop back into it, fill it, go. `above_mm`: arc foot at the strike over arc foot where the arc went out. `back_mm`: how near above
 * that place (negative: below it) the arc came before it climbed on. `inCrater_s`: arc time at or below it. Read to 1/100 s and to the
 * quanta of the recording; the foot itself is ±0.5 mm, half the arc's own radius (common practice, no source).
 * @param burn the run that went on
 */
function restartOf(trace: Trace, out_mm: number, burn: Burn): Restart {
  const y = trace.column('footY_mm');
  const t = trace.column('t_s');
  const above = burn.struck_mm - out_mm;
  let lowest = Number.POSITIVE_INFINITY;
  let inCrater = 0;
  for (let i = burn.from; i < burn.to && t[i]! - burn.from_s <= WITHIN_S; i++) {
    if (trace.arcOn[i] === 0) continue;
    lowest = Math.min(lowest, y[i]!);
    if (y[i]! <= out_mm + BACK_MM) inCrater++;
  }
  const back = lowest - out_mm;
  return {
    t_s: milli(burn.from_s),
    y_mm: milli(burn.struck_mm),
    above_mm: milli(above),
    back_mm: milli(back),
    inCrater_s: milli(inCrater / POSE_RATE_HZ),
    way: back > BACK_MM ? 'not back' : above < LEAST_ABOVE_MM ? 'on the crater' : 'above and back',
  };
}

/** First sample after which a restarted run has climbed past the place where the arc had gone out. */
function pastStop(trace: Trace, out_mm: number, burn: Burn): number {
  const y = trace.column('footY_mm');
  const t = trace.column('t_s');
  let past = burn.from;
  for (let i = burn.from; i < burn.to && t[i]! - burn.from_s <= WITHIN_S; i++)
    if (y[i]! <= out_mm + BACK_MM) past = i + 1;
  return past;
}

/** A short arc this near the place where the arc went out, along the joint, is struck at the crater. mm; practice, no source. */
const AT_STOP_MM = 6;
/** ... and this soon after the arc before it. s */
const SOON_S = 6;
/** One or two short re-strikes fill a crater (practice, no source); more is tapping. */
const MOST_RESTRIKES = 2;
/** A restart that goes farther below its stop than this is a pass over the bead and not technique, mm. */
const DROP_BACK_MM = 10;

export interface StopsReading {
  stops: Stop[];
  /** Short arcs that are neither crater fill nor a run: the trigger tapped. */
  taps: number;
  /** Stretches that are no run: arc out, and arc burned on technique (re-strikes at a crater, a restart until it is past its stop). */
  breaks: Span[];
  /** Of these, the ones with the arc burning. */
  technique: Span[];
  /** The first arc that was a run. */
  start: Burn | null;
}

/**
 * **Stop**: where a run's arc went out. **Crater fill**: one or two short re-strikes near the stop, soon after it, are technique; three or more,
 * or short arcs anywhere else, are **tapping** and are counted apart. **Restart**: a run after a stop (`restartOf`). Definitions are the
 * project's, from common practice, no source. Times to 1/100 s; the place is where the arc foot was, ±0.5 mm.
 */
export function readStops(trace: Trace): StopsReading {
  const burns = burnsOf(trace);
  const runs = burns.filter((b) => !b.short);
  const out: StopsReading = { stops: [], taps: 0, breaks: outBetween(burns), technique: [], start: runs[0] ?? null };
  if (runs.length === 0) return { ...out, taps: burns.length };
  out.taps = burns.indexOf(runs[0]!);
  for (const [k, run] of runs.entries()) {
    const next = runs[k + 1];
    const shorts = burns.slice(burns.indexOf(run) + 1, next === undefined ? burns.length : burns.indexOf(next));
    const fills = fillsOf(run, shorts);
    out.taps += shorts.length - fills.length;
    out.technique.push(...fills);
    if (next !== undefined) {
      const past = pastStop(trace, run.out_mm, next);
      const lowest = lowestIn(trace, next.from, past);
      if (lowest >= run.out_mm - DROP_BACK_MM && past > next.from) out.technique.push({ from: next.from, to: past });
    }
    const [from, to] = craterSpan(trace, run);
    out.stops.push({
      t_s: milli(run.to_s),
      y_mm: milli(run.out_mm),
      craterFrom_mm: from,
      craterTo_mm: to,
      reStrikes: fills.length,
      reStrikeTime_s: milli(fills.reduce((sum, f) => sum + f.to_s - f.from_s + 1 / POSE_RATE_HZ, 0)),
      out_s: next === undefined ? null : milli(next.from_s - run.to_s),
      restart: next === undefined ? null : restartOf(trace, run.out_mm, next),
    });
  }
  out.breaks = [...out.breaks, ...out.technique].sort((a, b) => a.from - b.from);
  return out;
}

/** Short arcs at the crater, at most two; a third makes all of them taps. */
function fillsOf(run: Burn, shorts: readonly Burn[]): Burn[] {
  const fills: Burn[] = [];
  let before = run.to_s;
  for (const s of shorts) {
    if (Math.abs(s.struck_mm - run.out_mm) > AT_STOP_MM || s.from_s - before > SOON_S) break;
    fills.push(s);
    before = s.to_s;
  }
  return fills.length > MOST_RESTRIKES ? [] : fills;
}

/** Lowest and highest liquid of the puddle when the arc went out: the crater is what freezes there. */
function craterSpan(trace: Trace, run: Burn): [number | null, number | null] {
  const bottom = trace.column('puddleBottom_mm');
  const top = trace.column('puddleTop_mm');
  for (let i = run.to - 1; i >= Math.max(run.from, run.to - 20); i--) {
    if (!Number.isNaN(bottom[i]!) && !Number.isNaN(top[i]!)) return [milli(bottom[i]!), milli(top[i]!)];
  }
  return [null, null];
}

function outBetween(burns: readonly Burn[]): Span[] {
  const out: Span[] = [];
  for (let k = 1; k < burns.length; k++) out.push({ from: burns[k - 1]!.to, to: burns[k]!.from });
  return out;
}

function lowestIn(trace: Trace, from: number, to: number): number {
  const y = trace.column('footY_mm');
  let lowest = Number.POSITIVE_INFINITY;
  for (let i = from; i < to; i++) lowest = Math.min(lowest, y[i]!);
  return lowest;
}
