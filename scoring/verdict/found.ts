import type { HandRig } from '../schema/bench.ts';
import type { NoteCode, ReasonCode } from '../schema/result.ts';
import type { OutsideTransfer } from './transfer.ts';

/** Aids as the file names them. */
export type AidName = 'pacer' | 'beat' | 'toeMarks' | 'handRig';

/** The first setting in which two differ. */
export interface Difference {
  name: string;
  is: unknown;
  asked: unknown;
}

type Nothing = Record<never, never>;

/** What each reason against a verdict knows. */
export interface ReasonData extends Record<ReasonCode, object> {
  'no-exercise': Nothing;
  'no-arc': Nothing;
  'judged-length-not-covered': { from_mm: number; to_mm: number; bare_mm: number };
  'vertical-down': Nothing;
  'no-climb': Nothing;
  'dropped-out': { dripped_g: number; fed_g: number };
  'second-pass': { twice_mm: number };
  'machine-too-slow': Nothing;
  'settings-edited': { what: 'joint' | 'settings'; differs: Difference };
  /** From which second on; null: how it ended, or its check number. */
  'recording-edited': { second: number | null };
  'header-edited': Nothing;
  /** The second in which it parts from the saved one, or, of a file without a chain, both check numbers at the end. */
  'state-differs': { second: number } | { is: string; saved: string };
  'exercise-edited': { name: string };
  'piece-edited': { number: number };
  'aids-in-test': { aids: readonly AidName[] };
  'books-open': Nothing;
  /** What of the exercise is under its least, and that least. */
  'outside-transfer': OutsideTransfer;
  'exercise-too-little': { what: 'judged length' | 'size' | 'cuts'; is: number; least: number };
}

/** What each note knows. */
export interface NoteData extends Record<NoteCode, object> {
  robot: Nothing;
  piece: { number: number; seed: string; gap_mm: number; startTemp_C: number; cuts_mm: readonly number[] };
  aids: { aids: readonly AidName[] };
  'hand-rig': HandRig;
  'engine-differs': { welded: string; here: string };
  'no-chain': Nothing;
  'origin-device-mismatch': { origin: string; device: string };
  /** A hand's file that carries what only a robot's does. */
  'robot-left-in-origin': { fields: readonly ('weave' | 'faults')[] };
  /** A column the device cannot measure and how far it varies, mm or degrees. */
  'unmeasured-varies': { column: 'tip' | 'work' | 'travel'; device: string; spread: number };
  'no-check-number': Nothing;
  'study-cell': { cell_mm: number; bench_mm: number };
  /** How close the aim keeps to the exercise's own demonstration, and how long. */
  'follows-demonstration': { apart_mm: number; together_s: number; mirrored: boolean };
  /** Spread of the cycles over their mean, and how many. */
  'machine-beat': { spread: number; intervals: number };
  'not-a-ready-exercise': { name: string };
  'size-over-6': Nothing;
  'profile-changed': { by: string; asked: string };
  'stopped-early': Nothing;
  'metal-dropped': { dripped_g: number };
  'outside-transfer': OutsideTransfer;
  'left-the-room': Nothing;
}

/** A reason before it is said. */
export type FoundReason = { [C in ReasonCode]: { code: C; data: ReasonData[C] } }[ReasonCode];
/** A note before it is said. */
export type FoundNote = { [C in NoteCode]: { code: C; data: NoteData[C] } }[NoteCode];
