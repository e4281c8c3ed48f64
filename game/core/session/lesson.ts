import { effect, signal, untracked } from '@preact/signals-core';
import type { Session } from './session.ts';
import type { State } from './state.ts';

/** The steps of the first lesson, in order. */
export const LESSON_STEPS = ['joint', 'weave', 'robot', 'straight', 'cut', 'root'] as const;
export type LessonStep = (typeof LESSON_STEPS)[number];

/** How long the robot hand is watched, s of arc. */
const WATCHED_S = 5;
/** Less arc than this shows neither shelf nor climb, s. */
const LEAST_S = 4;
const WOVEN = 'tee-inverted-v';
const STRAIGHT = 'straight-run';

/** Where a lesson stands, as the card shows it. */
export interface LessonView {
  step: LessonStep;
  /** What the step asks for has been done. */
  done: boolean;
  /** The last run of the hand was too short to learn from. */
  tooShort: boolean;
}

/** What of the bench a lesson uses: what a user could press. */
export type LessonBench = Pick<Session, 'chooseExercise' | 'again' | 'demonstrate'>;

/**
 * The first lesson: from what a tee is to a first look at the root, under five minutes. It watches what the trainee does and goes on from
 * there; the step is kept among the preferences, so that it can be left and taken up again.
 */
export class Lesson {
  readonly view = signal<LessonView | null>(null);
  /** Where the cut lay when the step came. */
  private cutWas = 0;

  constructor(
    private readonly bench: LessonBench,
    private readonly state: State,
  ) {
    effect(() => this.watchRobot());
    effect(() => this.watchRun());
    effect(() => this.watchCut());
    effect(() => {
      this.state.inLesson.value = this.view.value !== null;
    });
  }

  /** Begins, or goes on where it was left. A run that lay on the bench then is gone, so cut and root need a new one. */
  begin(): void {
    const kept = this.state.preferences.peek().lesson;
    const step = LESSON_STEPS.find((name) => name === kept) ?? 'joint';
    this.enter((step === 'cut' || step === 'root') && !this.ownRun() ? 'straight' : step);
  }

  /** To the step after this one; after the last the lesson is over. */
  next(): void {
    const view = this.view.peek();
    if (!view) return;
    const after = LESSON_STEPS[LESSON_STEPS.indexOf(view.step) + 1];
    if (after) this.enter(after);
    else this.end('done');
  }

  back(): void {
    const view = this.view.peek();
    const before = view && LESSON_STEPS[LESSON_STEPS.indexOf(view.step) - 1];
    if (before) this.enter(before);
  }

  /** The robot hand welds the weave until it has been watched long enough. */
  showRobot(): void {
    this.bench.demonstrate();
  }

  /** Leaves it where it stands; it can be taken up again. */
  leave(): void {
    this.end(this.view.peek()?.step ?? 'joint');
  }

  /** The offer is not wanted. */
  decline(): void {
    this.state.setPreference('lessonOffered', true);
  }

  private end(kept: LessonStep | 'done'): void {
    this.state.setPreference('lesson', kept);
    this.state.setPreference('lessonOffered', true);
    this.view.value = null;
  }

  private enter(step: LessonStep): void {
    this.view.value = { step, done: false, tooShort: false };
    this.state.setPreference('lesson', step);
    this.state.setPreference('lessonOffered', true);
    this.cutWas = this.state.cutAt.peek();
    if (step === 'joint' || step === 'weave' || step === 'robot') this.lay(WOVEN);
    if (step === 'straight') this.lay(STRAIGHT);
  }

  /** A cold piece of an exercise, unless it lies there already. */
  private lay(exercise: string): void {
    const bare = this.state.finished.peek() === null && this.state.torchState.peek() === 'idle';
    if (this.state.exercise.peek().name !== exercise) this.bench.chooseExercise(exercise);
    else if (!bare || this.state.robotWelding.peek()) this.bench.again();
  }

  private ownRun(): boolean {
    const { finished } = this.state;
    return finished.peek()?.recording.origin.kind === 'hand' && this.state.result.peek() !== null;
  }

  private watchRobot(): void {
    const welding = this.state.robotWelding.value;
    const seen_s = this.state.live.value?.t_s ?? 0;
    if (this.view.peek()?.step === 'robot' && welding && seen_s >= WATCHED_S) untracked(() => this.enter('straight'));
  }

  private watchRun(): void {
    const finished = this.state.finished.value;
    const result = this.state.result.value;
    if (this.view.peek()?.step !== 'straight' || !finished || !result) return;
    if (finished.recording.origin.kind !== 'hand') return;
    const { poses, rate_Hz } = finished.recording;
    const arc_s = poses.trigger.filter((t) => t === 1).length / rate_Hz;
    if (arc_s >= LEAST_S) untracked(() => this.enter('cut'));
    else this.view.value = { step: 'straight', done: false, tooShort: true };
  }

  private watchCut(): void {
    const at = this.state.cutAt.value;
    const view = this.view.peek();
    if (view?.step === 'cut' && at !== this.cutWas) this.view.value = { ...view, done: true };
  }
}
