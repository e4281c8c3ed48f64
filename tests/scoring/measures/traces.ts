import type { TraceSample } from '../../../engine/index.ts';
import { Trace } from '../../../scoring/index.ts';

/** A trace made up from where the hand was: puddle and toes follow the aim by stated rules, so that every reading is known. */
export interface MadeTrace {
  seconds: number;
  u: (t: number) => number;
  y: (t: number) => number;
  /** Arc foot less front of the puddle, mm. */
  lead?: (t: number) => number;
  /** Wetted beyond the aim along the plate, mm. */
  beyond?: number;
  fill?: number;
  arcOn?: (t: number) => boolean;
  tip?: (t: number) => number;
}

export function makeTrace(made: MadeTrace): Trace {
  const trace = new Trace();
  const sample = (t: number): TraceSample => ({
    t_s: t,
    trigger: true,
    arcOn: made.arcOn?.(t) ?? true,
    regime: 'short-circuiting',
    aimU_mm: made.u(t),
    aimY_mm: made.y(t),
    footU_mm: made.u(t),
    footY_mm: made.y(t),
    tipToWork_mm: made.tip?.(t) ?? 12,
    workAngle_deg: 45,
    travelAngle_deg: 8,
    current_A: 120,
    power_W: 1900,
    frontY_mm: made.y(t) - (made.lead?.(t) ?? 0),
    puddleBottom_mm: made.y(t) - 8,
    puddleTop_mm: made.y(t) + 1,
    puddleVolume_mm3: 90,
    wetA_mm: Math.SQRT2 * Math.max(0, made.u(t)) + (made.beyond ?? 3),
    wetB_mm: Math.SQRT2 * Math.max(0, -made.u(t)) + (made.beyond ?? 3),
    fillA_mm: made.fill ?? 0.5,
    fillB_mm: made.fill ?? 0.5,
    nozzleTouching: false,
    dripped_g: 0,
    spatter_g: 0,
  });
  for (let i = 1; i <= made.seconds * 100; i++) trace.add(sample(i / 100));
  return trace;
}

/** Sideways weave with pauses: +half, crossing, -half, crossing; `phase` in cycles. */
export function trapezoid(period: number, width: number, pauseA: number, pauseB: number): (t: number) => number {
  const cross = (period - pauseA - pauseB) / 2;
  return (t) => {
    const x = ((t % period) + period) % period;
    if (x < pauseA) return width / 2;
    if (x < pauseA + cross) return width / 2 - (width * (x - pauseA)) / cross;
    if (x < pauseA + cross + pauseB) return -width / 2;
    return -width / 2 + (width * (x - pauseA - cross - pauseB)) / cross;
  };
}
