import type { JointOptions, ProcessOptions } from '../../engine/index.ts';
import type { FREE_IN_HAND } from '../schema/leeway.ts';
import type { Note, NoteCode, Reason, ReasonCode } from '../schema/result.ts';
import type { AidName, Difference, FoundNote, FoundReason, NoteData, ReasonData } from '../verdict/found.ts';
import type { OutsideTransfer } from '../verdict/transfer.ts';
import { said } from './names.ts';

/** Names the transfer the machine ran in. */
function transferSaid(p: OutsideTransfer): string {
  const how =
    p.regime === 'stubbing'
      ? 'too few for this wire: it stubs, stutters and lies cold on the plate'
      : 'too many for this wire and gas: it drops in globules and no longer dips';
  return `Not short-circuiting transfer: ${said(p.volts_V)} V are ${how}. At these amps it dips from about ${said(p.low_V)} to ${said(p.high_V)} V.`;
}

export type ReasonSentences = { [C in ReasonCode]: (p: ReasonData[C]) => string };
/** Every sentence on why an attempt gets no verdict. */
const reasonSentences: ReasonSentences = {
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
  'piece-edited': (p) =>
    `Gap, start temperature or cuts are not those that the seed of plate ${p.number} deals: they were changed.`,
  'aids-in-test': (p) => `A test is welded without guides; on here: ${aidsSaid(p.aids)}.`,
  'books-open': () =>
    'The model cannot account for its heat or metal in this attempt, so what it shows is not judged. Please report the file.',
  'outside-transfer': (p) =>
    `${transferSaid(p)} What the model shows there is not held against limits it stays within.`,
  'exercise-too-little': (p) =>
    p.what === 'cuts'
      ? 'The exercise fixes no cut inside its judged length, so nothing is looked at where it was said beforehand.'
      : `The exercise's ${p.what} is ${said(p.is)} mm; under ${said(p.least)} mm nothing is shown by it.`,
};

export type NoteSentences = { [C in NoteCode]: (p: NoteData[C]) => string };
/** Every sentence on what is of note. */
const noteSentences: NoteSentences = {
  robot: () => 'Welded by the robot hand, not by a person.',
  piece: (p) =>
    `Plate ${p.number}, seed ${p.seed}: gap ${said(p.gap_mm)} mm, plates at ${said(p.startTemp_C, 0)} °C, cuts at ${p.cuts_mm.map((y) => said(y)).join(', ')} mm.`,
  aids: (p) => `Aids on that this exercise does not allow: ${aidsSaid(p.aids)}.`,
  'hand-rig': (p) => `Hand rig on: gun ${said(p.gun_g)} g, hose ${said(p.hose, 2)}.`,
  'engine-differs': (p) =>
    `Welded with engine ${p.welded} and welded again here with ${p.here}: the bead may differ from the one seen then.`,
  'no-chain': () =>
    'An older file, without a chain of check numbers: whether it was changed after welding cannot be told.',
  'origin-device-mismatch': (p) => `Origin says ${p.origin}, device says ${p.device}: kept, not counted.`,
  'robot-left-in-origin': (p) =>
    `Says it is a hand's and carries the robot's ${p.fields.join(' and ')}: kept, not counted.`,
  'unmeasured-varies': (p) =>
    `A ${p.device} does not measure ${COLUMNS[p.column].name}, yet it varies by ${said(p.spread)}${COLUMNS[p.column].unit} in the file: kept, not counted.`,
  'no-check-number': () =>
    'The file carries no check number: whether it is what was welded cannot be told; practice until it is welded again.',
  'study-cell': (p) =>
    `Welded in cells of ${said(p.cell_mm, 2)} mm where the bench has ${said(p.bench_mm, 2)}: a study, not an attempt at the bench.`,
  'follows-demonstration': (p) =>
    `The aim keeps to the exercise's own demonstration${p.mirrored ? ', mirrored,' : ''} within ${said(p.apart_mm, 2)} mm for ${said(p.together_s, 0)} s; hands wander farther. Kept, not counted.`,
  'machine-beat': (p) =>
    `${p.intervals} cycles even to ${said(100 * p.spread, 2)} % of their length; hands spread by some per cent. Kept, not counted.`,
  'not-a-ready-exercise': (p) =>
    `${p.name} is not one of the exercises that come with Toehold; its own limits were used.`,
  'size-over-6': () => 'Over 6 mm in one pass short-circuiting needs a qualified procedure and risks lack of fusion.',
  'profile-changed': (p) => `Judged by ${p.by} instead of the exercise's ${p.asked}.`,
  'stopped-early': () => 'The attempt was stopped before the judged length was welded.',
  'metal-dropped': (p) => `${said(p.dripped_g, 2)} g of metal dropped out of the joint.`,
  'outside-transfer': transferSaid,
  'left-the-room': () =>
    'Liquid metal reached the edge of what the model computes: some of it may lie where no reading sees it.',
};

