// Weld a tee with the robot hand and score it by an acceptance profile.
import { noFaults, recordPoses, weaveHand } from 'toehold/engine';
import { attemptOf, checkRecording, freeExercise, judgeAttempt, sectionSvg } from 'toehold/scoring';

const exercise = freeExercise({
  joint: { kind: 'tee', plateA_mm: 5, plateB_mm: 5, length_mm: 40 },
  process: { volts_V: 19, feed_mpmin: 5 },
  weave: { pattern: 'inverted-v', width_mm: 5, travel_mmps: 2, start_mm: 2, length_mm: 36 },
  leg_mm: 5,
  profile: 'aws-d11-static-si',
});
const faults = noFaults();
const welded = recordPoses(
  {
    simulation: { joint: exercise.joint, process: exercise.process, cell_mm: 0.75 },
    origin: { kind: 'robot', weave: exercise.demonstration, faults },
    device: { kind: 'robot', measures: { tipToWork: true, workAngle: true, travelAngle: true }, scale: 1 },
    aids: { pacer: false, beat: false, toeMarks: false, plainView: false, handRig: null },
    exercise,
  },
  weaveHand(exercise.demonstration, faults),
);

export const recording = checkRecording(welded, 'robot weld');
const attempt = attemptOf(recording);
export const result = judgeAttempt(recording, attempt);
export const cut = sectionSvg(attempt.section(25), result.bead.stations.find((s) => s.y_mm === 25) ?? null);

console.log(`${result.verdict}: ${result.advice[0]?.text}`);
for (const line of result.lines) console.log(line.measure, line.side, line.reading, line.plusMinus, line.verdict);
