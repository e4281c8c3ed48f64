import type { Recording } from '../../../engine/index.ts';
import type { AdviceCode, Exercise, Result } from '../../../scoring/index.ts';
import type { Ports } from '../ports.ts';
import type { Keeper } from '../session/keeper.ts';
import { exerciseOf, type State } from '../session/state.ts';
import type { Due } from './due.ts';
import { legRead, questionsOf } from './judge.ts';
import { choicesOf, couponRecording, nextCoupon, toldOf } from './naming.ts';
import { idOf, isKind } from './record.ts';
import type { DrillView, Level } from './views.ts';

/** What of the bench practice uses. */
export interface PracticeBench {
  /** Shows what is held back. */
  reveal(): void;
  /** Welds a recording that is nobody's attempt. */
  weldCoupon(recording: Recording): void;
  chooseExercise(name: string): void;
}

/** What is practised beside welding: judging oneself before the verdict, naming a fault, tests after a while; each kept in the logbook. */
export class Practice {
  private asked = 0;

  constructor(
    private readonly bench: PracticeBench,
    private readonly state: State,
    private readonly keeper: Pick<Keeper, 'practised'>,
    private readonly ports: Pick<Ports, 'clock' | 'newId'>,
  ) {}

  /** Whether the attempt on the bench is judged by the trainee before its verdict is shown; without a verdict there is nothing to judge. */
  judgesFirst({ verdict, lines }: Result): boolean {
    const { preferences, inLesson, finished } = this.state;
    const { judgeFirst } = preferences.peek();
    if (verdict === 'no verdict' || lines.length === 0) return false;
    if (finished.peek()?.recording.origin.kind !== 'hand') return false;
    return judgeFirst === 'always' || (judgeFirst === 'lessons' && inLesson.peek());
  }

  /**
   * What the trainee says of the attempt: the measures that are outside, all others being inside, and the smallest leg if guessed. Then the verdict is shown beside it.
   */
  judge(outside: readonly string[], leg_mm: number | null): void {
    const held = this.state.held.peek();
    const done = this.state.finished.peek();
    if (held?.why !== 'judge' || !done) return;
    const read = legRead(held.result);
    const judgement = {
      kind: 'judgement' as const,
      id: idOf('judgement', done.id),
      attempt: done.id,
      ...this.whoAndWhen(exerciseOf(done.recording)?.name ?? null),
      said: questionsOf(held.result).map(({ measure, was }) => ({
        measure,
        said: outside.includes(measure) ? ('outside' as const) : ('inside' as const),
        was,
      })),
      leg: leg_mm === null || read === null ? null : { said_mm: leg_mm, ...read },
    };
    this.bench.reveal();
    this.state.ownJudgement.value = judgement;
    void this.keeper.practised(judgement);
  }

  /** The verdict without a judgement. */
  showAtOnce(): void {
    this.bench.reveal();
  }

  /** A coupon whose fault is to be named is welded. */
  nameFault(level: Level): void {
    const coupon = nextCoupon(level, this.asked++);
    this.bench.weldCoupon(couponRecording(coupon, this.asked));
    this.state.naming.value = {
      level,
      coupon,
      choices: choicesOf(coupon),
      phase: 'welding',
      said: null,
      was: null,
      says: null,
    };
  }

  /** Back to the exercise chosen last. */
  leaveNaming(): void {
    this.bench.chooseExercise(this.state.preferences.peek().exercise ?? '');
  }

  /** What the trainee takes the fault for. */
  name(said: AdviceCode): void {
    const view = this.state.naming.peek();
    const held = this.state.held.peek();
    if (view?.phase !== 'asked' || held === null) return;
    const told = toldOf(view, held.result);
    this.bench.reveal();
    this.state.naming.value = { ...view, phase: 'told', said, ...told };
    const id = this.ports.newId();
    const record = { kind: 'naming' as const, id, ...this.whoAndWhen(view.coupon.exercise), level: view.level };
    void this.keeper.practised({ ...record, was: told.was, said });
  }

  /** A test after a while: the exercise as it is, without guides, counted apart. */
  weldTest({ exercise, step, base_ms }: Due): void {
    this.bench.chooseExercise(exercise.name);
    this.state.retention.value = { exercise: exercise.name, step, base_ms };
  }

  /** A test that has been welded is kept as one. */
  tested(attempt: string): void {
    const test = this.state.retention.peek();
    if (test === null) return;
    const { exercise, step, base_ms } = test;
    this.state.retention.value = null;
    const id = idOf('retention', attempt);
    void this.keeper.practised({ kind: 'retention', id, attempt, ...this.whoAndWhen(exercise), step, base_ms });
  }

  drilled({ drill, duration_s, readings }: DrillView, exercise: Exercise): void {
    const id = this.ports.newId();
    void this.keeper.practised({ kind: 'drill', id, ...this.whoAndWhen(exercise.name), drill, duration_s, readings });
  }

  /** Share of faults named right at a level, and of how many. */
  named(level: Level): { right: number; of: number } {
    const own = this.state.practice.value.filter(isKind('naming')).filter((n) => n.level === level);
    return { right: own.filter((n) => n.was === n.said).length, of: own.length };
  }

  private whoAndWhen(exercise: string | null): { made_ms: number; trainee: string | null; exercise: string | null } {
    return { made_ms: this.ports.clock.date_ms(), trainee: this.state.preferences.peek().trainee, exercise };
  }
}
