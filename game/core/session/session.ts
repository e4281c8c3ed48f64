import { effect } from '@preact/signals-core';
import { noFaults, POSE_RATE_HZ, type Recording } from '../../../engine/index.ts';
import {
  type AttemptRecording,
  type Change,
  type Exercise,
  exerciseNamed,
  withoutPiece,
} from '../../../scoring/index.ts';
import { Latest } from '../bench/latest.ts';
import type { BenchAnswer, SurfaceMessage } from '../bench/protocol.ts';
import type { SurfaceFrame } from '../bench/surface-frame.ts';
import type { TraceLog } from '../bench/trace-log.ts';
import { Desk } from '../desk/desk.ts';
import { keepMade } from '../desk/editor.ts';
import { nameOfFile } from '../desk/name-of-file.ts';
import { Trainees } from '../desk/trainees.ts';
import type { TorchSample } from '../hand/sample.ts';
import { TorchTool } from '../hand/torch-tool.ts';
import type { Ports } from '../ports.ts';
import { Bandwidth } from '../practice/bandwidth.ts';
import { Drills } from '../practice/drills.ts';
import { Practice } from '../practice/practice.ts';
import type { Drill } from '../practice/record.ts';
import { changedAttempt } from './changed-attempt.ts';
import { Comparer } from './comparer.ts';
import { Coupons } from './coupons.ts';
import { FirstLook } from './first-look.ts';
import { Keeper } from './keeper.ts';
import { LentPictures } from './lent-pictures.ts';
import { LiveTrace } from './live-trace.ts';
import { Measurer } from './measurer.ts';
import { attemptMeta } from './meta.ts';
import { Opener, type Opening } from './opener.ts';
import { Player } from './player.ts';
import { preferencesFrom } from './preferences.ts';
import { type Problem, problemOf } from './problem.ts';
import { Prover } from './prover.ts';
import { Saver } from './saver.ts';
import { editExercise, pieceFor, type SetupEdit, simulationOf } from './setup.ts';
import { Showing } from './showing.ts';
import { chosenExercise, cutOf, exerciseOf, readyExercise, type State } from './state.ts';
import { WatchedBench } from './watched-bench.ts';

/** Stands for the changed attempt among those laid beside. */
const WHAT_IF = 'what-if';

/** Joins hand, benches and state: what the user can do, each a method. */
export class Session {
  private readonly torch: TorchTool;
  readonly trace: TraceLog;
  /** Told of each new picture of the surface; its skin goes back to the bench, so it is not to be kept. */
  onSurface: (frame: SurfaceFrame) => void = () => undefined;
  private job = 0;
  private readonly pictures: LentPictures;
  private opening: Opening | null = null;
  /** What lay on the bench before the opening under way; it comes back if that fails. */
  private before: Opening | null = null;
  /** Of the attempt being welded; known from the strike on, so that it can be kept as it comes. */
  private struck: { id: string; made_ms: number } | null = null;
  private readonly bench: WatchedBench;
  private readonly live: LiveTrace;
  private readonly comparer: Comparer;
  readonly keeper: Keeper;
  readonly opener: Opener;
  readonly coupons: Coupons;
  readonly measurer: Measurer;
  readonly trainees: Trainees;
  readonly desk: Desk;
  readonly player: Player;
  readonly practice: Practice;
  readonly drills: Drills;
  private bandwidth: Bandwidth | null = null;
  /** A robot's coupon lies on the bench, whose fault is to be named: nobody's attempt, and not kept. */
  private isCoupon = false;
  /** The attempt on the bench was welded here just now. */
  private fresh = false;
  readonly saver: Saver;
  private readonly prover: Prover;
  private readonly showing: Showing;
  private readonly firstLook: FirstLook;
  private readonly cuts: Latest<number>;
  private readonly seeks: Latest<number | null>;

