import type { AttemptRecording, Exercise } from '../../../scoring/index.ts';
import { bytesOf } from '../../lab/support/attempts.ts';
import { MOUSE, weld } from '../../scoring/welds.ts';

/** What is handed in: some hands that differ, at one exercise. */
export interface Hands {
  exercise: Exercise;
  attempts: readonly AttemptRecording[];
  /** Of one of them. */
  bytes: number;
  arc_s: number;
}

const MANY = 8;

/** Welds so long a run with so many hands, each begun a little higher than the last. */
export function handsOver(length_mm: number): Hands {
  const attempts = Array.from({ length: MANY }, (_, n) =>
    weld({
      joint: { length_mm: length_mm + 27 },
      device: MOUSE,
      weave: { length_mm, shelf_s: 0, start_mm: 8 + n / 100 },
    }),
  );
  const [first] = attempts;
  if (first?.exercise == null) throw new Error('a weld of the tests has an exercise');
  const { exercise, poses } = first;
  return {
    exercise: { ...exercise, name: 'load-tee', title: 'Load tee' },
    attempts,
    bytes: bytesOf(first).length,
    arc_s: poses.trigger.filter(Boolean).length / 100,
  };
}
