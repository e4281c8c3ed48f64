import { computed, signal } from '@preact/signals-core';
import type { DeviceInfo, Recording } from '../../../engine/index.ts';
import {
  type Change,
  type CutFrame,
  type EtchedCut,
  type Exercise,
  exerciseNamed,
  exercises,
  type FirstProof,
  type Judgement,
  type Language,
  type OwnReading,
  type Result,
  type RootPlace,
  resultOf,
  type Station,
} from '../../../scoring/index.ts';
import type { TorchState } from '../hand/torch-tool.ts';
import { practised } from '../practice/due.ts';
import { isKind, type OwnJudgement, type PracticeRecord, type RetentionStep } from '../practice/record.ts';
import type { DrillView, NamingView } from '../practice/views.ts';
import { attemptsUsed, levelOf } from './level.ts';
import { type Preferences, preferencesFrom } from './preferences.ts';
import type { Problem, Refusal } from './problem.ts';
import type { Removed } from './removed.ts';
import { metalBalance } from './setup.ts';
import type { AttemptEntry, StoredCoupon } from './shelf.ts';
import type { Unfinished } from './unfinished.ts';

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

/** A cut being measured by the trainee. */
export interface Measuring {
  y_mm: number;
  /** As it lies under the glass; null until the bench has sawn it. */
  cut: EtchedCut | null;
  /** Beside the bench's own reading; null until compared. */
  reading: OwnReading | null;
  /** Why the marks could not be read. */
  refused: Refusal | null;
}

/** What a screen reader is told, as data. */
export type Announcement =
  | { code: 'torch'; torch: TorchState }
  | { code: 'ended'; ended: Recording['ended'] }
  | { code: 'verdict' }
  | { code: 'say-first'; why: Held['why'] };

/** What the user should know though nothing is wrong. */
export type Notice = 'asks-to-keep' | 'may-be-cleared';

/**
 * What the screen is for just now: a bare piece waits (rest), the arc burns or may be struck again (weld), the finished piece is read
 * (read), or a moment of it is looked at again (replay).
 */
export type BenchStage = 'rest' | 'weld' | 'read' | 'replay';

/** An attempt that has been measured and is not shown yet, and what has to be said first. */
export interface Held {
  judgement: Judgement;
  result: Result;
  strip: RootPlace[];
  why: 'judge' | 'name';
}

/** A test after a while that is being welded. */
export interface RetentionTest {
  exercise: string;
  step: RetentionStep;
  base_ms: number;
}

/** What a level of the trace shows while welding. */
export interface Live {
  t_s: number;
  aimY_mm: number;
  current_A: number;
  tipToWork_mm: number;
  nozzleTouching: boolean;
}

const FIRST = 'tee-inverted-v';
/** Pixels per millimetre of a cut before its place has been measured. */
const FIRST_SCALE = 19;

/** The ready exercise of a name, or the one the bench begins with. */
export function readyExercise(name: string | null): Exercise {
  return exerciseNamed(name ?? FIRST) ?? exerciseNamed(FIRST) ?? exercises[0];
}

/** The exercise chosen last: one made here, or a ready one. */
export function chosenExercise({ exercise, exercises: made }: Pick<Preferences, 'exercise' | 'exercises'>): Exercise {
  return made.find((e) => e.name === exercise) ?? readyExercise(exercise);
}

/**
 * Everything that can be seen, as signals. Knows no clock, no store and no page; the session changes it, panels show it. One list, so that
 * what the screen depends on is read in one place, however long.
 */
