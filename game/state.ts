import { computed, effect, signal } from '@preact/signals';
import type { DeviceInfo, Recording } from '../engine/index.ts';
import {
  type CutFrame,
  type Exercise,
  exerciseNamed,
  exercises,
  type Result,
  type RootPlace,
  type Station,
} from '../scoring/index.ts';
import type { TorchState } from './input/torchTool.ts';
import { levelOf } from './session/level.ts';
import { metalBalance } from './setup.ts';
import type { AttemptEntry } from './storage/attempts.ts';
import { loadPreferences, savePreferences } from './storage/preferences.ts';

/** The finished attempt on the bench. */
export interface Finished {
  id: string;
  made_ms: number;
  recording: Recording;
  /** State hash of the weld as made in this browser; compare with recording.stateHash. */
  hash: string;
  /** How far behind real time it was when it ended as too slow, s. */
  lag_s: number;
  /** Name of the file it was opened from, or null if welded or kept here. */
  file: string | null;
}

export interface Cut {
  y_mm: number;
  /** Pixels per millimetre it was drawn at. */
  scale: number;
  svg: string;
  frame: CutFrame;
  /** The metal's surface there: a and b in turn, mm (along the right and the left plate's face from the root). */
  surface_mm: number[];
  /** What was measured there; null where there is no bead. */
  station: Station | null;
}

export interface Busy {
  what: 'welding again' | 'measuring';
  share: number;
}

export const preferences = signal(loadPreferences());
effect(() => savePreferences(preferences.value));

const FIRST = 'tee-inverted-v';

export const exercise = signal<Exercise>(
  exerciseNamed(preferences.value.exercise ?? FIRST) ?? exerciseNamed(FIRST) ?? exercises[0],
);
export const balance = computed(() => metalBalance(exercise.value));

/** How much the exercise is helped along, after what was kept of it here. */
export const level = computed(() => levelOf(shelf.value, exercise.value));
export const isTest = computed(() => level.value.kind === 'test');

/** The guides in force: as the user has them; none in a test, none at a level without them unless the user asks for them. */
export const guides = computed(() => {
  const { pacer, beatSeen, beatHeard, toeMarks, ownGuides } = preferences.value;
  const none = isTest.value || (level.value.kind === 'without guides' && !ownGuides);
  return {
    pacer: pacer && !none,
    beatSeen: beatSeen && !none,
    beatHeard: beatHeard && !none,
    toeMarks: toeMarks && !none,
  };
});

export const torchState = signal<TorchState>('idle');
export const deviceKind = signal<DeviceInfo['kind'] | null>(null);
/** A demonstration by the robot hand is running. */
export const robotWelding = signal(false);
/** The room is dark: the page's own colours follow the lens. */
export const dark = signal(false);

export const finished = signal<Finished | null>(null);
export const result = signal<Result | null>(null);
/** The root opened along the joint, or null before it has been measured. */
export const opened = signal<RootPlace[] | null>(null);
export const busy = signal<Busy | null>(null);

/** Where the joint is cut, mm. */
export const cutAt = signal(exercise.value.cuts_mm[1] ?? exercise.value.joint.length_mm / 2);
export const cut = signal<Cut | null>(null);
/** Height whose readings the user has asked for although cuts open without them. */
export const revealedAt = signal<number | null>(null);
/** The cut is shown as under the glass: the user wants to measure it first. */
export const readingsHidden = computed(
  () =>
    preferences.value.measureFirst &&
    finished.value !== null &&
    other.value === null &&
    revealedAt.value !== cutAt.value,
);
/** Pixels per millimetre cuts are to be drawn at; the panel finds out what fits. */
export const cutScale = signal(19);
/** Pixels per millimetre they are shown at, where that is less than they can be lettered for. */
export const cutShown = signal(19);
/** Time of the attempt on show; null shows the finished piece. */
export const shownTime = signal<number | null>(null);
export const playing = signal(false);

/** A second attempt laid beside the first for comparison. */
export const other = signal<{ title: string; id: string } | null>(null);
export const otherCut = signal<Cut | null>(null);
export const otherBusy = signal<Busy | null>(null);

export const shelf = signal<AttemptEntry[]>([]);
/** Something went wrong and the user should know; null when all is well. */
export const problem = signal<string | null>(null);
/** Spoken by screen readers. */
export const announcement = signal('');

export const duration_s = computed(() =>
  finished.value ? finished.value.recording.poses.u.length / finished.value.recording.rate_Hz : 0,
);

/** The exercise a recording carries. readRecording has checked it, or it was written here. */
export function exerciseOf(recording: Recording): Exercise | null {
  return recording.exercise as Exercise | null;
}

export function setPreference<K extends keyof typeof preferences.value>(
  key: K,
  value: (typeof preferences.value)[K],
): void {
  preferences.value = { ...preferences.value, [key]: value };
}
