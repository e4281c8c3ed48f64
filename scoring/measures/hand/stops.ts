import type { Span, Trace } from '../../attempt/trace.ts';
import type { Stop } from '../../schema/motion.ts';
import { milli } from '../round.ts';
import { type Burn, burnsOf } from './burns.ts';
import { pastStop, restartOf } from './restart.ts';

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
 * or short arcs anywhere else, are **tapping** and are counted apart. **Restart**: a run after a stop (restart.ts). Definitions are the
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
      reStrikeTime_s: milli(fills.reduce((sum, f) => sum + f.to_s - f.from_s + 0.01, 0)),
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