  /** Puts the parts together: each is handed what it may use, and nothing is decided here. */
  constructor(
    private readonly ports: Ports,
    private readonly state: State,
  ) {
    state.preferences.value = preferencesFrom(ports.preferences.load());
    effect(() => ports.preferences.save(state.preferences.value));
    state.exercise.value = pieceFor(chosenExercise(state.preferences.value), state.preferences.value);
    state.cutAt.value = cutOf(state.exercise.value);
    this.live = new LiveTrace(ports.clock, state);
    this.trace = this.live.log;
    this.bench = new WatchedBench(ports, {
      hear: (answer) => this.hear(answer),
      broken: (message) => {
        this.torch.ended();
        this.broken({ code: 'bench-broken', message });
        void this.keeper.abandon();
      },
      replaced: () => void this.replaced(),
    });
    this.pictures = new LentPictures(
      () => ['welding', 'out'].includes(state.torchState.peek()) || state.robotWelding.peek(),
      (buffer) => this.bench.ask({ type: 'surfaceBack', buffer }, [buffer]),
    );
    this.cuts = new Latest((y_mm) => {
      const glass = state.readingsHidden.peek();
      const language = state.language.peek();
      this.bench.ask({ type: 'cut', y_mm, id: 'cut', scale: state.cutScale.peek(), glass, language });
    });
    this.seeks = new Latest((t_s) => this.bench.ask({ type: 'seek', t_s }));
    this.comparer = new Comparer(ports.openBench, state, (problem) => this.broken(problem));
    this.keeper = new Keeper(ports, state);
    this.firstLook = new FirstLook(this.comparer, state, (request) => this.bench.ask(request));
    this.opener = new Opener(
      this.keeper,
      this.comparer,
      state,
      ports.clock,
      (opening) => this.weldAgain(opening),
      (e) => this.useMade(e),
    );
    this.prover = new Prover(ports.openHand, state);
    this.showing = new Showing(state, {
      keeper: this.keeper,
      prover: this.prover,
      clock: ports.clock,
      practice: () => this.practice,
      job: () => this.job,
      ask: (request) => this.bench.ask(request),
      cutAgain: () => this.cutAt(state.cutAt.value),
    });
    this.practice = new Practice(
      {
        reveal: () => this.showing.reveal(),
        weldCoupon: (recording) => this.weldCoupon(recording),
        chooseExercise: (name) => this.chooseExercise(name),
      },
      state,
      this.keeper,
      ports,
    );
    this.drills = new Drills(ports.clock, state, (view, exercise) => this.practice.drilled(view, exercise));
    this.coupons = new Coupons(ports, state);
    this.measurer = new Measurer(state, (request) => this.bench.ask(request));
    this.player = new Player(this, state);
    this.saver = new Saver(ports, state, (request) => this.bench.ask(request));
    this.desk = new Desk(ports, state, this.opener, this.comparer, this.keeper, {
      cutAt: (y_mm) => this.cutAt(y_mm),
      use: (exercise) => this.useMade(exercise),
    });
    // Another trainee has another piece of the same exercise.
    this.trainees = new Trainees(
      state,
      this.keeper,
      () => this.useExercise(state.exercise.value),
      () => ports.scores.clear().catch(() => undefined),
    );
    this.torch = new TorchTool({
      strike: (sample) => this.strike(sample),
      samples: (samples, until_ms) => {
        this.bench.ask({ type: 'samples', samples, until_ms });
        if (this.bandwidth) state.faded.value = !this.bandwidth.add(samples, until_ms);
      },
      finish: (at_ms) => this.bench.ask({ type: 'finish', at_ms }),
      changed: (torch) => {
        state.torchState.value = torch;
        state.announcement.value = { code: 'torch', torch };
      },
    });
    effect(() => {
      state.cutScale.value;
      state.readingsHidden.value;
      this.cuts.ask(state.cutAt.peek());
      this.comparer.cut(state.cutAt.peek());
    });
    void this.keeper.refresh();
    void ports.persistence.granted().then((granted) => {
      state.persistent.value = granted;
    });
  }

  /** The torch in the hand: the bench's, or in a drill one that strikes nothing. */
  get tool(): TorchTool {
    return this.state.drill.peek() ? this.drills.tool : this.torch;
  }

