import { milli, plusMinusAt } from '../measures/precision.ts';
import type { BeadStop } from '../schema/ends.ts';
import { sizeAsked } from '../schema/exercise.ts';
import { craterMeasures, type Profile, type Rule } from '../schema/profile.ts';
import type { Line } from '../schema/result.ts';
import { compare, limitValue, margin, perMm, type Sense, worse } from './limit.ts';
import type { LineQuestion } from './readers.ts';

/** The rule limits a crater. */
export function isCraterRule(rule: Rule): boolean {
  return (craterMeasures as readonly string[]).includes(rule.measure);
}

interface CraterPoint {
  y_mm: number;
  reading: number;
  plusMinus: number;
  limit: number;
  verdict: Line['verdict'];
}

/**
 * The line of a crater rule: "crater depth 0.4, at most 0.6", or "leg at the crater 5.6, at least 5". The worst crater of the judged length decides;
 * no line where no run stopped in it.
 */
export function craterLine(profile: Profile, rule: Rule, q: LineQuestion): Line[] {
  const scale = perMm(profile.unit);
  const asSize = rule.measure === 'crater short';
  const sense: Sense = asSize ? 'at least' : 'at most';
  const points = (q.stops ?? []).flatMap((stop) => pointOf(stop, rule, q, scale, sense) ?? []);
  const first = points[0];
  if (first === undefined) return [];
  const worst = points.reduce((a, b) =>
    margin(b.reading, b.limit, sense) < margin(a.reading, a.limit, sense) ? b : a,
  );
  const round = profile.unit === 'in' ? (x: number): number => Math.round(x * 10000) / 10000 + 0 : milli;
  return [
    {
      measure: asSize ? 'leg at the crater' : 'crater depth',
      side: null,
      reading: round(worst.reading),
      plusMinus: round(worst.plusMinus),
      unit: profile.unit,
      limit: round(worst.limit),
      sense,
      rule: rule.clause,
      status: rule.status,
      verdict: points.map((p) => p.verdict).reduce(worse),
      y_mm: worst.y_mm,
      places: points.filter((p) => p.verdict !== 'within').map((p) => ({ from_mm: p.y_mm, to_mm: p.y_mm })),
    },
  ];
}

function pointOf(stop: BeadStop, rule: Rule, q: LineQuestion, scale: number, sense: Sense): CraterPoint | null {
  const size = sizeAsked(q.asked);
  const limit = limitValue(rule.limit, {
    plate: Math.min(q.joint.plateA_mm, q.joint.plateB_mm) * scale,
    throat: size.throat_mm * scale,
    face: 0,
    leg: size.leg_mm * scale,
  });
  if (rule.measure === 'crater short') {
    if (stop.leastSize_mm === null || stop.leastSizeAt_mm === null) return null;
    const asked = size.leg_mm * scale;
    const reading = stop.leastSize_mm * scale;
    const plusMinus = plusMinusAt('leg', q.cell_mm, q.run) * scale;
    // Nothing is permitted to be missing; a crater that is full to the size asked is within, as everywhere.
    const verdict =
      rule.limit.form === 'none' && reading >= asked ? 'within' : compare(reading, plusMinus, asked - limit, sense);
    return { y_mm: stop.leastSizeAt_mm, reading, plusMinus, limit: asked - limit, verdict };
  }
  if (stop.craterDepth_mm === null || stop.craterAt_mm === null) return null;
  const reading = stop.craterDepth_mm * scale;
  const plusMinus = stop.plusMinus_mm * scale;
  const verdict = rule.limit.form === 'none' && reading <= 0 ? 'within' : compare(reading, plusMinus, limit, sense);
  return { y_mm: stop.craterAt_mm, reading, plusMinus, limit, verdict };
}
