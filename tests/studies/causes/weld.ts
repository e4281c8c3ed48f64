/** Welds one attempt of the set and judges it, as the game would when the arc has gone out. */
import { createRecorder, createSimulation } from '../../../engine/index.ts';
import { type AttemptRecording, checkRecording, Trace, type Attempt as Welded } from '../../../scoring/index.ts';
import { type Attempt, deviceOf, exerciseOf, posesOf } from './set.ts';

/** One attempt of the set, welded: the file it would be, and what it left behind. */
export interface Specimen {
  recording: AttemptRecording;
  welded: Welded;
}

export function weldAttempt(attempt: Attempt, seed: number): Specimen {
  const exercise = exerciseOf(attempt);
  const device = deviceOf(attempt);
  const { joint, process } = exercise;
  const meta = {
    simulation: { joint, process, cell_mm: 0.75 },
    origin: { kind: 'hand' as const },
    device,
    aids: { pacer: false, beat: false, toeMarks: false, plainView: false, handRig: null },
    exercise,
  };
  const sim = createSimulation(meta.simulation);
  const recorder = createRecorder(sim, meta);
  const trace = new Trace();
  for (const pose of posesOf(attempt, exercise, seed)) trace.add(sim.step(recorder.add(pose)));
  const recording = checkRecording(JSON.parse(JSON.stringify(recorder.finish('hand-finished'))), attempt.bench);
  return {
    recording,
    welded: {
      simulation: recording.simulation,
      trace,
      section: (y_mm) => sim.section(y_mm),
      accounts: sim.accounts(),
      stateHash: sim.hash(),
      states: recorder.states(),
    },
  };
}
