import type { AttemptRecording, Exercise } from '../../../scoring/index.ts';
import { MOUSE, weld } from '../../scoring/welds.ts';

const welded = new Map<number, AttemptRecording>();

/** A weld of a few millimetres by hand, quick to score; each number gives another hand. */
export function shortAttempt(n: number): AttemptRecording {
  const known = welded.get(n);
  if (known !== undefined) return known;
  const made = weld({
    joint: { length_mm: 30 },
    device: MOUSE,
    weave: { length_mm: 3, shelf_s: 0, start_mm: 8 + n / 100 },
  });
  welded.set(n, made);
  return made;
}

export function bytesOf(recording: unknown): Uint8Array {
  return new TextEncoder().encode(JSON.stringify(recording));
}

/** The exercise those welds are made for, under a name of its own. */
export function shortExercise(): Exercise {
  const { exercise } = shortAttempt(0);
  if (exercise === null) throw new Error('the short weld has an exercise');
  return { ...exercise, name: 'short-tee', title: 'Short tee' };
}
