import { describe, expect, it } from 'vitest';
import { noFaults, recordPoses, type Section, weaveHand } from '../../../engine/index.ts';
import { attemptOf, checkRecording, freeExercise, judgeAttempt, openedRoot, Survey } from '../../../scoring/index.ts';

const exercise = freeExercise({
  joint: { kind: 'tee', plateA_mm: 5, plateB_mm: 5, length_mm: 40 },
  process: { volts_V: 18, feed_mpmin: 4.6 },
  weave: { pattern: 'inverted-v', width_mm: 5, travel_mmps: 2.6, start_mm: 2, length_mm: 36 },
  leg_mm: 5,
  profile: 'aws-d11-static-si',
});
const recording = checkRecording(
  recordPoses(
    {
      simulation: { joint: exercise.joint, process: exercise.process, cell_mm: 1 },
      origin: { kind: 'robot', weave: exercise.demonstration, faults: noFaults() },
      device: { kind: 'robot', measures: { tipToWork: true, workAngle: true, travelAngle: true }, scale: 1 },
      aids: { pacer: false, beat: false, toeMarks: false, plainView: false, handRig: null },
      exercise,
    },
    weaveHand(exercise.demonstration, noFaults()),
  ),
  'robot weld',
);

describe('an attempt that is scored', () => {
  const welded = attemptOf(recording);
  const cuts = new Map<number, number>();
  const section = (y_mm: number): Section => {
    cuts.set(y_mm, (cuts.get(y_mm) ?? 0) + 1);
    return welded.section(y_mm);
  };
  const survey = new Survey(section);
  const result = judgeAttempt(recording, { ...welded, section }, { survey });

  it('is cut at every millimetre of its joint, and nowhere twice', () => {
    for (let y = 0; y <= exercise.joint.length_mm; y++) expect(cuts.get(y), `cuts at ${y} mm`).toBe(1);
    expect([...cuts.values()].filter((n) => n !== 1)).toEqual([]);
    expect(survey.cuts).toBe(cuts.size);
  });

  it('is not cut again for what is shown of it', () => {
    const before = survey.cuts;
    openedRoot(survey, exercise.joint.length_mm);
    for (const { y_mm, ...station } of result.bead.stations)
      expect(survey.at(y_mm)?.station).toEqual({ y_mm, ...station });
    expect(survey.cuts).toBe(before);
  });

  it('comes to the same digits with cuts of its own', () => {
    expect(judgeAttempt(recording, welded)).toEqual(result);
  });
});
