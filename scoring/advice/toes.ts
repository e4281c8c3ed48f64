import { inMm } from '../lines/limit.ts';
import type { Line } from '../schema/result.ts';
import { causeOf } from './cause.ts';
import { broken, type Facts, isWeave, stationAt } from './facts.ts';
import type { Found } from './found.ts';

/** Practice: the wire stops 1 to 1.5 mm inside the finished toe (across the plate); farther inside than this, it never got there. */
const FARTHEST_INSIDE_MM = 3.5;
/** A pause this much under the band is too short to be chance, s. */
const CLEARLY_SHORT_S = 0.05;
/** Filled less often than this when left. */
const OFTEN_FILLED = 0.7;

type Side = 'A' | 'B';

/** Toe faults, the side that is worse off first. */
export function toeFault(f: Facts): Found | null {
  const lines = (['undercut', 'overlap', 'fusion to plate', 'toe angle'] as const).flatMap((measure) =>
    (['A', 'B'] as const).map((side) => broken(f, measure, side)),
  );
  const found = lines.filter((l): l is Line => l !== null);
  const line = found.find((l) => l.verdict === 'outside') ?? found[0];
  if (line === undefined || line.side === null) return null;
  const side = line.side;
  if (line.measure === 'undercut') return meltedOpen(f, line, side);
  return leftEarly(f, line.y_mm, side) ?? notReached(f, line, side) ?? cold(f, line, side);
}

function meltedOpen(f: Facts, line: Line, side: Side): Found {
  return {
    code: 'toe-melted-open',
    data: { joint: f.joint.kind, side, depth_mm: inMm(line, line.reading), y_mm: line.y_mm },
    ...causeOf(f, line.y_mm, side),
    side,
    change: { what: side === 'A' ? 'pauseA_s' : 'pauseB_s', by: 0.1 },
  };
}

/** The hand left the toe before it had filled: pause under the band, or not filled when left. */
export function leftEarly(f: Facts, y_mm: number, side: Side): Found | null {
  const pause = side === 'A' ? f.motion.pauseA_s : f.motion.pauseB_s;
  const filled = side === 'A' ? f.motion.toeFilledShareA : f.motion.toeFilledShareB;
  const band = side === 'A' ? f.exercise.target.pauseA_s : f.exercise.target.pauseB_s;
  if (pause === null || band === null) return null;
  const short = pause < band.from - CLEARLY_SHORT_S;
  const unfilled = filled !== null && filled < OFTEN_FILLED && pause < (band.from + band.to) / 2 - CLEARLY_SHORT_S;
  if (!short && !unfilled) return null;
  return {
    code: 'toe-left-early',
    data: {
      joint: f.joint.kind,
      side,
      pause_s: pause,
      asked_s: (band.from + band.to) / 2,
      filledShare: filled,
    },
    ...causeOf(f, y_mm, side),
    side,
    change: { what: side === 'A' ? 'pauseA_s' : 'pauseB_s', by: 0.1 },
  };
}

function notReached(f: Facts, line: Line, side: Side): Found | null {
  const reach = side === 'A' ? f.motion.reachA_mm : f.motion.reachB_mm;
  const station = stationAt(f, line.y_mm);
  if (reach === null || station === null || line.measure !== 'overlap' || line.verdict !== 'outside') return null;
  const leg = side === 'A' ? station.legA_mm : station.legB_mm;
  const inside = leg - Math.SQRT2 * reach;
  if (inside <= FARTHEST_INSIDE_MM) return null;
  return {
    code: 'toe-not-reached',
    data: { joint: f.joint.kind, side, short_mm: inside },
    ...causeOf(f, line.y_mm, side),
    side,
    change: { what: 'width_mm', by: 1 },
  };
}

function cold(f: Facts, line: Line, side: Side): Found | null {
  const station = stationAt(f, line.y_mm);
  const overlap = station === null ? 0 : side === 'A' ? station.overlapA_mm : station.overlapB_mm;
  if (line.verdict !== 'outside' || overlap <= 0) return null;
  const weave = isWeave(f);
  return {
    code: 'cold-toe',
    data: { joint: f.joint.kind, side, overlap_mm: overlap, y_mm: line.y_mm, weave },
    ...causeOf(f, line.y_mm, side),
    side,
    change: weave ? { what: 'volts_V', by: 0.5 } : { what: 'travel_mmps', by: 0.2 },
  };
}
