import { OPTION_RANGES } from '../../engine/index.ts';
import { type Exercise, sizeAsked } from '../schema/exercise.ts';
import type { RangePlan } from './plan.ts';

/** Values to either side of the given one, and how far apart they stand where the exercise leaves nothing free. */
const SIDE = 2;
const STEP = { feed_mpmin: 0.4, volts_V: 1 } as const;

/**
 * A sweep of feed and volts round an exercise as it stands, welded by a steady hand: where root and profile both hold. Over the range the
 * exercise leaves free where it leaves one, else two steps to either side; within what can be set.
 */
export function rangeAround(exercise: Exercise): RangePlan {
  const { joint, process, demonstration: weave } = exercise;
  return {
    base: { joint, process, weave, leg_mm: sizeAsked(exercise.asked).leg_mm, profile: exercise.profile, exercise },
    values: {
      feed_mpmin: valuesOf(exercise, 'feed_mpmin'),
      volts_V: valuesOf(exercise, 'volts_V'),
      travel_mmps: [weave.travel_mmps],
      tipToWork_mm: [weave.tipToWork_mm],
    },
    patterns: [weave.pattern],
    handAmounts: [],
    seeds: [],
    cell_mm: 0.75,
  };
}

function valuesOf({ process, free }: Exercise, name: 'feed_mpmin' | 'volts_V'): number[] {
  const band = free?.[name];
  const count = 2 * SIDE;
  const at = (k: number): number =>
    band ? band.from + ((band.to - band.from) * k) / count : process[name] + (k - SIDE) * STEP[name];
  const rule = OPTION_RANGES.process?.[name];
  const values = Array.from({ length: count + 1 }, (_, k) => Math.round(100 * at(k)) / 100);
  return [...new Set(values)].filter(
    (x) => rule === undefined || !('low' in rule) || (x >= rule.low && x <= rule.high),
  );
}
