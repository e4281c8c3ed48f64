import { workOf } from '../../engine/index.ts';
import { InputError } from '../schema/problem.ts';
import type { AttemptRecording } from '../schema/recording.ts';

/** Most work one file is welded for where nothing else is said, s of a core of today: many times the longest attempt at the bench. */
export const MOST_WORK_S = 300;

/** What a recording would cost to weld again, and what of it makes it so. */
export interface MuchWork {
  /** Seconds of a core of today. */
  core_s: number;
  poses: number;
  length_mm: number;
  cell_mm: number;
}

/**
 * Reckons the work of a recording, before any of it is welded.
 * @param most_s most work, s of a core of today; Infinity: none is too much
 * @returns null where it is within that
 */
export function workOver(
  recording: Pick<AttemptRecording, 'simulation' | 'poses'>,
  most_s: number = MOST_WORK_S,
): MuchWork | null {
  const { core_s } = workOf(recording);
  // Written so that a number that is none does not pass.
  if (core_s <= most_s) return null;
  const { joint, cell_mm } = recording.simulation;
  return { core_s, poses: recording.poses.u.length, length_mm: joint.length_mm, cell_mm };
}

/**
 * Refuses a recording that would take too long to weld again, before any of it is welded.
 * @param most_s as of `workOver`
 * @throws InputError saying how much it would be
 */
export function checkWork(recording: AttemptRecording, file: string, most_s: number = MOST_WORK_S): void {
  const much = workOver(recording, most_s);
  if (much === null) return;
  const allowed = `at most ${workTimeSaid(most_s)}; --max-work sets another limit`;
  throw new InputError(file, [{ path: '', found: workSaid(much), allowed }]);
}

/** As part of a sentence: how long, and why. */
export function workSaid({ core_s, poses, length_mm, cell_mm }: MuchWork): string {
  return `some ${workTimeSaid(core_s)} of work on one core (${poses} poses, ${length_mm} mm of joint in cells of ${cell_mm} mm)`;
}

/** Seconds of work in the unit one would say them in. */
export function workTimeSaid(s: number): string {
  if (s < 90) return `${Number(s.toPrecision(2))} s`;
  return s < 5400 ? `${Math.round(s / 60)} min` : `${Number((s / 3600).toPrecision(2))} h`;
}
