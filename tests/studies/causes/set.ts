/** Faulty attempts with their true cause: joint and settings, hand, device, and what was done wrong. */
import {
  defaultWeave,
  type HandFaults,
  noFaults,
  type Pose,
  type Recording,
  weaveHand,
} from '../../../engine/index.ts';
import { type Exercise, exerciseNamed, freeExercise } from '../../../scoring/index.ts';
import type { Cause } from './causes.ts';
import type { Change } from './hands.ts';

type Weave = Exercise['demonstration'];

/** Joints and settings the set is welded in; ready exercises by name, so that the set follows when their settings are set anew. */
const BENCHES = {
  tee: 'tee-inverted-v',
  thin: 'tee-thin',
  lap: 'lap-5',
} as const;
export type BenchName = keyof typeof BENCHES;

/** What the hand does otherwise than the exercise shows: all left out is a good attempt. */
export interface Attempt {
  bench: BenchName;
  /** Of the weave that is followed, as a change of the one shown. */
  weave?: (shown: Weave) => Partial<Weave>;
  faults?: Partial<HandFaults>;
  change?: Change | readonly Change[];
  /** Machine or joint set otherwise; the exercise asks for it so, the hand is as asked. */
  process?: (p: Exercise['process']) => Partial<Exercise['process']>;
  joint?: (j: Exercise['joint']) => Partial<Exercise['joint']>;
  /** A mouse measures neither tip nor angles. */
  mouse?: true;
}

export interface Labelled extends Attempt {
  name: string;
  /** One cause, or the two of a pair: naming either first is right. */
  truth: readonly [Cause] | readonly [Cause, Cause];
}

/** Tremor that every hand of the set has: no two seeds weld the same bead. */
const TREMOR_MM = 0.12;
const TIMING = 0.04;

export function exerciseOf(a: Attempt): Exercise {
  const ready = exerciseNamed(BENCHES[a.bench]);
  if (ready === undefined) throw new Error(`no ready exercise ${BENCHES[a.bench]}`);
  if (a.process === undefined && a.joint === undefined) return ready;
  const process = { ...ready.process, ...a.process?.(ready.process) };
  const joint = { ...ready.joint, ...a.joint?.(ready.joint) };
  const free = freeExercise({
    joint,
    process,
    weave: ready.demonstration,
    leg_mm: ready.asked.size_mm,
    profile: ready.profile,
  });
  return { ...free, asked: ready.asked, target: ready.target };
}

export function posesOf(a: Attempt, exercise: Exercise, seed: number): Pose[] {
  const shown: Weave = { ...defaultWeave(), ...exercise.demonstration };
  const weave = { ...shown, ...a.weave?.(shown) };
  const faults: HandFaults = { ...noFaults(seed), tremor_mm: TREMOR_MM, timing: TIMING, ...a.faults, seed };
  const changes = a.change === undefined ? [] : typeof a.change === 'function' ? [a.change] : a.change;
  return changes.reduce((poses, change) => change(poses), [...weaveHand(weave, faults)]);
}

export function deviceOf(a: Attempt): Recording['device'] {
  return a.mouse
    ? { kind: 'mouse', measures: { tipToWork: false, workAngle: false, travelAngle: false }, scale: null }
    : { kind: 'pen', measures: { tipToWork: true, workAngle: true, travelAngle: true }, scale: 1 };
}
