// Read a recording from text. What is wrong with it, where, what was found and what is allowed comes back as a sentence and as data.
import { defaultOptions, recordPoses } from 'toehold/engine';
import { InputError, type Problem, readRecording } from 'toehold/scoring';

const made = recordPoses(
  {
    simulation: defaultOptions(),
    origin: { kind: 'hand' },
    device: { kind: 'mouse', measures: { tipToWork: false, workAngle: false, travelAngle: false }, scale: null },
    aids: { pacer: false, beat: false, toeMarks: false, plainView: false, handRig: null },
    exercise: null,
  },
  [{ u_mm: 0, y_mm: 5, tipToWork_mm: 12, workAngle_deg: 45, travelAngle_deg: 8, trigger: true }],
);
const text = JSON.stringify(made);

export const recording = readRecording(text, 'monday.json');

/** What is wrong with a text; nothing where it can be read. */
export function problemsIn(changed: string, file: string): readonly Problem[] {
  try {
    readRecording(changed, file);
    return [];
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    console.log(error.message);
    return error.problems;
  }
}

export const sound = problemsIn(text, 'monday.json');
export const outOfRange = problemsIn(text.replace('"volts_V":18', '"volts_V":180'), 'edited.json');
export const cutOff = problemsIn(text.slice(0, text.length / 2), 'cut-off.json');
