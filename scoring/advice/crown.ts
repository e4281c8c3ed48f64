import { inMm } from '../lines/limit.ts';
import type { Line } from '../schema/result.ts';
import { type Cause, causeOf } from './cause.ts';
import { broken, type Facts, isWeave, stationAt } from './facts.ts';
import type { Found } from './found.ts';
import { leftEarly } from './toes.ts';

/** A crowned face: cold, too slow, too narrow, or toes left too early, in this order. */
export function crowned(f: Facts): Found | null {
  const line = broken(f, 'convexity') ?? broken(f, 'toe angle');
  if (line === null || line.verdict !== 'outside') return null;
  const at = stationAt(f, line.y_mm);
  if (at === null) return null;
  const cause = causeOf(f, line.y_mm, 'root');
  const root = broken(f, 'root fusion');
  if (root !== null) {
    return {
      code: 'crowned-cold',
      data: { convexity_mm: at.convexity_mm, root_mm: root.reading },
      ...cause,
      side: null,
      change: { what: 'volts_V', by: 0.5 },
    };
  }
  if (!isWeave(f)) return straightRun(line, at.convexity_mm, cause);
  const early = leftEarly(f, line.y_mm, 'A') ?? leftEarly(f, line.y_mm, 'B');
  if (early !== null) return early;
  const { travel_mmps } = f.motion;
  const band = f.exercise.target.travel_mmps;
  if (travel_mmps !== null && travel_mmps < band.from) {
    return {
      code: 'crowned-slow',
      data: {
        convexity_mm: at.convexity_mm,
        travel_mmps,
        asked_mmps: (band.from + band.to) / 2,
      },
      ...cause,
      side: null,
      change: { what: 'travel_mmps', by: 0.2 },
    };
  }
  return {
    code: 'crowned-narrow',
    data: { convexity_mm: at.convexity_mm, run: { weave: true, y_mm: line.y_mm } },
    ...cause,
    side: null,
    change: { what: 'width_mm', by: 1 },
  };
}

/** A straight run with this much metal stands up; a weave lays it flat. */
function straightRun(line: Line, convexity_mm: number, cause: Cause): Found {
  const limit_mm = line.measure === 'convexity' ? inMm(line, line.limit) : convexity_mm;
  return {
    code: 'crowned-narrow',
    data: { convexity_mm, run: { weave: false, limit_mm } },
    ...cause,
    side: null,
    change: { what: 'width_mm', by: 3 },
  };
}
