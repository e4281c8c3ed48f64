import type { Advice, Stop } from '../schema/index.ts';
import { type Facts, outside } from './facts.ts';
import { sentences } from './sentences.ts';

/** A root this near a stop was made by the restart, mm. */
const NEAR_MM = 10;

/** Root missed where the arc was taken up again, and not as it is done: struck above, back into the crater. */
export function restartMissed(f: Facts): Advice | null {
  const line = outside(f, 'root fusion');
  if (line === null) return null;
  const stop = nearest(f, line.y_mm);
  const restart = stop?.restart ?? null;
  if (stop === null || restart === null || restart.way === 'above and back') return null;
  const flaw_mm = f.bead.stops[f.motion.stops.indexOf(stop)]?.flaw?.length_mm ?? 0;
  const told = { stop_mm: stop.y_mm, above_mm: restart.above_mm, root_mm: line.reading, flaw_mm };
  return {
    code: restart.way === 'not back' ? 'restart-not-back' : 'restart-on-crater',
    text: restart.way === 'not back' ? sentences.restartNotBack(told) : sentences.restartOnCrater(told),
    y_mm: line.y_mm,
    t_s: restart.t_s,
    cycle: null,
    side: null,
    change: null,
  };
}

function nearest(f: Facts, y_mm: number): Stop | null {
  let best: Stop | null = null;
  for (const s of f.motion.stops) {
    if (Math.abs(s.y_mm - y_mm) > NEAR_MM) continue;
    if (best === null || Math.abs(s.y_mm - y_mm) < Math.abs(best.y_mm - y_mm)) best = s;
  }
  return best;
}

/** A crater of the judged length that a line does not allow. */
export function craterLeft(f: Facts): Advice | null {
  const line = outside(f, 'leg at the crater') ?? outside(f, 'crater depth');
  if (line === null) return null;
  const at = f.bead.stops.findIndex((s) => s.craterAt_mm === line.y_mm || s.leastSizeAt_mm === line.y_mm);
  const bead = f.bead.stops[at];
  const stop = f.motion.stops[at];
  if (bead === undefined || stop === undefined || bead.craterDepth_mm === null || bead.craterAt_mm === null)
    return null;
  return {
    code: 'crater-open',
    text: sentences.craterOpen({ depth_mm: bead.craterDepth_mm, y_mm: bead.craterAt_mm, reStrikes: stop.reStrikes }),
    y_mm: bead.craterAt_mm,
    t_s: stop.t_s,
    cycle: null,
    side: null,
    change: null,
  };
}
