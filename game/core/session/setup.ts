import {
  type FilletOptions,
  jointHolds_mm2,
  metalLaid_mm2,
  type ProcessOptions,
  type SimulationOptions,
  steadyVolts,
  type TransferRegime,
  wireState,
} from '../../../engine/index.ts';
import { type Exercise, freeExercise } from '../../../scoring/index.ts';

export const CELL_MM = 0.75;

/** A change made in the settings sentence. */
export interface SetupEdit {
  joint?: Partial<FilletOptions>;
  process?: Partial<ProcessOptions>;
  hold?: Partial<Exercise['hold']>;
  size_mm?: number;
  travel_mmps?: number;
}

export function simulationOf(exercise: Exercise): SimulationOptions {
  return { joint: exercise.joint, process: exercise.process, cell_mm: CELL_MM };
}

/**
 * The exercise after an edit. Where the exercise leaves the machine to the trainee, feed, volts, wire, gas and tip change nothing about
 * whose exercise it is; any other change makes it the user's own joint and settings.
 */
export function editExercise(exercise: Exercise, edit: SetupEdit): Exercise {
  const process = { ...exercise.process, ...edit.process };
  if (exercise.settings === 'own process' && !edit.joint && !edit.hold && !edit.size_mm && !edit.travel_mmps)
    return { ...exercise, process };
  const joint = { ...exercise.joint, ...edit.joint };
  const hold = { ...exercise.hold, ...edit.hold };
  const made = freeExercise({
    joint,
    process,
    leg_mm: edit.size_mm ?? legOf(exercise),
    profile: exercise.profile,
    weave: {
      ...exercise.demonstration,
      ...hold,
      travel_mmps: edit.travel_mmps ?? exercise.demonstration.travel_mmps,
      length_mm: joint.length_mm - 4,
    },
  });
  return { ...made, hold };
}

/** The leg asked for; a throat is the leg of a flat right-angled fillet divided by the square root of two. */
export function legOf(exercise: Exercise): number {
  return exercise.asked.kind === 'leg'
    ? exercise.asked.size_mm
    : Math.round(exercise.asked.size_mm * Math.SQRT2 * 10) / 10;
}

export interface MetalBalance {
  laid_mm2: number;
  holds_mm2: number;
  current_A: number;
  /** How the wire goes over, and from and to how many volts it dips at these amps. */
  regime: TransferRegime;
  dips_V: { low: number; high: number };
}

/** Metal laid against metal the joint holds, known before the arc is struck. */
export function metalBalance(exercise: Exercise): MetalBalance {
  const { current_A, regime } = wireState(exercise.process, exercise.hold.tipToWork_mm);
  return {
    laid_mm2: metalLaid_mm2(exercise.process, exercise.demonstration.travel_mmps),
    holds_mm2: jointHolds_mm2(exercise.joint, legOf(exercise)),
    current_A,
    regime,
    dips_V: steadyVolts(exercise.process, current_A),
  };
}
