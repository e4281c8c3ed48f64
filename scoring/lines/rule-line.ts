import type { JointOptions } from '../../engine/index.ts';
import { milli, plusMinusAt, tenth } from '../measures/precision.ts';
import { type SizeAsked, sizeAsked } from '../schema/exercise.ts';
import { type LineMeasure, lengthOf, type Profile, type Rule, type RunMeasure } from '../schema/profile.ts';
import type { Line, LineVerdict } from '../schema/result.ts';
import type { Station } from '../schema/station.ts';
import { craterLine, isCraterRule } from './crater-line.ts';
import { compare, limitValue, MM_PER_INCH, margin, perMm, type Sense, worse } from './limit.ts';
import { COUNTS_FROM_MM, type LineQuestion, type MeasureReader, readers } from './readers.ts';

/** One station's reading against one rule, in the profile's unit. */
interface Point {
  y_mm: number;
  reading: number;
  limit: number;
  verdict: LineVerdict;
}

/** Lines of a whole profile; the worst station decides each. */
export function profileLines(profile: Profile, q: LineQuestion): Line[] {
  if (q.stations.length === 0) return [];
  const lines: Line[] = [];
  for (const rule of profile.rules) {
    if (isCraterRule(rule)) {
      if (applies(rule, plateOf(q.joint, null), profile)) lines.push(...craterLine(profile, rule, q));
      continue;
    }
    const reader = readers[rule.measure as RunMeasure];
    for (const side of reader.sided ? (['A', 'B'] as const) : ([null] as const)) {
      if (!applies(rule, plateOf(q.joint, side), profile)) continue;
      lines.push(...ruleLines(profile, rule, reader, side, q));
    }
  }
  return lines;
}

/** The rule holds for a plate of this thickness. */
function applies(rule: Rule, plate_mm: number, profile: Profile): boolean {
  const plate = plate_mm / (profile.unit === 'in' ? MM_PER_INCH : 1);
  return plate > rule.plates.over && (rule.plates.upTo === null || plate <= rule.plates.upTo);
}

function plateOf(joint: JointOptions, side: 'A' | 'B' | null): number {
  if (side === null) return Math.min(joint.plateA_mm, joint.plateB_mm);
  return side === 'A' ? joint.plateA_mm : joint.plateB_mm;
}

function ruleLines(
  profile: Profile,
  rule: Rule,
  reader: MeasureReader,
  side: 'A' | 'B' | null,
  q: LineQuestion,
): Line[] {
  const unit = reader.unit === 'deg' ? 'deg' : profile.unit;
  const scale = perMm(unit);
  const size = sizeAsked(q.asked);
  const plusMinus = plusMinusAt(reader.plusMinus, q.cell_mm, q.run) * scale;
  const sense: Sense = rule.limit.form === 'floor' ? 'at least' : 'at most';
  const length = q.joint.length_mm / (profile.unit === 'in' ? MM_PER_INCH : 1);
  const raise = depthAllowance(rule, length);
  const raw = q.stations.map((s) => reader.read(s, side ?? 'A', size, q.joint) * scale);
  const readings = reader.over === undefined ? raw : meansOver(raw, q, reader.over);
  const points = q.stations.map((s, i): Point => {
    const reading = readings[i]!;
    const limit = stationLimit(rule, s, size, plateOf(q.joint, side), scale, raise);
    return { y_mm: s.y_mm, reading, limit, verdict: verdictAt(rule, reading, plusMinus, limit, sense) };
  });
  const shown =
    reader.shown === undefined
      ? { points, sense }
      : asSize(points, reader.line === 'leg', reader.shown.short, size, scale);
  const line = lineOf(rule, reader.line, side, shown.points, plusMinus, unit, shown.sense, q.step_mm);
  const along = lengthLine(rule, side, q, points, plusMinus, size, scale, line, length);
  return along === null ? [line] : [line, along];
}

/** Readings of what is short of or over a size, turned into readings of the size. */
function asSize(
  points: readonly Point[],
  asLeg: boolean,
  short: boolean,
  size: SizeAsked,
  scale: number,
): { points: Point[]; sense: Sense } {
  const asked = (asLeg ? size.leg_mm : size.throat_mm) * scale;
  const sign = short ? -1 : 1;
  return {
    points: points.map((p) => ({ ...p, reading: asked + sign * p.reading, limit: asked + sign * p.limit })),
    sense: short ? 'at least' : 'at most',
  };
}

/** Mean of each reading and its neighbours, as many in all as asked, no farther off than they would be in an unbroken row. */
function meansOver(raw: readonly number[], q: LineQuestion, count: number): number[] {
  const half = (count - 1) / 2;
  return raw.map((_, i) => {
    let sum = 0;
    let found = 0;
    for (let k = Math.max(0, i - half); k <= Math.min(raw.length - 1, i + half); k++) {
      if (Math.abs(q.stations[k]!.y_mm - q.stations[i]!.y_mm) > (half + 0.5) * q.step_mm) continue;
      sum += raw[k]!;
      found++;
    }
    return sum / found;
  });
}

/** Where nothing is permitted, a reading of nothing is within; see COUNTS_FROM_MM for measures read either side of 0. */
function verdictAt(rule: Rule, reading: number, plusMinus: number, limit: number, sense: Sense): LineVerdict {
  if (rule.limit.form === 'none' && COUNTS_FROM_MM[rule.measure] === undefined && reading <= 0) return 'within';
  return compare(reading, plusMinus, limit, sense);
}

