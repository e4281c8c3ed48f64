// A tip held too far out leaves the root short. Which single change mends it when the same hand welds again?
import { noFaults, recordPoses, weaveHand } from 'toehold/engine';
import { checkRecording, freeExercise, proveAdvice, scoreAttempt } from 'toehold/scoring';

const exercise = freeExercise({
  joint: { kind: 'tee', plateA_mm: 5, plateB_mm: 5, length_mm: 40 },
  process: { volts_V: 19, feed_mpmin: 5 },
  weave: { pattern: 'inverted-v', width_mm: 5, travel_mmps: 2.5, tipToWork_mm: 22, start_mm: 2, length_mm: 36 },
  leg_mm: 5,
  profile: 'aws-d11-static-si',
});
const faults = noFaults();
const recording = checkRecording(
  recordPoses(
    {
      simulation: { joint: exercise.joint, process: exercise.process, cell_mm: 0.75 },
      origin: { kind: 'robot', weave: exercise.demonstration, faults },
      device: { kind: 'robot', measures: { tipToWork: true, workAngle: true, travelAngle: true }, scale: 1 },
      aids: { pacer: false, beat: false, toeMarks: false, plainView: false, handRig: null },
      exercise,
    },
    weaveHand(exercise.demonstration, faults),
  ),
  'far tip',
);

export const before = scoreAttempt(recording);
export const proved = proveAdvice(recording, before, { reruns: 4 });

for (const advice of proved.advice) {
  console.log(advice.proved, advice.change, advice.before?.reading, advice.after?.reading);
  console.log(advice.text);
}
