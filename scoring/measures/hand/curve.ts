import { POSE_RATE_HZ } from '../../../engine/index.ts';
import type { Span, Trace } from '../../attempt/trace.ts';
import type { ToeVisit } from '../../schema/motion.ts';
import { median, quantile } from '../statistics.ts';
import { type Midline, midlineOf, runsIn, shakeOf } from './midline.ts';
import { type Mishaps, mishapsOf } from './mishaps.ts';
import { type Turn, turnsOf } from './swings.ts';
import { toeVisits } from './toes.ts';

/** One reading of the hand at a height of the joint. */
export interface Reading {
  y_mm: number;
  t_s: number;
  value: number;
}

/**
 * What the hand did along the joint, read from the aim alone: nothing of it depends on what the model made of it. Read the same way off a
 * recording and off a demonstration, so that the two can be held against each other. An empty list: not there to read.
 */
export interface HandCurve {
  travel_mmps: readonly Reading[];
  period_s: readonly Reading[];
  width_mm: readonly Reading[];
  /** Aim at each toe, from the root. */
  reachA_mm: readonly Reading[];
  reachB_mm: readonly Reading[];
  pauseA_s: readonly Reading[];
  pauseB_s: readonly Reading[];
  /** Aim at the crossings above the straight line from toe to toe. */
  ahead_mm: readonly Reading[];
  /** Middle of the weave, right of the root. */
  centre_mm: readonly Reading[];
  tipToWork_mm: readonly Reading[];
  workAngle_deg: readonly Reading[];
  travelAngle_deg: readonly Reading[];
  /** Spread of the cycles, half the middle two thirds over the median: one cycle that went wrong does not move it. */
  periodCv: number | null;
  /** Rms wander of the aim. */
  shake_mm: number;
  mishaps: Mishaps;
}

export interface CurveQuestion {
  /** Stretches that are no run. */
  breaks: readonly Span[];
  /** Only the upper root crossing of a cycle counts (looping triangle). */
  upperOnly: boolean;
}

/** Cycle of a hand that does not weave, for averaging. s */
const NO_CYCLE_S = 1;
/** One reading of what is held or climbed each so many samples. */
const EACH = POSE_RATE_HZ / 4;
/** Travel is the middle way's rise over this long. s */
const PACE_S = 3;
/** Fewer turns than this are no weave. */
const LEAST_TURNS = 7;

export function curveOf(trace: Trace, span: Span, q: CurveQuestion): HandCurve {
  const runs = runsIn(trace, span, q.breaks);
  const found = runs.map((run) => turnsOf(trace, run));
  const weaves = found.reduce((n, turns) => n + turns.length, 0) >= LEAST_TURNS;
  const byRun = weaves ? found : found.map(() => []);
  const visits = byRun.map((turns) => toeVisits(trace, turns, (k) => Math.floor(k / 2) + 1));
  const period_s = visits.flatMap(periods);
  const cycle_s = median(period_s.map((p) => p.value)) ?? NO_CYCLE_S;
  const lines = runs.map((run) => midlineOf(trace, run, cycle_s));
  const t = trace.column('t_s');
  const periodCv = spreadOf(period_s.map((p) => p.value));
  const reach = (toe: 'A' | 'B'): Reading[] =>
    visits
      .flat()
      .filter((v) => v.toe === toe)
      .map((v) => ({ y_mm: v.y_mm, t_s: v.from_s, value: v.reach_mm }));
  const pause = (toe: 'A' | 'B'): Reading[] =>
    visits
      .flat()
      .filter((v) => v.toe === toe)
      .map((v) => ({ y_mm: v.y_mm, t_s: v.to_s, value: v.pause_s }));
  return {
    travel_mmps: lines.flatMap((line) => pace(line, t)),
    period_s,
    width_mm: visits.flatMap(widths),
    reachA_mm: reach('A'),
    reachB_mm: reach('B'),
    pauseA_s: pause('A'),
    pauseB_s: pause('B'),
    ahead_mm: byRun.flatMap((turns) => ahead(trace, turns, q.upperOnly)),
    centre_mm: weaves ? visits.flatMap(centres) : lines.flatMap((line) => sampled(line, t, line.u_mm)),
    tipToWork_mm: runs.flatMap((run) => held(trace, run, 'tipToWork_mm')),
    workAngle_deg: runs.flatMap((run) => held(trace, run, 'workAngle_deg')),
    travelAngle_deg: runs.flatMap((run) => held(trace, run, 'travelAngle_deg')),
    periodCv,
    shake_mm: shakeOf(trace, runs),
    mishaps: mishapsOf(trace, lines, visits, cycle_s, periodCv ?? 0),
  };
}

