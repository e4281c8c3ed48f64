import { checkChain, ENGINE_VERSION } from '../../engine/index.ts';
import type { Attempt } from '../attempt/attempt.ts';
import { pieceFollows } from '../exercises/piece.ts';
import { exerciseNamed } from '../exercises/ready.ts';
import { asAsked } from '../schema/asked.ts';
import type { Exercise } from '../schema/exercise.ts';
import { FREE_IN_HAND, type FreeSetting, isLeft, leftSaid } from '../schema/leeway.ts';
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
  const process = settingsOff(exercise, recording);
  if (process !== null) reasons.push({ code: 'settings-edited', data: { what: 'settings', differs: process } });
  const ready = exerciseNamed(exercise.name);
  if (!given && ready !== undefined && !same(asAsked(ready), asAsked(exercise))) {
    reasons.push({ code: 'exercise-edited', data: { name: exercise.name } });
  }
  if (exercise.piece !== undefined && !pieceFollows(exercise)) {
    reasons.push({ code: 'piece-edited', data: { number: exercise.piece.number } });
  }
  const parted = partedFrom(recording, attempt);
  if (parted !== null) reasons.push(parted);
  return reasons;
}

/** The first setting that is neither as given nor where the exercise leaves it to the trainee; null: all are. */
function settingsOff(exercise: Exercise, { simulation, device, poses }: AttemptRecording): Difference | null {
  const { settings, free, process } = exercise;
  if (settings === 'own process') return null;
  for (const [name, asked] of Object.entries(process)) {
    const left = free?.[name as FreeSetting] ?? null;
    const is = simulation.process[name as keyof Exercise['process']];
    if (left === null ? is !== asked : !isLeft(free, name, is))
      return { name, is, asked: left === null ? asked : leftSaid(left) };
  }
  return heldOff(exercise, device, poses);
}

/** Where a device cannot tell how the gun is held, that is a setting too: the first that is not where the exercise leaves it. */
function heldOff(
  { free, hold }: Exercise,
  { measures }: AttemptRecording['device'],
  poses: AttemptRecording['poses'],
): Difference | null {
  const columns = { tipToWork_mm: 'tip', workAngle_deg: 'work', travelAngle_deg: 'travel' } as const;
  const told = {
    tipToWork_mm: measures.tipToWork,
    workAngle_deg: measures.workAngle,
    travelAngle_deg: measures.travelAngle,
  };
  for (const name of FREE_IN_HAND) {
    const left = free?.[name] ?? null;
    if (left === null) continue;
    const quanta = name === 'tipToWork_mm' ? 100 : 10;
    // Poses are kept in whole quanta.
    const wide = { from: left.from - 0.5 / quanta, to: left.to + 0.5 / quanta };
    const held = told[name] ? [] : Array.from(poses[columns[name]], (value) => value / quanta);
    const is = [hold[name], ...held].find((value) => value < wide.from || value > wide.to);
    if (is !== undefined) return { name, is, asked: leftSaid(left) };
  }
  return null;
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
