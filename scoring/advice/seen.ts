import type { Line } from '../schema/result.ts';
import { BESIDE_MM, type Facts, letGo, measuresRoot } from './facts.ts';
import type { Seen } from './found.ts';

/**
 * The worst of what was seen: metal gone, a stretch left bare, the line that is farthest outside; null where every line is within. What is missing
 * because the hand let go is the end's matter and stands beside nothing else.
 */
export function worstSeen(f: Facts): Seen | null {
  const blocked = f.reasons.map((r) => r.code);
  const end_mm = letGo(f)?.y_mm ?? Number.POSITIVE_INFINITY;
  const bare_mm = f.bead.bare_mm.filter((y) => y < end_mm);
  if (blocked.includes('dropped-out')) return { what: 'dropped', dripped_g: f.figures.dripped_g ?? 0 };
  if (bare_mm.length > 0) return { what: 'bare', bare_mm: bare_mm.length, from_mm: bare_mm[0]! };
  const off = f.lines.filter((l) => l.verdict !== 'within' && l.y_mm < end_mm - BESIDE_MM);
  const line =
    off.find((l) => l.verdict === 'outside' && measuresRoot(l)) ?? off.find((l) => l.verdict === 'outside') ?? off[0];
  return line === undefined ? null : seenOf(f, line);
}

/** One line as it was seen. */
export function seenOf(f: Facts, line: Line): Seen {
  const { measure, side, reading, unit, sense, limit, y_mm, verdict } = line;
  return { what: 'line', kind: f.joint.kind, measure, side, reading, unit, sense, limit, y_mm, verdict };
}
