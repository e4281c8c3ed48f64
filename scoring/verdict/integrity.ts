import { checkChain, ENGINE_VERSION } from '../../engine/index.ts';
import type { Attempt } from '../attempt/attempt.ts';
import { exerciseNamed } from '../exercises/ready.ts';
import type { Exercise } from '../schema/exercise.ts';
import type { AttemptRecording } from '../schema/recording.ts';
import type { Difference, FoundReason } from './found.ts';

/**
 * What was changed in the file: joint or settings that are not the exercise's, a ready exercise that is not the ready one, poses that are
 * not those that were welded.
 * @param given the exercise came with the question and not with the file
 */
export function editsIn(
  recording: AttemptRecording,
  attempt: Attempt,
  exercise: Exercise,
  given: boolean,
): FoundReason[] {
  const reasons: FoundReason[] = [];
  const joint = difference(exercise.joint, recording.simulation.joint);
  if (joint !== null) reasons.push({ code: 'settings-edited', data: { what: 'joint', differs: joint } });
  const process = exercise.settings === 'fixed' ? difference(exercise.process, recording.simulation.process) : null;
  if (process !== null) reasons.push({ code: 'settings-edited', data: { what: 'settings', differs: process } });
  const ready = exerciseNamed(exercise.name);
  if (!given && ready !== undefined && !same(ready, exercise)) {
    reasons.push({ code: 'exercise-edited', data: { name: exercise.name } });
  }
  const parted = partedFrom(recording, attempt);
  if (parted !== null) reasons.push(parted);
  return reasons;
}

/** Where file and weld no longer go together; null where they do, or where that cannot be told. */
function partedFrom(recording: AttemptRecording, attempt: Attempt): FoundReason | null {
  const finding = checkChain(recording, attempt.states);
  switch (finding.found) {
    case 'header-changed':
      return { code: 'header-edited', data: {} };
    case 'poses-changed':
      return { code: 'recording-edited', data: { second: finding.second } };
    case 'ending-changed':
      return { code: 'recording-edited', data: { second: null } };
    case 'state-differs':
      return { code: 'state-differs', data: { second: finding.second } };
    case 'no-chain':
      return partedWithoutChain(recording, attempt);
    default:
      return null;
  }
}

/** A file without a chain has one check number at its end: it tells that something differs, never what. */
function partedWithoutChain(recording: AttemptRecording, attempt: Attempt): FoundReason | null {
  const { stateHash } = recording;
  if (stateHash === null || recording.engine !== ENGINE_VERSION || stateHash === attempt.stateHash) return null;
  return { code: 'state-differs', data: { is: attempt.stateHash, saved: stateHash } };
}

/** First field that differs; null where all agree. */
function difference(asked: object, found: object): Difference | null {
  for (const [name, value] of Object.entries(asked)) {
    const is = (found as Record<string, unknown>)[name];
    if (is !== value) return { name, is, asked: value };
  }
  return null;
}

/** Same content whatever the order of fields. */
function same(a: unknown, b: unknown): boolean {
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return a === b;
  const keys = Object.keys(a);
  if (keys.length !== Object.keys(b).length) return false;
  return keys.every(
    (k) => Object.hasOwn(b, k) && same((a as Record<string, unknown>)[k], (b as Record<string, unknown>)[k]),
  );
}
