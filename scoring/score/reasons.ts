import { checkChain, ENGINE_VERSION } from '../../engine/index.ts';
import { exerciseNamed, FREE_NAME } from '../exercises/index.ts';
import { type Span, spanBetween } from '../hand/trace.ts';
import type { AttemptRecording, Exercise, Note, Reason, Result } from '../schema/index.ts';
import type { Attempt } from './attempt.ts';
import { said } from './names.ts';
import { downwardShare, rise_mm } from './passes.ts';

/** More metal dropped out than this share of the wire fed, and the bead is no bead to judge. */
const HEAVY_DROP = 0.1;
const NOTED_DROP = 0.005;
/** More of the arc time downward than this is vertical-down. */
const DOWN_SHARE = 0.3;
/** An arc that burned over the judged length for some seconds and rose by less than this share of it went nowhere. */
const LEAST_RISE = 0.3;
/** Heat or metal that the model cannot account for beyond these shares: what it shows is not to be judged. */
const OPEN_ENERGY = 1e-3;
const OPEN_MASS = 1e-6;
/** Samples: 5 s. */
const LONG_ENOUGH = 500;
/** More of the judged length welded over again than this is a second pass, mm. */
const SECOND_PASS_MM = 5;

export interface ReasonQuestion {
  recording: AttemptRecording;
  attempt: Attempt;
  /** The exercise judged by; null: none. */
  exercise: Exercise | null;
  /** The exercise came with the question and not with the file. */
  exerciseGiven: boolean;
  bead: Result['bead'];
  /** Length of the judged joint over which the arc came back to finished bead. */
  weldedTwice_mm: number;
  /** Stretches of arc that are technique and not the climb: crater fill, a restart until it is past its stop. */
  technique: readonly Span[];
}

/** Why an attempt gets no verdict; empty: it gets one. */
export function reasonsFor(q: ReasonQuestion): Reason[] {
  const { recording, attempt, exercise, bead } = q;
  const reasons: Reason[] = [];
  const say = (code: Reason['code'], text: string): void => {
    reasons.push({ code, text });
  };
  if (attempt.accounts.arcTime_s === 0) {
    say('no-arc', 'No arc burned in this attempt.');
    return reasons;
  }
  if (exercise === null) {
    say(
      'no-exercise',
      'No exercise is named in the file, so no size, no judged length and no limits are known. Name one to score it.',
    );
    return reasons;
  }
  const { energyError, massError } = attempt.accounts;
  // Written so that a number that is none does not pass.
  if (!(energyError <= OPEN_ENERGY && massError <= OPEN_MASS)) {
    say(
      'books-open',
      'The model cannot account for its heat or metal in this attempt, so what it shows is not judged. Please report the file.',
    );
  }
  if (recording.ended === 'too-slow') {
    say(
      'machine-too-slow',
      'The machine could not keep real time and the attempt was stopped there; a slowed arc is not judged.',
    );
  }
  const { from_mm, to_mm } = exercise.judged;
  if (bead.bare_mm.length > 0) {
    say(
      'judged-length-not-covered',
      `The judged length runs from ${said(from_mm)} to ${said(to_mm)} mm; ${bead.bare_mm.length} mm of it carry no weld.`,
    );
  }
  const way = wayOf(attempt, from_mm, to_mm, q.technique);
  if (way === 'down') {
    say(
      'vertical-down',
      'Welded downhill. Vertical-down is another exercise and another procedure: shown, not judged.',
    );
  } else if (way === 'nowhere') {
    say('no-climb', 'The arc moved about the joint without climbing it: no weave to judge.');
  } else if (q.weldedTwice_mm > SECOND_PASS_MM) {
    say('second-pass', `The arc went back over ${q.weldedTwice_mm} mm of finished bead; this exercise is one pass.`);
  }
  if (attempt.accounts.dripped_g > HEAVY_DROP * attempt.accounts.fed_g) {
    say(
      'dropped-out',
      `${said(attempt.accounts.dripped_g, 2)} g of ${said(attempt.accounts.fed_g, 2)} g dropped out of the joint.`,
    );
  }
  const leanedOn = isTest(exercise) ? aidsUsed(recording, exercise) : [];
  if (leanedOn.length > 0) say('aids-in-test', `A test is welded without guides; on here: ${leanedOn.join(', ')}.`);
  reasons.push(...edits(q, exercise));
  return reasons;
}

