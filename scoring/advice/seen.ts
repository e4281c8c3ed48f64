import type { Line } from '../schema/result.ts';
import { type Facts, measuresRoot } from './facts.ts';
import type { Seen } from './found.ts';

/** The worst of what was seen: metal gone, a stretch left bare, the line that is farthest outside; null where every line is within. */
export function worstSeen(f: Facts): Seen | null {
  const blocked = f.reasons.map((r) => r.code);
  const { bare_mm } = f.bead;
  if (blocked.includes('dropped-out')) return { what: 'dropped', dripped_g: f.figures.dripped_g ?? 0 };
  if (bare_mm.length > 0) return { what: 'bare', bare_mm: bare_mm.length, from_mm: bare_mm[0]! };
  const off = f.lines.filter((l) => l.verdict !== 'within');
  const line =
    off.find((l) => l.verdict === 'outside' && measuresRoot(l)) ?? off.find((l) => l.verdict === 'outside') ?? off[0];
  return line === undefined ? null : seenOf(f, line);
}

/** One line as it was seen. */
export function seenOf(f: Facts, line: Line): Seen {
  const { measure, side, reading, unit, sense, limit, y_mm, verdict } = line;
  return { what: 'line', kind: f.joint.kind, measure, side, reading, unit, sense, limit, y_mm, verdict };
}
