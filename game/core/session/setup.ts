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
import { dealPiece, type Exercise, freeExercise, isLeft, sizeAsked, withoutPiece } from '../../../scoring/index.ts';

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
 * The exercise after an edit. Where the exercise leaves the machine to the trainee, or some of machine and gun within ranges, setting those
 * changes nothing about whose exercise it is; any other change makes it the user's own joint and settings.
 */
export function editExercise(exercise: Exercise, edit: SetupEdit): Exercise {
  const process = { ...exercise.process, ...edit.process };
  const hold = { ...exercise.hold, ...edit.hold };
  const settingsOnly = !edit.joint && !edit.size_mm && !edit.travel_mmps;
  const machineLeft = exercise.settings === 'own process' || allLeft(exercise, edit.process);
  if (settingsOnly && machineLeft && allLeft(exercise, edit.hold)) return { ...exercise, process, hold };
  const joint = { ...exercise.joint, ...edit.joint };
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

/** Whether only settings are touched that the exercise leaves free, and within their ranges. */
function allLeft({ free }: Exercise, edit: SetupEdit['process'] | SetupEdit['hold'] = {}): boolean {
  return Object.entries(edit).every(([name, value]) => isLeft(free, name, value));
}

/** What is known of whoever welds, for an exercise that deals everybody a piece of their own. */
export interface ForPiece {
  plate: number | null;
  startWord: string;
}

/** The exercise as the trainee at the bench has it: on their own piece where it deals one and word and plate are known. */
export function pieceFor(exercise: Exercise, { plate, startWord }: ForPiece): Exercise {
  if (exercise.vary === undefined) return exercise;
  return plate === null || startWord.trim() === '' ? withoutPiece(exercise) : dealPiece(exercise, startWord, plate);
}

/** The leg asked for; a throat is the leg of a flat right-angled fillet divided by the square root of two. */
export function legOf(exercise: Exercise): number {
  return exercise.asked.kind === 'leg'
    ? exercise.asked.size_mm
    : Math.round(exercise.asked.size_mm * Math.SQRT2 * 10) / 10;
}

export interface MetalBalance {
  laid_mm2: number;
  /** What the size asked for takes, and what the largest size allowed takes; null where no largest is asked. */
  holds_mm2: number;
  most_mm2: number | null;
  /** Laid against these: short, about what is held, within what is asked, or over it. */
  stands: 'short' | 'even' | 'within' | 'over';
  current_A: number;
  /** How the wire goes over, and from and to how many volts it dips at these amps. */
  regime: TransferRegime;
  dips_V: { low: number; high: number };
}

/** Laid against held counts as even within this share: travel by hand is no better. */
const EVEN_SHARE = 0.12;

/** Metal laid against metal the joint holds, known before the arc is struck. */
export function metalBalance(exercise: Exercise): MetalBalance {
  const { current_A, regime } = wireState(exercise.process, exercise.hold.tipToWork_mm);
  const laid_mm2 = metalLaid_mm2(exercise.process, exercise.demonstration.travel_mmps);
  const holds_mm2 = jointHolds_mm2(exercise.joint, legOf(exercise));
  const { asked } = exercise;
  const most_mm2 =
    asked.atMost_mm === null
      ? null
      : jointHolds_mm2(exercise.joint, sizeAsked({ ...asked, size_mm: asked.atMost_mm }).leg_mm);
  return {
    laid_mm2,
    holds_mm2,
    most_mm2,
    stands: standing(laid_mm2, holds_mm2, most_mm2),
    current_A,
    regime,
    dips_V: steadyVolts(exercise.process, current_A),
  };
}

function standing(laid: number, holds: number, most: number | null): MetalBalance['stands'] {
  if (Math.abs(laid - holds) <= EVEN_SHARE * holds) return 'even';
  if (laid < holds) return 'short';
  return most !== null && laid <= most ? 'within' : 'over';
}
