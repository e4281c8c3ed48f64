import { type AttemptRecording, applyChange, type Change, FREE_NAME } from '../../../scoring/index.ts';

/**
 * An attempt with one thing changed, to be welded and judged beside it. Where that is a setting, what is asked goes along with it, under the
 * name of an exercise made up on the spot: the other settings are what is being asked about, and no editing of a file.
 * @returns null where the change means nothing for this attempt
 */
export function changedAttempt(recording: AttemptRecording, change: Change): AttemptRecording | null {
  const changed = applyChange(recording, change);
  if (changed === null || changed.exercise === null) return changed;
  if (change.what !== 'volts_V' && change.what !== 'feed_mpmin') return changed;
  const exercise = { ...changed.exercise, name: FREE_NAME, process: changed.simulation.process };
  return { ...changed, exercise };
}