  /** The moment by the calendar, for what is due. */
  today_ms(): number {
    return this.ports.clock.date_ms();
  }

  /** A drill without metal on a cold piece; null ends it. */
  drill(drill: Drill | null): void {
    this.drills.leave();
    if (drill === null) return;
    this.again();
    this.drills.begin(drill);
  }

  /** Once a frame. @param complete_ms readings up to here have all been delivered, also where the hand rested and there were none */
  tick(complete_ms: number): void {
    const now_ms = this.ports.clock.now_ms();
    this.torch.tick(now_ms, complete_ms);
    if (this.state.drill.peek()) this.drills.tick(now_ms, complete_ms);
    this.state.restrikeLeft_s.value = Math.ceil(this.torch.restrikeLeft_s(now_ms));
    this.pictures.return();
  }

  /** Ends the attempt instead of waiting for another strike. */
  finish(): void {
    this.tool.finish(this.ports.clock.now_ms());
  }

  chooseExercise(name: string): void {
    const chosen = this.state.preferences.value.exercises.find((e) => e.name === name) ?? readyExercise(name);
    this.state.setPreference('exercise', chosen.name);
    this.useExercise(chosen);
  }

  /** An exercise somebody made, from a file, an address or the desk: it lies on the bench and can be chosen again. */
  useMade(exercise: Exercise): void {
    const ready = exerciseNamed(exercise.name) !== undefined;
    if (!ready) keepMade(this.state, withoutPiece(exercise));
    this.state.setPreference('exercise', exercise.name);
    this.useExercise(exercise);
  }

  /** Puts an exercise on the bench that is none of the ready ones: one handed out to a class, on the piece it was dealt with if it was. */
  takeExercise(exercise: Exercise): void {
    this.useExercise(exercise, exercise.piece && exercise);
  }

  edit(edit: SetupEdit): void {
    try {
      this.useExercise(editExercise(this.state.exercise.value, edit));
    } catch (error) {
      this.state.problem.value = problemOf(error);
    }
  }

  /** Puts a cold piece on the bench. */
  again(): void {
    this.torch.again();
    this.job += 1;
    this.clear();
    void this.keeper.abandon();
    this.bench.ask({ type: 'prepare', job: this.job, simulation: simulationOf(this.state.exercise.value) });
    this.cuts.ask(this.state.cutAt.value);
  }

  /** The robot hand welds the exercise's weave, marked as a robot in the recording. */
  demonstrate(): void {
    this.drills.leave();
    this.again();
    const { demonstration: weave } = this.state.exercise.value;
    const faults = noFaults();
    const meta = attemptMeta(this.state, { kind: 'robot', weave, faults }, this.startedAt(this.ports.clock.date_ms()));
    this.job += 1;
    this.state.robotWelding.value = true;
    this.bench.work({ type: 'demonstrate', job: this.job, meta, weave, faults });
  }

  stopRobot(): void {
    this.bench.ask({ type: 'finish', at_ms: this.ports.clock.now_ms() });
  }

  cutAt(y_mm: number): void {
    const { length_mm } = this.state.exercise.value.joint;
    this.state.cutAt.value = Math.round(Math.min(Math.max(y_mm, 0), length_mm) * 10) / 10;
    this.cuts.ask(this.state.cutAt.value);
    this.comparer.cut(this.state.cutAt.value);
    if (this.state.otherBusy.peek()) this.firstLook.at(this.state.cutAt.value);
  }

  /** Shows the attempt as it was at a time; null goes back to the finished piece. */
  seek(t_s: number | null): void {
    if (!this.state.finished.value) return;
    this.state.shownTime.value = t_s === null || t_s >= this.state.duration_s.value ? null : Math.max(0, t_s);
    this.seeks.ask(this.state.shownTime.value);
    this.comparer.seek(this.state.shownTime.value);
    this.cuts.ask(this.state.cutAt.value);
  }

