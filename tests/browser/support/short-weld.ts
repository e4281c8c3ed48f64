import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { noFaults, recordPoses, weaveHand } from '../../../engine/index.ts';
import { exerciseNamed } from '../../../scoring/index.ts';

const LENGTH_MM = 40;

/** A short weld as a file, and its path; climbed too slowly, so that there is something to say of it. */
export function shortWeld(): string {
  const exercise = exerciseNamed('tee-inverted-v')!;
  const joint = { ...exercise.joint, length_mm: LENGTH_MM };
  const weave = { ...exercise.demonstration, travel_mmps: 1.7, length_mm: LENGTH_MM - 6 };
  const recording = recordPoses(
    {
      simulation: { joint, process: exercise.process, cell_mm: 0.75 },
      origin: { kind: 'hand' },
      device: { kind: 'mouse', measures: { tipToWork: false, workAngle: false, travelAngle: false }, scale: null },
      aids: { pacer: false, beat: true, toeMarks: true, plainView: false, handRig: null },
      exercise: { ...exercise, joint, judged: { from_mm: 10, to_mm: 30 }, cuts_mm: [12, 20, 28] },
    },
    [...weaveHand(weave, noFaults())],
  );
  const path = join(mkdtempSync(join(tmpdir(), 'toehold-short-')), 'short.json');
  writeFileSync(path, JSON.stringify(recording));
  return path;
}
