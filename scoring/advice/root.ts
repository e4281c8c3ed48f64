import type { Line } from '../schema/result.ts';
import { causeOf } from './cause.ts';
import { broken, type Facts, isWeave, stationAt } from './facts.ts';
import type { Found } from './found.ts';

/** Crossings within this of a place are asked what the arc did there, mm. */
const ROUND_MM = 8;
/** Fewer crossings than this on the front of the puddle, and the arc is what to talk about. */
const MOSTLY = 0.6;

/** The joint holds first, then the root: arc back on the puddle, tip too far, or too cold. */
export function rootShort(f: Facts): Found | null {
  const line = broken(f, 'root fusion');
  if (line === null) return null;
  const cause = causeOf(f, line.y_mm, 'root');
  return arcBack(f, line, cause) ?? tipTooFar(f, line, cause) ?? coldRoot(f, line, cause);
}

type Cause = ReturnType<typeof causeOf>;

function arcBack(f: Facts, line: Line, cause: Cause): Found | null {
  const known = f.motion.crossings.filter((c) => c.lead_mm !== null);
  const near = known.filter((c) => Math.abs(c.y_mm - line.y_mm) <= ROUND_MM);
  const asked = near.length >= 3 ? near : known;
  if (asked.length === 0) return null;
  const back = asked.filter((c) => c.lead_mm! < f.exercise.target.lead_mm.from);
  if (back.length <= (1 - MOSTLY) * asked.length) return null;
  const stretch = known.filter((c) => c.lead_mm! < f.exercise.target.lead_mm.from).map((c) => c.y_mm);
  const lead = back.reduce((sum, c) => sum + c.lead_mm!, 0) / back.length;
  return {
    code: 'arc-back-on-puddle',
    data: {
      from_mm: Math.min(...stretch),
      to_mm: Math.max(...stretch),
      back_mm: -lead,
      root_mm: line.reading,
      weave: isWeave(f),
    },
    ...cause,
    side: null,
    change: { what: 'lead_mm', by: 0.5 },
  };
}

function tipTooFar(f: Facts, line: Line, cause: Cause): Found | null {
  const tip = f.motion.tipToWork_mm;
  const band = f.exercise.target.tipToWork_mm;
  if (tip === null || tip <= band.to) return null;
  return {
    code: 'tip-too-far',
    data: { tip_mm: tip, asked_mm: (band.from + band.to) / 2, root_mm: line.reading },
    ...cause,
    side: null,
    change: { what: 'tipToWork_mm', by: -3 },
  };
}

function coldRoot(f: Facts, line: Line, cause: Cause): Found {
  if (line.verdict === 'too close to call') {
    return {
      code: 'root-just-short',
      data: { root_mm: line.reading, plusMinus_mm: line.plusMinus, y_mm: line.y_mm },
      ...cause,
      side: null,
      change: { what: 'lead_mm', by: 0.5 },
    };
  }
  const convexity = stationAt(f, line.y_mm)?.convexity_mm ?? 0;
  const flat = broken(f, 'convexity') === null;
  return {
    code: 'cold-root',
    data: { root_mm: line.reading, convexity_mm: convexity, flat },
    ...cause,
    side: null,
    change: flat ? { what: 'feed_mpmin', by: 0.25 } : { what: 'volts_V', by: 0.5 },
  };
}
