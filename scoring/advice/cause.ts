import type { Facts } from './facts.ts';

export interface Cause {
  y_mm: number;
  t_s: number | null;
  cycle: number | null;
}

/** A crossing or toe visit farther off than this along the joint did not make the place, mm. */
const NEAR_MM = 4;

/**
 * What the hand was doing when a place was made: the freeze stamp there says when the metal last set, and the last visit of that toe
 * (or crossing of the root) near that height before it is the one that made it.
 */
export function causeOf(f: Facts, y_mm: number, where: 'A' | 'B' | 'root'): Cause {
  const frozen = frozenAt(f, y_mm, where);
  const events =
    where === 'root'
      ? f.motion.crossings.map((c) => ({ t_s: c.t_s, y_mm: c.y_mm, cycle: c.cycle }))
      : f.motion.toes.filter((v) => v.toe === where).map((v) => ({ t_s: v.to_s, y_mm: v.y_mm, cycle: v.cycle }));
  let best: (typeof events)[number] | null = null;
  for (const e of events) {
    if (frozen !== null && e.t_s > frozen + 0.05) continue;
    if (Math.abs(e.y_mm - y_mm) > NEAR_MM) continue;
    if (best === null || Math.abs(e.y_mm - y_mm) <= Math.abs(best.y_mm - y_mm)) best = e;
  }
  if (best === null) return { y_mm, t_s: frozen, cycle: null };
  return { y_mm, t_s: best.t_s, cycle: best.cycle > 0 ? best.cycle : null };
}

function frozenAt(f: Facts, y_mm: number, where: 'A' | 'B' | 'root'): number | null {
  let nearest = -1;
  for (let i = 0; i < f.bead.stations.length; i++) {
    if (nearest < 0 || Math.abs(f.bead.stations[i]!.y_mm - y_mm) < Math.abs(f.bead.stations[nearest]!.y_mm - y_mm))
      nearest = i;
  }
  const stamps = f.stamps[nearest];
  if (stamps === undefined) return null;
  return where === 'root' ? stamps.root_s : where === 'A' ? stamps.toeA_s : stamps.toeB_s;
}