  /** Takes joint, cut and replay to a place of the attempt: the moment given, or when the arc first came to that height. */
  goTo(y_mm: number | null, t_s: number | null): void {
    this.state.playing.value = false;
    if (y_mm !== null) this.cutAt(y_mm);
    const time = t_s ?? (y_mm === null ? null : this.trace.firstAt(y_mm));
    if (time !== null) this.seek(time);
  }

  /** Welds the attempt on the bench again with one thing changed and lays it beside; null takes it away. Nothing of it is kept. */
  whatIf(change: Change | null): void {
    this.comparer.close();
    this.firstLook.of(null, 0);
    const done = this.state.finished.value;
    if (!change || !done) return;
    const recording = changedAttempt(done.recording as AttemptRecording, change);
    if (!recording) {
      this.state.problem.value = { code: 'no-such-change', change };
      return;
    }
    this.state.besideCoupon.value = null;
    this.firstLook.of(recording as Recording, this.state.cutAt.value);
    this.comparer.show(WHAT_IF, null, recording as Recording, this.state.cutAt.value, true);
    this.state.whatIf.value = change;
  }

  save(): void {
    const done = this.state.finished.value;
    if (!done) return;
    this.ports.files.save(done.recording, nameOfFile(done, this.state.shelf.value, this.ports.clock));
  }

  private useExercise(asked: Exercise, exercise = pieceFor(asked, this.state.preferences.value)): void {
    if (exercise.name !== this.state.retention.peek()?.exercise) this.state.retention.value = null;
    if (exercise.joint.kind !== this.state.exercise.value.joint.kind) this.comparer.close();
    this.state.exercise.value = exercise;
    const { length_mm } = exercise.joint;
    if (this.state.cutAt.value > length_mm) this.state.cutAt.value = exercise.cuts_mm[1] ?? length_mm / 2;
    this.again();
  }

  private clear(): void {
    this.opening = null;
    this.struck = null;
    this.isCoupon = false;
    this.bandwidth = null;
    this.state.faded.value = false;
    this.state.held.value = null;
    this.state.ownJudgement.value = null;
    this.state.naming.value = null;
    this.bench.rest();
    this.prover.stop();
    this.firstLook.of(null, 0);
    this.live.clear();
    this.cuts.reset();
    this.seeks.reset();
    this.state.robotWelding.value = false;
    this.state.finished.value = null;
    this.measurer.close();
    // What was tried on the piece goes with it; another attempt laid beside stays.
    if (this.state.whatIf.value) this.comparer.close();
    void this.coupons.show(null);
    this.state.judgement.value = null;
    this.state.opened.value = null;
    this.state.paper.value = null;
    this.state.busy.value = null;
    this.state.shownTime.value = null;
    this.state.playing.value = false;
  }

  private startedAt(date_ms: number): string {
    return this.ports.clock.written(date_ms).iso;
  }

  private strike(sample: TorchSample): void {
    this.job += 1;
    this.clear();
    const made_ms = this.ports.clock.date_ms();
    const meta = attemptMeta(this.state, { kind: 'hand' }, this.startedAt(made_ms));
    this.struck = { id: this.ports.newId(), made_ms };
    const { fadeGuides } = this.state.preferences.peek();
    this.bandwidth = fadeGuides ? new Bandwidth(this.state.exercise.peek(), sample.at_ms) : null;
    this.bandwidth?.add([sample], sample.at_ms);
    this.keeper.begin(this.struck.id, made_ms, meta, simulationOf(this.state.exercise.value));
    this.bench.work({ type: 'strike', job: this.job, meta, samples: [sample] });
  }

  private weldAgain(opening: Opening): void {
    this.drills.leave();
    this.job += 1;
    this.comparer.close();
    this.before = this.state.finished.value;
    this.clear();
    void this.keeper.abandon();
    this.state.problem.value = null;
    this.opening = opening;
    const { recording } = opening;
    // Files and shelf hold fillets only: both are read by the scoring's schema.
    const { joint, process } = recording.simulation as AttemptRecording['simulation'];
    const exercise = exerciseOf(recording);
    this.state.exercise.value = exercise
      ? { ...exercise, joint, process }
      : editExercise(this.state.exercise.value, { joint, process });
    if (this.state.cutAt.value > joint.length_mm) this.state.cutAt.value = joint.length_mm / 2;
    this.state.busy.value = { what: 'welding again', share: 0 };
    this.bench.work({ type: opening.unfinished ? 'recover' : 'open', job: this.job, recording });
  }