/** An exercise that allows no pacer, beat or marks is a test. */
function isTest({ aids }: Exercise): boolean {
  return !aids.pacer && !aids.beat && !aids.toeMarks;
}

/** Which way the torch went over the judged length, a weave's own ups and downs and a restart's drop taken out. */
function wayOf(
  attempt: Attempt,
  from_mm: number,
  to_mm: number,
  technique: readonly Span[],
): 'up' | 'down' | 'nowhere' {
  const span = spanBetween(attempt.trace, from_mm, to_mm);
  if (span === null) return 'up';
  const rise = rise_mm(attempt.trace, span) / (to_mm - from_mm);
  if (rise < -LEAST_RISE) return 'down';
  if (rise < LEAST_RISE) return span.to - span.from > LONG_ENOUGH ? 'nowhere' : 'up';
  return downwardShare(attempt.trace, span, technique) > DOWN_SHARE ? 'down' : 'up';
}

function edits(q: ReasonQuestion, exercise: Exercise): Reason[] {
  const { recording, attempt } = q;
  const reasons: Reason[] = [];
  const joint = difference(exercise.joint, recording.simulation.joint);
  if (joint !== null) reasons.push({ code: 'settings-edited', text: `The joint is not the exercise's: ${joint}.` });
  const process = exercise.settings === 'fixed' ? difference(exercise.process, recording.simulation.process) : null;
  if (process !== null)
    reasons.push({ code: 'settings-edited', text: `The settings are not the exercise's: ${process}.` });
  const ready = exerciseNamed(exercise.name);
  if (!q.exerciseGiven && ready !== undefined && !same(ready, exercise)) {
    reasons.push({
      code: 'exercise-edited',
      text: `The file carries an exercise called ${exercise.name} that is not the ready one of that name.`,
    });
  }
  const parted = partedFrom(recording, attempt);
  if (parted !== null) reasons.push(parted);
  return reasons;
}

/** Where file and weld no longer go together; null where they do, or where that cannot be told. */
function partedFrom(recording: AttemptRecording, attempt: Attempt): Reason | null {
  const finding = checkChain(recording, attempt.states);
  switch (finding.found) {
    case 'header-changed':
      return {
        code: 'header-edited',
        text: 'Settings, exercise or something else above the poses was changed in the file after welding; which of them cannot be told.',
      };
    case 'poses-changed':
      return {
        code: 'recording-edited',
        text: `Poses were changed in the file after welding, from second ${finding.second} on.`,
      };
    case 'ending-changed':
      return {
        code: 'recording-edited',
        text: 'How the attempt ended, or its check number, was changed in the file after welding.',
      };
    case 'state-differs':
      return {
        code: 'state-differs',
        text: `Poses and settings are as they were saved, yet welded again here the attempt parts from the saved one in second ${finding.second}. That should not happen with one engine: please report the file.`,
      };
    case 'no-chain':
      return partedWithoutChain(recording, attempt);
    default:
      return null;
  }
}

/** A file without a chain has one check number at its end: it tells that something differs, never what. */
function partedWithoutChain(recording: AttemptRecording, attempt: Attempt): Reason | null {
  const { stateHash } = recording;
  if (stateHash === null || recording.engine !== ENGINE_VERSION || stateHash === attempt.stateHash) return null;
  return {
    code: 'state-differs',
    text: `Welded again, this recording ends in another state (check number ${attempt.stateHash}) than it was saved with (${stateHash}); without a chain of check numbers it cannot be told why.`,
  };
}

