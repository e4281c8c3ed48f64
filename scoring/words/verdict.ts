import type { Note, NoteCode, Reason, ReasonCode } from '../schema/result.ts';
import type { AidName, Difference, FoundNote, FoundReason, NoteData, ReasonData } from '../verdict/found.ts';
import { said } from './names.ts';

/** Every sentence on why an attempt gets no verdict. */
const reasons: { [C in ReasonCode]: (p: ReasonData[C]) => string } = {
  'no-exercise': () =>
    'No exercise is named in the file, so no size, no judged length and no limits are known. Name one to score it.',
  'no-arc': () => 'No arc burned in this attempt.',
  'judged-length-not-covered': (p) =>
    `The judged length runs from ${said(p.from_mm)} to ${said(p.to_mm)} mm; ${p.bare_mm} mm of it carry no weld.`,
  'vertical-down': () => 'Welded downhill. Vertical-down is another exercise and another procedure: shown, not judged.',
  'no-climb': () => 'The arc moved about the joint without climbing it: no weave to judge.',
  'dropped-out': (p) => `${said(p.dripped_g, 2)} g of ${said(p.fed_g, 2)} g dropped out of the joint.`,
  'second-pass': (p) => `The arc went back over ${p.twice_mm} mm of finished bead; this exercise is one pass.`,
  'machine-too-slow': () =>
    'The machine could not keep real time and the attempt was stopped there; a slowed arc is not judged.',
  'settings-edited': (p) =>
    p.what === 'joint'
      ? `The joint is not the exercise's: ${differenceSaid(p.differs)}.`
      : `The settings are not the exercise's: ${differenceSaid(p.differs)}.`,
  'recording-edited': (p) =>
    p.second === null
      ? 'How the attempt ended, or its check number, was changed in the file after welding.'
      : `Poses were changed in the file after welding, from second ${p.second} on.`,
  'header-edited': () =>
    'Settings, exercise or something else above the poses was changed in the file after welding; which of them cannot be told.',
  'state-differs': (p) =>
    'second' in p
      ? `Poses and settings are as they were saved, yet welded again here the attempt parts from the saved one in second ${p.second}. That should not happen with one engine: please report the file.`
      : `Welded again, this recording ends in another state (check number ${p.is}) than it was saved with (${p.saved}); without a chain of check numbers it cannot be told why.`,
  'exercise-edited': (p) => `The file carries an exercise called ${p.name} that is not the ready one of that name.`,
  'aids-in-test': (p) => `A test is welded without guides; on here: ${aidsSaid(p.aids)}.`,
  'books-open': () =>
    'The model cannot account for its heat or metal in this attempt, so what it shows is not judged. Please report the file.',
};

/** Every sentence on what is of note. */
const notes: { [C in NoteCode]: (p: NoteData[C]) => string } = {
  robot: () => 'Welded by the robot hand, not by a person.',
  aids: (p) => `Aids on that this exercise does not allow: ${aidsSaid(p.aids)}.`,
  'hand-rig': (p) => `Hand rig on: gun ${said(p.gun_g)} g, hose ${said(p.hose, 2)}.`,
  'engine-differs': (p) =>
    `Welded with engine ${p.welded} and welded again here with ${p.here}: the bead may differ from the one seen then.`,
  'no-chain': () =>
    'An older file, without a chain of check numbers: whether it was changed after welding cannot be told.',
  'origin-device-mismatch': (p) => `Origin says ${p.origin}, device says ${p.device}: kept, not counted.`,
  'not-a-ready-exercise': (p) =>
    `${p.name} is not one of the exercises that come with Toehold; its own limits were used.`,
  'size-over-6': () => 'Over 6 mm in one pass short-circuiting needs a qualified procedure and risks lack of fusion.',
  'profile-changed': (p) => `Judged by ${p.by} instead of the exercise's ${p.asked}.`,
  'stopped-early': () => 'The attempt was stopped before the judged length was welded.',
  'metal-dropped': (p) => `${said(p.dripped_g, 2)} g of metal dropped out of the joint.`,
};

/** A reason as it goes into a result: with its sentence. */
export function reasonSaid({ code, data }: FoundReason): Reason {
  // As in advice.ts: table and union are made of the same names, which the compiler cannot follow through a look-up.
  const say = reasons[code] as (p: typeof data) => string;
  return { code, text: say(data) };
}

/** A note as it goes into a result: with its sentence. */
export function noteSaid({ code, data }: FoundNote): Note {
  const say = notes[code] as (p: typeof data) => string;
  return { code, text: say(data) };
}

const AIDS: Record<AidName, string> = { pacer: 'pacer', beat: 'beat', toeMarks: 'toe marks', handRig: 'hand rig' };

function aidsSaid(aids: readonly AidName[]): string {
  return aids.map((name) => AIDS[name]).join(', ');
}

function differenceSaid(d: Difference): string {
  return `${d.name} is ${String(d.is)} instead of ${String(d.asked)}`;
}
