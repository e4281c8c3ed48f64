import type { Change } from '../schema/result.ts';

/** One thing about a hand or a machine that can be changed in steps. */
export type Knob = Change['what'];

/**
 * One step of each change as a hand can feel it, and the most that is asked for at once (common practice, no source): beyond that it is
 * another weave or another machine, and a matter for a drill.
 */
export const steps: Record<Knob, { step: number; most: number }> = {
  pauseA_s: { step: 0.1, most: 0.3 },
  pauseB_s: { step: 0.1, most: 0.3 },
  width_mm: { step: 1, most: 3 },
  lead_mm: { step: 0.5, most: 4 },
  centre_mm: { step: 0.5, most: 2 },
  travel_mmps: { step: 0.2, most: 1.2 },
  tipToWork_mm: { step: 3, most: 12 },
  workAngle_deg: { step: 5, most: 15 },
  travelAngle_deg: { step: 5, most: 15 },
  volts_V: { step: 0.5, most: 2 },
  feed_mpmin: { step: 0.25, most: 1 },
  cyclesPerSecond: { step: 0.1, most: 0.3 },
};

/** So many steps of a knob, as a change; never more than the most. */
export function inSteps(what: Knob, count: number): Change {
  const { step, most } = steps[what];
  const sign = count < 0 ? -1 : 1;
  const by = Math.min(most, Math.max(1, Math.round(Math.abs(count))) * step);
  return { what, by: (sign * Math.round(by * 100)) / 100 };
}

/** How many steps a change is. */
export function stepsOf(change: Change): number {
  return change.by / steps[change.what].step;
}
