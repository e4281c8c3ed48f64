import type { Exercise } from '../schema/exercise.ts';
import { settingsByEar, straightRun, twoToePause } from './first-runs.ts';
import { crescent, gapTee, invertedVee, lap, testPiece, thinTee, triangle, warmTee } from './weaves.ts';

/** The ready exercises in teaching order. */
export const exercises: readonly Exercise[] = [
  straightRun,
  twoToePause,
  settingsByEar,
  invertedVee,
  triangle,
  crescent,
  lap,
  thinTee,
  gapTee,
  warmTee,
  testPiece,
];

/** Finds a ready exercise by its name; undefined when there is none. */
export function exerciseNamed(name: string): Exercise | undefined {
  return exercises.find((e) => e.name === name);
}