function stationLimit(
  rule: Rule,
  s: Station,
  size: SizeAsked,
  plate_mm: number,
  scale: number,
  raise: number | 'nothing' | null,
): number {
  if (raise === 'nothing') return 0;
  if (raise !== null) return raise;
  const counted = rule.limit.form === 'none' ? (COUNTS_FROM_MM[rule.measure] ?? 0) * scale : 0;
  const basis = {
    plate: plate_mm * scale,
    throat: size.throat_mm * scale,
    face: s.faceWidth_mm * scale,
    leg: Math.round(size.leg_mm * scale * 1e6) / 1e6,
  };
  return counted + limitValue(rule.limit, basis);
}

/** Depth permitted in place of the rule's own limit: the deeper one of an accumulated allowance, nothing on a short piece, or null. */
function depthAllowance(rule: Rule, length: number): number | 'nothing' | null {
  const allowance = rule.extent.kind === 'accumulated' || rule.extent.kind === 'share' ? rule.extent : null;
  if (allowance === null) return null;
  if (allowance.kind === 'share') return length >= allowance.piece ? null : 'nothing';
  return length >= allowance.per ? allowance.deeper : null;
}

function lineOf(
  rule: Rule,
  measure: LineMeasure,
  side: 'A' | 'B' | null,
  points: readonly Point[],
  plusMinus: number,
  unit: Line['unit'],
  sense: Sense,
  step_mm: number,
): Line {
  let worst = points[0]!;
  let verdict: LineVerdict = 'within';
  for (const p of points) {
    if (margin(p.reading, p.limit, sense) < margin(worst.reading, worst.limit, sense)) worst = p;
    verdict = worse(verdict, p.verdict);
  }
  const round = unit === 'deg' ? tenth : unit === 'in' ? inTenThousandths : milli;
  return {
    measure,
    side,
    reading: round(worst.reading),
    plusMinus: round(plusMinus),
    unit,
    limit: round(worst.limit),
    sense,
    rule:
      rule.clause +
      (rule.limit.form === 'none' && COUNTS_FROM_MM[rule.measure] !== undefined
        ? `, counted from ${COUNTS_FROM_MM[rule.measure]} mm`
        : ''),
    status: rule.status,
    verdict,
    y_mm: worst.y_mm,
    places: stretches(
      points.filter((p) => p.verdict !== 'within').map((p) => p.y_mm),
      step_mm,
    ),
  };
}

/** From which reading on a place counts, and the share of the length that may: null where the rule has no such limit on this piece. */
function allowance(
  rule: Rule,
  side: 'A' | 'B' | null,
  q: LineQuestion,
  size: SizeAsked,
  scale: number,
  length: number,
): { from: number; limitShare: number } | null {
  const extent = rule.extent;
  switch (extent.kind) {
    case 'anywhere':
      return null;
    case 'short': {
      const total = q.stations.length * q.step_mm;
      return { from: 0, limitShare: Math.min(extent.share, total >= extent.per ? extent.length / extent.per : 1) };
    }
    case 'share':
      return length < extent.piece ? null : { from: 0, limitShare: extent.share };
    case 'accumulated': {
      if (length < extent.per) return null;
      const from = limitValue(rule.limit, {
        plate: plateOf(q.joint, side) * scale,
        throat: size.throat_mm * scale,
        face: 0,
        leg: size.leg_mm * scale,
      });
      return { from, limitShare: extent.length / extent.per };
    }
  }
}

/** The line on how much of the length is at the limit, where a rule has one. */
function lengthLine(
  rule: Rule,
  side: 'A' | 'B' | null,
  q: LineQuestion,
  points: readonly Point[],
  plusMinus: number,
  size: SizeAsked,
  scale: number,
  depth: Line,
  length: number,
): Line | null {
  const total = points.length * q.step_mm;
  const allowed = allowance(rule, side, q, size, scale, length);
  if (allowed === null) return null;
  const { from, limitShare } = allowed;
  const share = (over: number): number => (points.filter((p) => p.reading + over > from).length * q.step_mm) / total;
  const least = share(-plusMinus);
  const middle = share(0);
  const most = share(plusMinus);
  const give = Math.max(middle - least, most - middle);
  const verdict: LineVerdict = most <= limitShare ? 'within' : least > limitShare ? 'outside' : 'too close to call';
  return {
    ...depth,
    measure: lengthOf(rule.measure as RunMeasure),
    reading: tenth(100 * middle),
    plusMinus: tenth(100 * give),
    unit: '%',
    limit: tenth(100 * limitShare),
    sense: 'at most',
    verdict,
    places: stretches(
      points.filter((p) => p.reading > from).map((p) => p.y_mm),
      q.step_mm,
    ),
  };
}

function inTenThousandths(x: number): number {
  return Math.round(x * 10000) / 10000 + 0;
}

/** Heights gathered into stretches; a gap of more than a station and a half parts two. */
export function stretches(heights: readonly number[], step_mm: number): { from_mm: number; to_mm: number }[] {
  const out: { from_mm: number; to_mm: number }[] = [];
  for (const y of heights) {
    const last = out[out.length - 1];
    if (last !== undefined && y - last.to_mm <= 1.5 * step_mm) last.to_mm = y;
    else out.push({ from_mm: y, to_mm: y });
  }
  return out;
}