function spreadOf(values: readonly number[]): number | null {
  const middle = median(values);
  if (middle === null || middle <= 0 || values.length < 4) return null;
  return (quantile(values, 0.84) - quantile(values, 0.16)) / 2 / middle;
}

/** From a toe to the same toe again. */
function periods(visits: readonly ToeVisit[]): Reading[] {
  const out: Reading[] = [];
  for (const toe of ['A', 'B'] as const) {
    const own = visits.filter((v) => v.toe === toe);
    for (let k = 1; k < own.length; k++) {
      const middle = (v: ToeVisit): number => (v.from_s + v.to_s) / 2;
      out.push({ y_mm: own[k]!.y_mm, t_s: own[k]!.from_s, value: middle(own[k]!) - middle(own[k - 1]!) });
    }
  }
  return out;
}

function widths(visits: readonly ToeVisit[]): Reading[] {
  const out: Reading[] = [];
  for (let k = 1; k < visits.length; k++) {
    const [a, b] = [visits[k - 1]!, visits[k]!];
    if (a.toe !== b.toe) out.push({ y_mm: b.y_mm, t_s: b.from_s, value: a.reach_mm + b.reach_mm });
  }
  return out;
}

function centres(visits: readonly ToeVisit[]): Reading[] {
  const out: Reading[] = [];
  for (let k = 1; k < visits.length; k++) {
    const [a, b] = [visits[k - 1]!, visits[k]!];
    if (a.toe === b.toe) continue;
    const [right, left] = a.toe === 'A' ? [a, b] : [b, a];
    out.push({ y_mm: b.y_mm, t_s: b.from_s, value: (right.reach_mm - left.reach_mm) / 2 });
  }
  return out;
}

/** Where the aim stands halfway from toe to toe, above the line between them. */
function ahead(trace: Trace, turns: readonly Turn[], upperOnly: boolean): Reading[] {
  const u = trace.column('aimU_mm');
  const y = trace.column('aimY_mm');
  const t = trace.column('t_s');
  const out: Reading[] = [];
  for (let k = 0; k + 1 < turns.length; k++) {
    const from = turns[k]!.at;
    const to = turns[k + 1]!.at;
    const middle = (u[from]! + u[to]!) / 2;
    const falling = u[from]! > u[to]!;
    let at = from;
    while (at < to && (falling ? u[at]! > middle : u[at]! < middle)) at++;
    const chord = y[from]! + ((y[to]! - y[from]!) * (at - from)) / Math.max(1, to - from);
    out.push({ y_mm: y[at]!, t_s: t[at]!, value: y[at]! - chord });
  }
  if (!upperOnly) return out;
  const upper: Reading[] = [];
  for (let k = 0; k + 1 < out.length; k += 2) upper.push(out[k]!.value > out[k + 1]!.value ? out[k]! : out[k + 1]!);
  return upper;
}

function pace(line: Midline, t: Float64Array): Reading[] {
  const n = line.y_mm.length;
  const half = Math.max(1, Math.min(Math.round((PACE_S * POSE_RATE_HZ) / 2), Math.floor(n / 2) - line.ends - 1));
  const out: Reading[] = [];
  for (let i = half + line.ends; i + half + line.ends < n; i += EACH) {
    const rise = line.y_mm[i + half]! - line.y_mm[i - half]!;
    out.push({ y_mm: line.y_mm[i]!, t_s: t[line.span.from + i]!, value: (rise * POSE_RATE_HZ) / (2 * half) });
  }
  return out;
}

function sampled(line: Midline, t: Float64Array, values: Float64Array): Reading[] {
  const out: Reading[] = [];
  for (let i = line.ends; i + line.ends < values.length; i += EACH)
    out.push({ y_mm: line.y_mm[i]!, t_s: t[line.span.from + i]!, value: values[i]! });
  return out;
}

function held(trace: Trace, run: Span, name: 'tipToWork_mm' | 'workAngle_deg' | 'travelAngle_deg'): Reading[] {
  const values = trace.column(name);
  const y = trace.column('aimY_mm');
  const t = trace.column('t_s');
  const out: Reading[] = [];
  for (let i = run.from; i < run.to; i += EACH)
    if (!Number.isNaN(values[i]!)) out.push({ y_mm: y[i]!, t_s: t[i]!, value: values[i]! });
  return out;
}
