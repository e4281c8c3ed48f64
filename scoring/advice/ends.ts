import { inMm } from '../lines/limit.ts';
import type { Stop } from '../schema/motion.ts';
import type { Line } from '../schema/result.ts';
import { type Facts, judgedStops, letGo, outside } from './facts.ts';
import { type Found, NOWHERE } from './found.ts';
import { worstSeen } from './seen.ts';

/** What is this near a restarted stop, and nowhere else, the restart made. mm */
const NEAR_MM = 10;

/** The arc out for less than this, and the hand did not stop: it lost the arc and went on. s */
const LOST_S = 3;

/** The arc went out in the judged length and was not taken up again as it is done: struck above, back into the crater. */
export function arcTakenUp(f: Facts): Found | null {
  const { to_mm } = f.exercise.judged;
  const judged = judgedStops(f);
  const last = letGo(f);
  if (last !== null) return { code: 'let-go-early', data: { at_mm: last.y_mm, to_mm }, ...at(last.y_mm, last.t_s) };
  const stop = judged.find((s): s is Restarted => s.restart !== null && s.restart.way !== 'above and back');
  if (stop === undefined) return null;
  const out_s = stop.out_s ?? 0;
  const seen = worstSeen(f);
  const told = { stop_mm: stop.y_mm, above_mm: stop.restart.above_mm, out_s, seen };
  const notBack = stop.restart.way === 'not back';
  const code = out_s < LOST_S ? 'arc-lost' : notBack ? 'restart-not-back' : 'restart-on-crater';
  return { code, data: told, ...at(stop.y_mm, stop.restart.t_s) };
}

/** Brought back as it is done, but held until the crater ran over: crowned or lapped there and nowhere else. */
export function restartOverfilled(f: Facts): Found | null {
  const crown = outside(f, 'convexity');
  const lap = outside(f, 'overlap');
  const line = lap ?? crown;
  const stop = line === null ? null : restartedAt(f, line);
  if (line === null || stop === null || stop.restart.way !== 'above and back') return null;
  if (crown !== null && restartedAt(f, crown) !== stop) return null;
  return {
    code: 'restart-overfilled',
    data: {
      stop_mm: stop.y_mm,
      crown_mm: crown === null ? null : inMm(crown, crown.reading),
      lap_mm: lap === null ? null : inMm(lap, lap.reading),
      inCrater_s: stop.restart.inCrater_s,
    },
    ...at(line.y_mm, stop.restart.t_s),
  };
}

type Restarted = Stop & { restart: NonNullable<Stop['restart']> };

/** The restarted stop that all places of a line lie round; null where the line is broken elsewhere too. */
function restartedAt(f: Facts, line: Line): Restarted | null {
  const near = (stop: Stop): boolean =>
    line.places.every((p) => Math.abs(p.from_mm - stop.y_mm) <= NEAR_MM && Math.abs(p.to_mm - stop.y_mm) <= NEAR_MM);
  return f.motion.stops.find((stop): stop is Restarted => stop.restart !== null && near(stop)) ?? null;
}

function at(y_mm: number, t_s: number): typeof NOWHERE {
  return { ...NOWHERE, y_mm, t_s };
}

/** A crater of the judged length that a line does not allow. */
export function craterLeft(f: Facts): Found | null {
  const line = outside(f, 'leg at the crater') ?? outside(f, 'crater depth');
  if (line === null) return null;
  const which = f.bead.stops.findIndex((s) => s.craterAt_mm === line.y_mm || s.leastSizeAt_mm === line.y_mm);
  const bead = f.bead.stops[which];
  const stop = f.motion.stops[which];
  if (bead === undefined || stop === undefined || bead.craterDepth_mm === null || bead.craterAt_mm === null)
    return null;
  return {
    code: 'crater-open',
    data: { depth_mm: bead.craterDepth_mm, y_mm: bead.craterAt_mm, reStrikes: stop.reStrikes },
    ...at(bead.craterAt_mm, stop.t_s),
  };
}
