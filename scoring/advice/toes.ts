import { inMm } from '../lines/limit.ts';
import { causeOf } from './cause.ts';
import { type Facts, isWeave, outside, stationAt } from './facts.ts';
import type { Found } from './found.ts';

/** A toe melted open and left so. */
export function meltedOpen(f: Facts): Found | null {
  const line = outside(f, 'undercut', 'A') ?? outside(f, 'undercut', 'B');
  if (line === null || line.side === null) return null;
  return {
    code: 'toe-melted-open',
    data: { joint: f.joint.kind, side: line.side, depth_mm: inMm(line, line.reading), y_mm: line.y_mm },
    ...causeOf(f, line.y_mm, line.side),
    side: line.side,
    change: { what: line.side === 'A' ? 'pauseA_s' : 'pauseB_s', by: 0.1 },
  };
}

/** The crown of a straight run, where a straight run was asked. */
export function crownedStraight(f: Facts): Found | null {
  const line = outside(f, 'convexity') ?? outside(f, 'toe angle');
  if (line === null || isWeave(f)) return null;
  const at = stationAt(f, line.y_mm);
  if (at === null) return null;
  return {
    code: 'crowned-straight',
    data: {
      convexity_mm: at.convexity_mm,
      limit_mm: line.measure === 'convexity' ? inMm(line, line.limit) : at.convexity_mm,
    },
    ...causeOf(f, line.y_mm, 'root'),
    side: null,
    change: { what: 'travel_mmps', by: 0.2 },
  };
}