  /** A coupon lies on the bench as an attempt does, under the exercise it is judged by; what is practised otherwise comes to its end. */
  private weldCoupon(recording: Recording): void {
    this.state.retention.value = null;
    this.weldAgain({ recording, file: null, id: this.ports.newId(), made_ms: this.ports.clock.date_ms() });
    this.isCoupon = true;
  }

  private hear(answer: BenchAnswer): void {
    if (answer.type === 'surface') this.hearSurface(answer);
    if (answer.type === 'cut') this.cuts.answered();
    if ('job' in answer && answer.job !== this.job && answer.job !== -1) return;
    switch (answer.type) {
      case 'ended':
        this.hearEnded(answer);
        return;
      case 'scored':
        this.showing.hear(answer, this.isCoupon, this.fresh);
        return;
      case 'paper':
        this.state.paper.value = answer.html;
        return;
      case 'poses':
        this.keeper.poses(answer.from, answer.poses);
        return;
      case 'progress':
        this.state.busy.value = { what: 'welding again', share: answer.share };
        return;
      case 'cut':
        this.state.cut.value = answer;
        return;
      case 'drawing':
        this.saver.hear(answer);
        return;
      case 'stretch':
        this.firstLook.hear(answer);
        return;
      case 'etched':
      case 'ownReading':
        this.measurer.hear(answer);
        return;
      case 'failed':
        this.bench.rest();
        if (answer.doing === 'stretch') this.comparer.go();
        if ((answer.doing === 'open' || answer.doing === 'recover') && this.before) this.weldAgain(this.before);
        this.broken({ code: 'bench-refused', message: answer.message });
        return;
      default:
        return;
    }
  }

  private hearSurface(message: SurfaceMessage): void {
    const { job, nu, ny, u0_mm, du_mm, y0_mm, dy_mm, skin, t_s } = message;
    if (job === this.job) {
      this.live.append(message.trace);
      this.onSurface({ t_s, nu, ny, u0_mm, du_mm, y0_mm, dy_mm, skin: new Float32Array(skin) });
      if (this.state.finished.value) this.seeks.answered();
    }
    this.pictures.take(skin);
  }

  private hearEnded(answer: Extract<BenchAnswer, { type: 'ended' }>): void {
    const { recording, hash, lag_s } = answer;
    const from = this.opening ?? this.struck;
    const file = this.opening?.file ?? null;
    this.fresh = this.opening === null;
    this.opening = null;
    this.struck = null;
    this.bench.rest();
    this.bandwidth = null;
    this.torch.ended();
    this.state.robotWelding.value = false;
    this.pictures.return();
    this.state.finished.value = {
      id: from?.id ?? this.ports.newId(),
      made_ms: from?.made_ms ?? this.ports.clock.date_ms(),
      recording,
      hash,
      lag_s,
      file,
    };
    this.state.announcement.value = { code: 'ended', ended: recording.ended };
    this.cuts.ask(this.state.cutAt.value);
    if (!this.isCoupon) void this.keeper.keep(this.state.finished.value, null);
    void this.coupons.show(this.state.finished.value.id);
    this.state.busy.value = { what: 'measuring', share: 0 };
  }

  /** The bench at work fell silent: a cold piece lies on the next; what was welded is kept and offered. */
  private async replaced(): Promise<void> {
    const byHand = this.struck !== null;
    const keeping = this.keeper.abandon();
    this.pictures.forget();
    this.again();
    const kept_s = byHand ? (await keeping) / POSE_RATE_HZ : null;
    this.broken({ code: 'bench-silent', kept_s });
  }

  private broken(problem: Problem): void {
    this.state.busy.value = null;
    this.cuts.reset();
    this.seeks.reset();
    this.state.problem.value = problem;
  }
}
