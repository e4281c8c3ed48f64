import { workOf } from '../../engine/index.ts';
import { InputError } from '../schema/problem.ts';
import type { AttemptRecording } from '../schema/recording.ts';

/** Most work one file is welded for where nothing else is said, s of a core of today: many times the longest attempt at the bench. */
export const MOST_WORK_S = 300;

/**
 * Refuses a recording that would take too long to weld again, before any of it is welded.
 * @param most_s most work, s of a core of today; Infinity: none is too much
 * @throws InputError saying how much it would be
 */
export function checkWork(recording: AttemptRecording, file: string, most_s: number = MOST_WORK_S): void {
  const { core_s } = workOf(recording);
  // Written so that a number that is none does not pass.
  if (core_s <= most_s) return;
  const { joint, cell_mm } = recording.simulation;
  const found = `some ${timeSaid(core_s)} of work on one core (${recording.poses.u.length} poses, ${joint.length_mm} mm of joint in cells of ${cell_mm} mm)`;
  throw new InputError(file, [
    { path: '', found, allowed: `at most ${timeSaid(most_s)}; --max-work sets another limit` },
  ]);
}

function timeSaid(s: number): string {
  if (s < 90) return `${Number(s.toPrecision(2))} s`;
  return s < 5400 ? `${Math.round(s / 60)} min` : `${Number((s / 3600).toPrecision(2))} h`;
}