/** A reason as it goes into a result: with its sentence. */
export function reasonSaid({ code, data }: FoundReason, reasons: ReasonSentences = reasonSentences): Reason {
  // As in advice.ts: table and union are made of the same names, which the compiler cannot follow through a look-up.
  const say = reasons[code] as (p: typeof data) => string;
  return { code, text: say(data) };
}

/** A note as it goes into a result: with its sentence. */
export function noteSaid({ code, data }: FoundNote, notes: NoteSentences = noteSentences): Note {
  const say = notes[code] as (p: typeof data) => string;
  return { code, text: say(data) };
}

const COLUMNS = {
  tip: { name: 'tip-to-work', unit: ' mm' },
  work: { name: 'the work angle', unit: '°' },
  travel: { name: 'the travel angle', unit: '°' },
} as const;

const AIDS: Record<AidName, string> = { pacer: 'pacer', beat: 'beat', toeMarks: 'toe marks', handRig: 'hand rig' };

function aidsSaid(aids: readonly AidName[]): string {
  return aids.map((name) => AIDS[name]).join(', ');
}

function differenceSaid({ name, is, asked }: Difference): string {
  const [words, unit] = SETTINGS[name] ?? [name.replaceAll('_', ' '), ''];
  const value = (x: unknown): string => {
    if (typeof x === 'boolean') return x ? 'yes' : 'no';
    return typeof x === 'number' ? `${said(x, 3)}${unit}` : String(x);
  };
  return `${words} is ${value(is)} instead of ${value(asked)}`;
}

/** Joint and machine settings as they are named at the bench, and their unit. */
const SETTINGS: Partial<Record<string, readonly [words: string, unit: string]>> = {
  kind: ['its kind', ''],
  plateA_mm: ['the right (back) plate', ' mm'],
  plateB_mm: ['the left (edge) plate', ' mm'],
  plateWidth_mm: ['the width of the plates', ' mm'],
  length_mm: ['its length', ' mm'],
  gap_mm: ['the gap', ' mm'],
  startTemp_C: ['the temperature of the plates at the start', ' °C'],
  ambient_C: ['the temperature of the room', ' °C'],
  sink_WpmmK: ['the heat drawn off by clamps', ' W/(mm K)'],
  tabs: ['having run-on and run-off tabs', ''],
  wire_mm: ['the wire', ' mm'],
  feed_mpmin: ['the wire feed', ' m/min'],
  volts_V: ['the voltage', ' V'],
  gas: ['the gas', ''],
  tip_mm: ['the place of the contact tip in the nozzle', ' mm'],
  nozzle_mm: ['the nozzle', ' mm'],
  tipToWork_mm: ['tip-to-work', ' mm'],
  workAngle_deg: ['the work angle', '°'],
  travelAngle_deg: ['the travel angle', '°'],
} satisfies Record<keyof (JointOptions & ProcessOptions) | (typeof FREE_IN_HAND)[number], readonly [string, string]>;