/** First field that differs, in words; null where all agree. */
function difference(asked: Record<string, unknown> | object, found: object): string | null {
  for (const [name, value] of Object.entries(asked)) {
    const other = (found as Record<string, unknown>)[name];
    if (other !== value) return `${name} is ${String(other)} instead of ${String(value)}`;
  }
  return null;
}

/** Same content whatever the order of fields. */
function same(a: unknown, b: unknown): boolean {
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return a === b;
  const keys = Object.keys(a);
  if (keys.length !== Object.keys(b).length) return false;
  return keys.every(
    (k) => Object.hasOwn(b, k) && same((a as Record<string, unknown>)[k], (b as Record<string, unknown>)[k]),
  );
}

/** Facts that change no reading but should be known to whoever looks at the attempt. */
export function notesFor(q: ReasonQuestion, profileName: string | null): Note[] {
  const { recording, attempt, exercise } = q;
  const notes: Note[] = [];
  const say = (code: Note['code'], text: string): void => {
    notes.push({ code, text });
  };
  if (recording.origin.kind === 'robot') say('robot', 'Welded by the robot hand, not by a person.');
  if ((recording.origin.kind === 'robot') !== (recording.device.kind === 'robot')) {
    say(
      'origin-device-mismatch',
      `Origin says ${recording.origin.kind}, device says ${recording.device.kind}: kept, not counted.`,
    );
  }
  if (recording.engine !== ENGINE_VERSION) {
    say(
      'engine-differs',
      `Welded with engine ${recording.engine} and welded again here with ${ENGINE_VERSION}: the bead may differ from the one seen then.`,
    );
  }
  if (recording.chain === null && recording.stateHash !== null) {
    say(
      'no-chain',
      'An older file, without a chain of check numbers: whether it was changed after welding cannot be told.',
    );
  }
  const aids = aidsUsed(recording, exercise);
  if (aids.length > 0) say('aids', `Aids on that this exercise does not allow: ${aids.join(', ')}.`);
  if (recording.aids.handRig !== null) {
    say(
      'hand-rig',
      `Hand rig on: gun ${said(recording.aids.handRig.gun_g)} g, hose ${said(recording.aids.handRig.hose, 2)}.`,
    );
  }
  if (exercise !== null) {
    if (exerciseNamed(exercise.name) === undefined && exercise.name !== FREE_NAME) {
      say(
        'not-a-ready-exercise',
        `${exercise.name} is not one of the exercises that come with Toehold; its own limits were used.`,
      );
    }
    if (profileName !== null && profileName !== exercise.profile) {
      say('profile-changed', `Judged by ${profileName} instead of the exercise's ${exercise.profile}.`);
    }
    if (exercise.asked.size_mm > 6) {
      say(
        'size-over-6',
        'Over 6 mm in one pass short-circuiting needs a qualified procedure and risks lack of fusion.',
      );
    }
  }
  const dropped = attempt.accounts.dripped_g;
  if (dropped > NOTED_DROP * attempt.accounts.fed_g)
    say('metal-dropped', `${said(dropped, 2)} g of metal dropped out of the joint.`);
  if ((recording.ended === 'stopped' || recording.ended === 'time-limit') && q.bead.bare_mm.length > 0)
    say('stopped-early', 'The attempt was stopped before the judged length was welded.');
  return notes;
}

function aidsUsed(recording: AttemptRecording, exercise: Exercise | null): string[] {
  const names = { pacer: 'pacer', beat: 'beat', toeMarks: 'toe marks' } as const;
  const used: string[] = [];
  for (const [key, name] of Object.entries(names) as [keyof typeof names, string][]) {
    if (recording.aids[key] && exercise !== null && !exercise.aids[key]) used.push(name);
  }
  if (recording.aids.handRig !== null && exercise !== null && !exercise.aids.handRig) used.push('hand rig');
  return used;
}
