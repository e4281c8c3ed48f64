import { margin, worse } from '../lines/limit.ts';
import type { HandTarget } from '../schema/exercise.ts';
import type { Band } from '../schema/leeway.ts';
import type { Motion } from '../schema/motion.ts';
import type { Line, Verdict } from '../schema/result.ts';
import type { FoundReason } from './found.ts';

/** The worst line decides; a reason against judging goes before all lines. The hand has no say. */
export function verdictOf(lines: readonly Line[], reasons: readonly FoundReason[]): Verdict {
  if (reasons.length > 0 || lines.length === 0) return 'no verdict';
  return lines.map((l) => l.verdict).reduce(worse);
}

/** Share of the bead in the number; the rest is the hand's. */
const BEAD_SHARE = 0.75;
/** A weld within its limits never reads lower than this, whatever the hand looked like. */
const FLOOR_WITHIN = 80;

/**
 * 0 to 100 for the trend of one hand at one exercise, null without a verdict; no mark and no pass. Three quarters from how far the
 * lines stand inside or outside their limits in units of their own plus-minus, one quarter from the hand against the exercise's bands.
 */
export function trendScore(
  verdict: Verdict,
  lines: readonly Line[],
  motion: Motion,
  target: HandTarget,
): number | null {
  if (verdict === 'no verdict' || lines.length === 0) return null;
  const marks = lines.map(lineMark);
  const bead = 0.6 * average(marks) + 0.4 * Math.min(...marks);
  const hand = handMark(motion, target);
  const number = hand === null ? bead : BEAD_SHARE * bead + (1 - BEAD_SHARE) * hand;
  const score = Math.round(100 * number);
  return verdict === 'within' ? Math.max(FLOOR_WITHIN, score) : score;
}

/** 0.5 on the limit, towards 1 inside and 0 outside; smooth, so that a worse reading always counts a little. */
function lineMark(l: Line): number {
  const x = margin(l.reading, l.limit, l.sense) / (2 * Math.max(l.plusMinus, 1e-3));
  return 0.5 + (0.5 * x) / (1 + Math.abs(x));
}

function handMark(m: Motion, target: HandTarget): number | null {
  const marks: number[] = [];
  const share = (x: number | null): void => {
    if (x !== null) marks.push(x);
  };
  const inBand = (x: number | null, band: Band | null): void => {
    if (x === null || band === null) return;
    const half = Math.max((band.to - band.from) / 2, 1e-3);
    const off = Math.max(band.from - x, x - band.to, 0);
    marks.push(1 / (1 + off / half));
  };
  share(m.arcOnFrontShare);
  share(m.toeFilledShareA);
  share(m.toeFilledShareB);
  inBand(m.pauseA_s, target.pauseA_s);
  inBand(m.pauseB_s, target.pauseB_s);
  inBand(m.width_mm, target.width_mm);
  inBand(m.travel_mmps, target.travel_mmps);
  inBand(m.period_s === null ? null : 1 / m.period_s, target.cyclesPerSecond);
  if (m.periodCv !== null) marks.push(Math.max(0, 1 - m.periodCv / 0.4));
  inBand(m.tipToWork_mm, target.tipToWork_mm);
  inBand(m.workAngle_deg, target.workAngle_deg);
  inBand(m.travelAngle_deg, target.travelAngle_deg);
  return marks.length > 0 ? average(marks) : null;
}

function average(values: readonly number[]): number {
  let sum = 0;
  for (const v of values) sum += v;
  return sum / values.length;
}
