import { handOfAmount, weaveHand } from '../../../engine/index.ts';
import type { AttemptRecording } from '../../../scoring/index.ts';
import { exerciseOf, MOUSE, record } from '../welds.ts';

/** An unsteady hand's attempt of a few millimetres at an exercise of the school's own; another length is another hand. */
export function shortTee(length_mm: number): AttemptRecording {
  const free = exerciseOf({ joint: { length_mm: 30 }, weave: { shelf_s: 0 } });
  const exercise = { ...free, name: 'short-tee', title: 'Short tee' };
  const simulation = { joint: exercise.joint, process: exercise.process, cell_mm: 0.75 };
  const aids = { pacer: false, beat: false, toeMarks: false, plainView: false, handRig: null };
  // A mouse holds tip and angles: what it does not measure may not vary.
  const faults = { ...handOfAmount(Math.round(100 * length_mm), 0.6), driftTip_mm: 0, driftTravel_deg: 0 };
  return record(
    { simulation, origin: { kind: 'hand' }, device: MOUSE, aids, exercise },
    weaveHand({ ...exercise.demonstration, length_mm }, faults),
  );
}