export function createState() {
  const preferences = signal<Preferences>(preferencesFrom(null));
  const exercise = signal<Exercise>(readyExercise(null));
  const shelf = signal<AttemptEntry[]>([]);
  const removed = signal<Removed | null>(null);
  const finished = signal<Finished | null>(null);
  const other = signal<{ title: string | null; id: string } | null>(null);
  const cutAt = signal(cutOf(exercise.value));
  const revealedAt = signal<number | null>(null);
  const torchState = signal<TorchState>('idle');
  const robotWelding = signal(false);
  const busy = signal<Busy | null>(null);
  const practice = signal<PracticeRecord[]>([]);
  const held = signal<Held | null>(null);
  const retention = signal<RetentionTest | null>(null);
  const drill = signal<DrillView | null>(null);
  /** Seen guides are away: the hand holds without them. */
  const faded = signal(false);
  const tests = computed(() => practice.value.filter(isKind('retention')));
  const shownTime = signal<number | null>(null);
  const judgement = signal<Judgement | null>(null);
  const otherJudgement = signal<Judgement | null>(null);
  /** The language this browser asks for, where the user has chosen none. */
  const usualLanguage = signal<Language>('en');
  const wantedLanguage = computed(() => preferences.value.language ?? usualLanguage.value);
  /** Languages whose words are here; English always is. */
  const spoken = signal<readonly Language[]>(['en']);
  const language = computed(() => (spoken.value.includes(wantedLanguage.value) ? wantedLanguage.value : 'en'));
  const said = (judged: Judgement | null): Result | null => judged && resultOf(judged, language.value);

  /** How much the exercise is helped along, after what was kept of it here. */
  const level = computed(() => levelOf(practised(shelf.value, tests.value), exercise.value, preferences.value.trainee));
  /** Attempts used up and allowed; null where any number counts. */
  const used = computed(() => attemptsUsed(shelf.value, exercise.value, preferences.value.trainee));
  const isTest = computed(() => level.value.kind === 'test');
  /** The guides in force: as the user has them; none in a test, none at a level without them unless the user asks for them. */
  const guides = computed(() => {
    const { pacer, beatSeen, beatHeard, toeMarks, ownGuides } = preferences.value;
    const none = isTest.value || retention.value !== null || (level.value.kind === 'without guides' && !ownGuides);
    return {
      pacer: pacer && !none,
      beatSeen: beatSeen && !none && !faded.value,
      beatHeard: beatHeard && !none,
      toeMarks: toeMarks && !none && !faded.value,
    };
  });

  return {
    preferences,
    exercise,
    balance: computed(() => metalBalance(exercise.value)),
    level,
    used,
    isTest,
    guides,

    torchState,
    deviceKind: signal<DeviceInfo['kind'] | null>(null),
    /** A demonstration by the robot hand is running. */
    robotWelding,
    /** The room is dark: the page's own colours follow the lens. */
    dark: signal(false),
    /** Read-outs while welding, renewed a few times a second; null before the first. */
    live: signal<Live | null>(null),
    /** Whole seconds left to strike again. */
    restrikeLeft_s: signal(0),

    finished,
    usualLanguage,
    wantedLanguage,
    spoken,
    /** The one on screen. */
    language,
    /** What the attempt came to, before it is said. */
    judgement,
    /** The same in the language on screen. */
    result: computed(() => said(judgement.value)),
    /** Measured, and not shown yet: the trainee says first what it came to, or what was wrong with it. */
    held,
    /** What the trainee said of the attempt on the bench before the verdict. */
    ownJudgement: signal<OwnJudgement | null>(null),
    naming: signal<NamingView | null>(null),
    practice,
    tests,
    retention,
    drill,
    faded,
    /** A lesson is under way. */
    inLesson: signal(false),
    /** What became of the first sentence when it was welded again; null: not tried, or nothing to try. */
    proof: signal<FirstProof | 'trying' | null>(null),
    /** The root opened along the joint, or null before it has been measured. */
    opened: signal<RootPlace[] | null>(null),
    /** The attempt's report as a page to print; null until it is laid out. */
    paper: signal<string | null>(null),
    /** What lies on top, and so what the browser's own print key prints. */
    onTop: signal<'bench' | 'class'>('bench'),
    busy,
    stage: computed<BenchStage>(() => {
      const torch = torchState.value;
      if (torch === 'welding' || torch === 'out' || robotWelding.value) return 'weld';
      if (finished.value && shownTime.value !== null) return 'replay';
      return torch === 'idle' && !finished.value && !busy.value ? 'rest' : 'read';
    }),
    /** CSS pixels per millimetre of joint that the hand steers at. */
    steered_pxPerMm: signal(1),
    /** CSS pixels per millimetre of the screen itself; null before it has been measured. */
    screen_pxPerMm: signal<number | null>(null),

    /** Where the joint is cut, mm. */
    cutAt,
    cut: signal<Cut | null>(null),
    /** Height whose readings the user has asked for although cuts open without them. */
    revealedAt,
    /** The cut is shown as under the glass: the user wants to measure it first. */
    readingsHidden: computed(
      () =>
        (preferences.value.measureFirst || held.value?.why === 'judge') &&
        finished.value !== null &&
        other.value === null &&
        revealedAt.value !== cutAt.value,
    ),
    /** Pixels per millimetre cuts are to be drawn at; the panel finds out what fits. */
    cutScale: signal(FIRST_SCALE),
    /** Pixels per millimetre they are shown at, where that is less than they can be lettered for. */
    cutShown: signal(FIRST_SCALE),
    measuring: signal<Measuring | null>(null),
    /** Time of the attempt on show; null shows the finished piece. */
    shownTime,
    playing: signal(false),
    /** How fast a replay goes, against the time it was welded in. */
    pace: signal(1),
    /** The screen shows to a room: large, names hidden, nothing that is only for whoever welds. */
    showing: signal(false),
    duration_s: computed(() =>
      finished.value ? finished.value.recording.poses.u.length / finished.value.recording.rate_Hz : 0,
    ),

    /** A second attempt laid beside the first for comparison. */
    other,
    otherCut: signal<Cut | null>(null),
    otherBusy: signal<Busy | null>(null),
    /** Of the second one only the stretch about the cut has been welded so far. */
    otherStretch: signal(false),
    /** What the second one came to; null until it has been measured. */
    otherJudgement,
    otherResult: computed(() => said(otherJudgement.value)),
    /** The second one is the attempt on the bench with this changed; null: it is another attempt. */
    whatIf: signal<Change | null>(null),

    /** Real coupons kept with the attempt on the bench, newest first. */
    coupons: signal<StoredCoupon[]>([]),
    /** The one laid beside the cut, or null. */
    besideCoupon: signal<StoredCoupon | null>(null),

    shelf,
    /** What was taken off the shelf last, while it can be put back. */
    removed,
    /** Attempts that were never ended, newest first. */
    unfinished: signal<Unfinished[]>([]),
    /** The browser keeps the attempts until they are removed; null where it cannot be asked. */
    persistent: signal<boolean | null>(null),
    notice: signal<Notice | null>(null),
    /** Something went wrong and the user should know; null when all is well. */
    problem: signal<Problem | null>(null),
    announcement: signal<Announcement | null>(null),

    setPreference<K extends keyof Preferences>(key: K, value: Preferences[K]): void {
      preferences.value = { ...preferences.value, [key]: value };
    },
  };
}

export type State = ReturnType<typeof createState>;

/** Where a cold piece is cut: the exercise's second cut, or the middle of its joint. */
export function cutOf(exercise: Exercise): number {
  return exercise.cuts_mm[1] ?? exercise.joint.length_mm / 2;
}

/** The exercise a recording carries. readRecording has checked it, or it was written here. */
export function exerciseOf(recording: Recording): Exercise | null {
  return recording.exercise as Exercise | null;
}
