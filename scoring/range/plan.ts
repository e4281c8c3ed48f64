import { checkOptions, type PatternName } from '../../engine/index.ts';
import { freeExercise } from '../exercises/free.ts';
import type { Exercise } from '../schema/exercise.ts';
import { describeFound, InputError } from '../schema/problem.ts';

/** The settings that are swept; each is a list of values, one where it is held. */
export const axes = ['feed_mpmin', 'volts_V', 'travel_mmps', 'tipToWork_mm'] as const;
/** A setting that can be swept. */
export type Axis = (typeof axes)[number];

/** What a sweep starts from and what it varies. */
export interface RangePlan {
  /** Joint, machine, weave, size and profile everything starts from. */
  base: {
    joint: Partial<Exercise['joint']>;
    process: Partial<Exercise['process']>;
    weave: Partial<Exercise['demonstration']>;
    leg_mm: number;
    profile: string;
    /** A whole exercise to start from instead: judged as it says, by its own limits where it carries any. */
    exercise?: Exercise;
  };
  values: Record<Axis, number[]>;
  patterns: PatternName[];
  /** Amounts of an imperfect hand, 0 (none) to 1 (a beginner), rising. */
  handAmounts: number[];
  /** Seeds an imperfect hand is tried with. */
  seeds: number[];
  cell_mm: number;
}

/** One combination of settings, and where it stands on each axis. */
export interface RangePoint {
  index: number;
  at: Record<Axis, number>;
  pattern: PatternName;
  exercise: Exercise;
}

/** Most combinations in one sweep. */
const MOST_POINTS = 4000;

/**
 * Every combination, feed slowest and tip-to-work fastest within a pattern.
 * @throws InputError when there are too many or one of them is out of range
 */
export function pointsOf(plan: RangePlan): RangePoint[] {
  const count = axes.reduce((n, axis) => n * plan.values[axis].length, plan.patterns.length);
  if (count > MOST_POINTS) {
    throw new InputError('range', [
      { path: '', found: `${count} combinations`, allowed: `at most ${MOST_POINTS}; sweep fewer values` },
    ]);
  }
  const points: RangePoint[] = [];
  for (const pattern of plan.patterns) {
    for (const feed_mpmin of plan.values.feed_mpmin) {
      for (const volts_V of plan.values.volts_V) {
        for (const travel_mmps of plan.values.travel_mmps) {
          for (const tipToWork_mm of plan.values.tipToWork_mm) {
            const at = { feed_mpmin, volts_V, travel_mmps, tipToWork_mm };
            points.push({ index: points.length, at, pattern, exercise: exerciseAt(plan, at, pattern) });
          }
        }
      }
    }
  }
  return points;
}

function exerciseAt(plan: RangePlan, at: Record<Axis, number>, pattern: PatternName): Exercise {
  const { base } = plan;
  const process = { feed_mpmin: at.feed_mpmin, volts_V: at.volts_V };
  const weave = { pattern, travel_mmps: at.travel_mmps, tipToWork_mm: at.tipToWork_mm };
  const exercise =
    base.exercise === undefined
      ? freeExercise({ ...base, process: { ...base.process, ...process }, weave: { ...base.weave, ...weave } })
      : {
          ...base.exercise,
          process: { ...base.exercise.process, ...process },
          demonstration: { ...base.exercise.demonstration, ...weave },
        };
  const problems = checkOptions({ joint: exercise.joint, process: exercise.process, cell_mm: plan.cell_mm });
  if (problems.length > 0) {
    throw new InputError(
      'range',
      problems.map((p) => ({ path: p.path, found: describeFound(p.found), allowed: p.allowed })),
    );
  }
  return exercise;
}
