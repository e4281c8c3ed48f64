import type { DeviceInfo } from '../../../engine/index.ts';
import type { Span, Trace } from '../../attempt/trace.ts';
import type { Gap } from '../../schema/gap.ts';
import type { Band } from '../../schema/leeway.ts';
import type { Motion, ToeVisit } from '../../schema/motion.ts';
import { milli, tenth } from '../precision.ts';
import { mean, variation } from '../statistics.ts';
import { beatShare } from './beat.ts';
import { alongRoot, rootCrossings } from './crossings.ts';
import { type Turn, turnsOf } from './swings.ts';
import { toeVisits } from './toes.ts';
import { held, travel } from './travel.ts';

/** What the hand did, and what of it could not be measured, with the reason. */
export interface HandReading {
  motion: Motion;
  notMeasured: Gap[];
}

/** What has to be known besides the trace to read a hand. */
export interface HandQuestion {
  device: DeviceInfo;
  lead: Band;
  /** Only the upper root crossing of a cycle counts (looping triangle). */
  upperOnly: boolean;
  /** Stretches that are no run, as `readStops` gives them. */
  breaks: readonly Span[];
}

/** Fewer cycles than this are no weave to speak of. */
const LEAST_CYCLES = 3;

/**
 * Reads the hand over a stretch of the attempt, from the trace alone; knows nothing of any pattern's shape.
 * @param span stretch to read, or null where the arc never burned in it
 */
export function readHand(trace: Trace, span: Span | null, q: HandQuestion): HandReading {
  const notMeasured: Gap[] = [];
  if (span === null) {
    return {
      motion: emptyMotion(),
      notMeasured: [{ what: 'motion', why: 'arc never burned' }],
    };
  }
  const turns = turnsOf(trace, span);
  const whole = turns.length - 2 > 2 * LEAST_CYCLES - 1;
  const cycleOf = (turn: number): number => Math.floor(turn / 2) + 1;
  const visits = whole ? toeVisits(trace, turns, cycleOf) : [];
  const crossings = whole ? rootCrossings(trace, turns, cycleOf, q.lead, q.upperOnly) : alongRoot(trace, span, q.lead);
  const leads = crossings.flatMap((c) => (c.lead_mm === null ? [] : [c.lead_mm]));
  if (leads.length === 0) {
    notMeasured.push({
      what: 'arc on front',
      why: whole ? 'no puddle crossed' : 'no puddle under arc',
    });
  }
  const { breaks } = q;
  const { travel_mmps, drift_mmps } = travel(trace, span, breaks);
  const motion: Motion = {
    ...emptyMotion(),
    arcOnFrontShare: leads.length > 0 ? milli(crossings.filter((c) => c.onFront === true).length / leads.length) : null,
    lead_mm: rounded(mean(leads)),
    travel_mmps: rounded(travel_mmps),
    travelDrift_mmps: rounded(drift_mmps),
    crossings,
    ...(whole ? weave(trace, span, turns, visits, breaks) : {}),
  };
  if (!whole) {
    notMeasured.push(
      turns.length === 0
        ? { what: 'weave', why: 'straight run' }
        : { what: 'weave', why: 'too few cycles', least: LEAST_CYCLES },
    );
  }
  heldReadings(trace, span, q.device, motion, notMeasured);
  return { motion, notMeasured };
}

function weave(
  trace: Trace,
  span: Span,
  turns: readonly Turn[],
  visits: ToeVisit[],
  breaks: readonly Span[],
): Partial<Motion> {
  const ofToe = (toe: 'A' | 'B'): ToeVisit[] => visits.filter((v) => v.toe === toe);
  const a = ofToe('A');
  const b = ofToe('B');
  const stops_s = breaks.map((w) => trace.column('t_s')[w.from]!);
  const periods = [...gaps(a, middle, stops_s), ...gaps(b, middle, stops_s)];
  const steps = [...gaps(a, (v) => v.y_mm, stops_s), ...gaps(b, (v) => v.y_mm, stops_s)];
  const period = mean(periods);
  const reachA = mean(a.map((v) => v.reach_mm));
  const reachB = mean(b.map((v) => v.reach_mm));
  return {
    reachA_mm: rounded(reachA),
    reachB_mm: rounded(reachB),
    pauseA_s: rounded(mean(a.map((v) => v.pause_s))),
    pauseB_s: rounded(mean(b.map((v) => v.pause_s))),
    toeFilledShareA: filledShare(a),
    toeFilledShareB: filledShare(b),
    period_s: rounded(period),
    periodCv: rounded(variation(periods)),
    beatShare: period === null ? null : rounded(beatShare(trace, span, period)),
    width_mm: reachA === null || reachB === null ? null : milli(reachA + reachB),
    stepUp_mm: rounded(mean(steps)),
    stepUpCv: rounded(variation(steps)),
    cycles: Math.floor((turns.length - 1) / 2),
    toes: visits,
  };
}

function middle(v: ToeVisit): number {
  return (v.from_s + v.to_s) / 2;
}

/** From visit to visit; a stop in between belongs to neither cycle. */
function gaps(visits: readonly ToeVisit[], of: (v: ToeVisit) => number, stops_s: readonly number[]): number[] {
  const out: number[] = [];
  for (let i = 1; i < visits.length; i++) {
    const before = visits[i - 1]!;
    const here = visits[i]!;
    if (stops_s.some((t) => t > before.from_s && t < here.to_s)) continue;
    out.push(of(here) - of(before));
  }
  return out;
}

function filledShare(visits: readonly ToeVisit[]): number | null {
  const known = visits.filter((v) => v.filled !== null);
  return known.length > 0 ? milli(known.filter((v) => v.filled === true).length / known.length) : null;
}

function heldReadings(trace: Trace, span: Span, device: DeviceInfo, motion: Motion, notMeasured: Gap[]): void {
  const why = { why: 'held by exercise', device: device.kind } as const;
  if (device.measures.tipToWork) {
    const tip = held(trace, span, 'tipToWork_mm');
    motion.tipToWork_mm = rounded(tip.mean);
    motion.tipToWorkDrift_mm = rounded(tip.drift);
  } else notMeasured.push({ what: 'tip to work', ...why });
  if (device.measures.workAngle) motion.workAngle_deg = inTenths(held(trace, span, 'workAngle_deg').mean);
  else notMeasured.push({ what: 'work angle', ...why });
  if (device.measures.travelAngle) {
    const angle = held(trace, span, 'travelAngle_deg');
    motion.travelAngle_deg = inTenths(angle.mean);
    motion.travelAngleDrift_deg = inTenths(angle.drift);
  } else notMeasured.push({ what: 'travel angle', ...why });
}

function rounded(x: number | null): number | null {
  return x === null ? null : milli(x);
}

function inTenths(x: number | null): number | null {
  return x === null ? null : tenth(x);
}

/** A hand of which nothing is read. */
export function emptyMotion(): Motion {
  return {
    arcOnFrontShare: null,
    lead_mm: null,
    reachA_mm: null,
    reachB_mm: null,
    pauseA_s: null,
    pauseB_s: null,
    toeFilledShareA: null,
    toeFilledShareB: null,
    period_s: null,
    periodCv: null,
    beatShare: null,
    width_mm: null,
    stepUp_mm: null,
    stepUpCv: null,
    travel_mmps: null,
    travelDrift_mmps: null,
    tipToWork_mm: null,
    tipToWorkDrift_mm: null,
    workAngle_deg: null,
    travelAngle_deg: null,
    travelAngleDrift_deg: null,
    cycles: 0,
    crossings: [],
    toes: [],
    start: null,
    stops: [],
    taps: 0,
  };
}
