import type { JointOptions, ProcessOptions } from '../../engine/index.ts';
import type { HandCurve } from '../measures/hand/curve.ts';
import type { FreezeStamps } from '../measures/section/station.ts';
import type { Exercise } from '../schema/exercise.ts';
import type { Motion } from '../schema/motion.ts';
import type { LineMeasure } from '../schema/profile.ts';
import type { Line, Result, Verdict } from '../schema/result.ts';
import type { Station } from '../schema/station.ts';
import type { FoundReason } from '../verdict/found.ts';

/** Everything the reasoning looks at. */
export interface Facts {
  joint: JointOptions;
  process: ProcessOptions;
  exercise: Exercise;
  motion: Motion;
  /** The hand along the joint. */
  curve: HandCurve;
  bead: Result['bead'];
  stamps: readonly FreezeStamps[];
  lines: readonly Line[];
  figures: Result['process'];
  verdict: Verdict;
  reasons: readonly FoundReason[];
  /** Length over which the arc came back to finished bead. */
  weldedTwice_mm: number;
}

/** The line of a measure that is worst off; null where none is broken or in doubt. Lines with a length share are left out. */
export function broken(f: Facts, measure: LineMeasure, side: 'A' | 'B' | null = null): Line | null {
  const candidates = f.lines.filter(
    (l) => l.measure === measure && l.verdict !== 'within' && (side === null || l.side === side),
  );
  return candidates.find((l) => l.verdict === 'outside') ?? candidates[0] ?? null;
}

/** Surely broken, not just in doubt. */
export function outside(f: Facts, measure: LineMeasure, side: 'A' | 'B' | null = null): Line | null {
  const line = broken(f, measure, side);
  return line?.verdict === 'outside' ? line : null;
}

export function stationAt(f: Facts, y_mm: number): Station | null {
  let best: Station | null = null;
  for (const s of f.bead.stations) if (best === null || Math.abs(s.y_mm - y_mm) < Math.abs(best.y_mm - y_mm)) best = s;
  return best;
}

/** A line about the root. */
export function measuresRoot(l: Line): boolean {
  return l.measure === 'root fusion';
}

/** A fault is the machine's only where it runs the length: share of the judged length that is not within, at least. */
const RUNS_THE_LENGTH = 0.5;

/** The line is not within over most of the judged length. */
export function runsTheLength(f: Facts, line: Line): boolean {
  return shareOf(f, line) >= RUNS_THE_LENGTH;
}

/** Share of the judged length over which a line is not within. */
export function shareOf(f: Facts, line: Line): number {
  const { from_mm, to_mm } = f.exercise.judged;
  return line.places.reduce((sum, p) => sum + p.to_mm - p.from_mm + 1, 0) / (to_mm - from_mm);
}

/** Mean of a reading over part of the stations; null for none. */
export function meanOver(stations: readonly Station[], read: (s: Station) => number): number | null {
  if (stations.length === 0) return null;
  let sum = 0;
  for (const s of stations) sum += read(s);
  return sum / stations.length;
}

export function isWeave(f: Facts): boolean {
  return f.motion.period_s !== null;
}

/** A stop this near the judged length concerns it, mm. */
export const BESIDE_MM = 4;

/** Where the arc went out in the judged length or just below it. */
export function judgedStops(f: Facts): Facts['motion']['stops'] {
  const { from_mm, to_mm } = f.exercise.judged;
  return f.motion.stops.filter((s) => s.y_mm >= from_mm - BESIDE_MM && s.y_mm <= to_mm);
}

/** Where the hand let go for good before the judged length was welded; null where it did not. */
export function letGo(f: Facts): Facts['motion']['stops'][number] | null {
  const last = judgedStops(f).find((s) => s.restart === null);
  return last !== undefined && f.bead.bare_mm.some((y) => y > last.y_mm) ? last : null;
}
