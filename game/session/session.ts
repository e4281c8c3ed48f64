import { effect } from '@preact/signals';
import { noFaults, type Recording } from '../../engine/index.ts';
import { type Exercise, exerciseNamed, exercises, readRecording } from '../../scoring/index.ts';
import type { TorchSample } from '../input/sample.ts';
import { TorchTool } from '../input/torchTool.ts';
import { words } from '../locale/index.ts';
import { editExercise, type SetupEdit, simulationOf } from '../setup.ts';
import * as state from '../state.ts';
import { FILE_ID, loadAttempt } from '../storage/attempts.ts';
import { downloadJson, fileName, readText } from '../storage/files.ts';
import type { SurfaceFrame } from '../view/surfaceFrame.ts';
import { BenchClient } from '../worker/client.ts';
import { Latest } from '../worker/latest.ts';
import type { BenchAnswer, SurfaceMessage } from '../worker/protocol.ts';
import { now_ms } from '../worker/realTime.ts';
import { TraceLog } from '../worker/traceLog.ts';
import { Comparer } from './comparer.ts';
import { refreshCoupons } from './coupons.ts';
import { forget, keep, refreshShelf } from './keeper.ts';
import { Measurer } from './measurer.ts';
import { attemptMeta } from './meta.ts';
import { problemText } from './problemText.ts';

/** An opening under way; it becomes the attempt on the bench only once it has been welded again. */
interface Opening {
  recording: Recording;
  file: string | null;
  id: string;
  made_ms: number;
}

/** Joins hand, bench Workers and screen: what the user can do, each a method. */
export class Session {
  readonly tool: TorchTool;
  readonly trace = new TraceLog();
  /** Told of each new picture of the surface; its texels go back to the Worker when this returns. */
  onSurface: (frame: SurfaceFrame) => void = () => undefined;
  private job = 0;
  private opening: Opening | null = null;
  /** What lay on the bench before the opening under way; it comes back if that fails. */
  private before: Opening | null = null;
  private readonly bench: BenchClient;
  private readonly comparer = new Comparer((message) => this.broken(message));
  private readonly cuts = new Latest<number>((y_mm) =>
    this.bench.ask({ type: 'cut', y_mm, id: 'cut', scale: state.cutScale.peek(), glass: state.readingsHidden.peek() }),
  );
  readonly measurer = new Measurer((request) => this.bench.ask(request));
  private readonly seeks = new Latest<number | null>((t_s) => this.bench.ask({ type: 'seek', t_s }));

  constructor() {
    this.bench = new BenchClient(
      (answer) => this.hear(answer),
      (message) => this.broken(message),
    );
    this.tool = new TorchTool({
      strike: (sample) => this.strike(sample),
      samples: (samples, until_ms) => this.bench.ask({ type: 'samples', samples, until_ms }),
      finish: (at_ms) => this.bench.ask({ type: 'finish', at_ms }),
      changed: (torch) => {
        state.torchState.value = torch;
        state.announcement.value = words.announce[torch];
      },
    });
    effect(() => {
      state.cutScale.value;
      state.readingsHidden.value;
      this.cuts.ask(state.cutAt.peek());
      this.comparer.cut(state.cutAt.peek());
    });
    void refreshShelf();
  }

  chooseExercise(name: string): void {
    const chosen = exerciseNamed(name) ?? exercises[0];
    state.setPreference('exercise', chosen.name);
    this.useExercise(chosen);
  }

  edit(edit: SetupEdit): void {
    try {
      this.useExercise(editExercise(state.exercise.value, edit));
    } catch (error) {
      this.tell(error);
    }
  }

  /** Puts a cold piece on the bench. */
  again(): void {
    this.tool.again();
    this.job += 1;
    this.clear();
    this.bench.ask({ type: 'prepare', job: this.job, simulation: simulationOf(state.exercise.value) });
    this.cuts.ask(state.cutAt.value);
  }

  /** The robot hand welds the exercise's weave, marked as a robot in the recording. */
  demonstrate(): void {
    this.again();
    const { demonstration: weave } = state.exercise.value;
    const faults = noFaults();
    const meta = attemptMeta({ kind: 'robot', weave, faults });
    this.job += 1;
    state.robotWelding.value = true;
    this.bench.ask({ type: 'demonstrate', job: this.job, meta, weave, faults });
  }

  stopRobot(): void {
    this.bench.ask({ type: 'finish', at_ms: now_ms() });
  }

  cutAt(y_mm: number): void {
    const { length_mm } = state.exercise.value.joint;
    state.cutAt.value = Math.round(Math.min(Math.max(y_mm, 0), length_mm) * 10) / 10;
    this.cuts.ask(state.cutAt.value);
    this.comparer.cut(state.cutAt.value);
  }

  /** Shows the attempt as it was at a time; null goes back to the finished piece. */
  seek(t_s: number | null): void {
    if (!state.finished.value) return;
    state.shownTime.value = t_s === null || t_s >= state.duration_s.value ? null : Math.max(0, t_s);
    this.seeks.ask(state.shownTime.value);
    this.cuts.ask(state.cutAt.value);
  }

  /** Takes joint, cut and replay to a place of the attempt: the moment given, or when the arc first came to that height. */
  goTo(y_mm: number | null, t_s: number | null): void {
    state.playing.value = false;
    if (y_mm !== null) this.cutAt(y_mm);
    const time = t_s ?? (y_mm === null ? null : this.trace.firstAt(y_mm));
    if (time !== null) this.seek(time);
  }

  save(): void {
    const done = state.finished.value;
    if (!done) return;
    downloadJson(
      done.recording,
      fileName(done.made_ms, state.exerciseOf(done.recording)?.name ?? words.shelf.fileName),
    );
  }

  async openFile(file: File): Promise<void> {
    try {
      const recording = readRecording(await readText(file), file.name) as Recording;
      this.weldAgain({ recording, file: file.name, id: `${FILE_ID}${recording.stateHash}`, made_ms: Date.now() });
    } catch (error) {
      this.tell(error);
    }
  }

  async openKept(id: string): Promise<void> {
    try {
      const kept = await loadAttempt(id);
      if (kept) this.weldAgain({ recording: kept.recording, file: null, id, made_ms: kept.made_ms });
    } catch (error) {
      this.tell(error);
    }
  }

  async remove(id: string): Promise<void> {
    await forget(id);
  }

  /** Lays a kept attempt beside the one on the bench; null takes it away. */
  async compareWith(id: string | null): Promise<void> {
    this.comparer.close();
    if (id === null) return;
    try {
      const kept = await loadAttempt(id);
      if (kept) this.comparer.show(id, kept.title, kept.recording, state.cutAt.value);
    } catch (error) {
      this.tell(error);
    }
  }

  private useExercise(exercise: Exercise): void {
    if (exercise.joint.kind !== state.exercise.value.joint.kind) this.comparer.close();
    state.exercise.value = exercise;
    const { length_mm } = exercise.joint;
    if (state.cutAt.value > length_mm) state.cutAt.value = exercise.cuts_mm[1] ?? length_mm / 2;
    this.again();
  }

  private clear(): void {
    this.opening = null;
    this.trace.clear();
    this.cuts.reset();
    this.seeks.reset();
    state.robotWelding.value = false;
    state.finished.value = null;
    this.measurer.close();
    void refreshCoupons(null);
    state.result.value = null;
    state.opened.value = null;
    state.busy.value = null;
    state.shownTime.value = null;
    state.playing.value = false;
  }

  private strike(sample: TorchSample): void {
    this.job += 1;
    this.clear();
    this.bench.ask({ type: 'strike', job: this.job, meta: attemptMeta({ kind: 'hand' }), samples: [sample] });
  }

  private weldAgain(opening: Opening): void {
    this.job += 1;
    this.comparer.close();
    this.before = state.finished.value;
    this.clear();
    state.problem.value = null;
    this.opening = opening;
    const { recording } = opening;
    const { joint, process } = recording.simulation;
    const exercise = state.exerciseOf(recording);
    state.exercise.value = exercise
      ? { ...exercise, joint, process }
      : editExercise(state.exercise.value, { joint, process });
    if (state.cutAt.value > joint.length_mm) state.cutAt.value = joint.length_mm / 2;
    state.busy.value = { what: 'welding again', share: 0 };
    this.bench.ask({ type: 'open', job: this.job, recording });
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
        state.busy.value = null;
        state.result.value = answer.result;
        state.opened.value = answer.strip;
        state.announcement.value = words.announce.verdict(answer.result);
        if (state.finished.value) void keep(state.finished.value, answer.result);
        return;
      case 'progress':
        state.busy.value = { what: 'welding again', share: answer.share };
        return;
      case 'cut':
        state.cut.value = answer;
        return;
      case 'etched':
      case 'ownReading':
        this.measurer.hear(answer);
        return;
      case 'failed':
        if (answer.doing === 'open' && this.before) this.weldAgain(this.before);
        this.broken(answer.message);
        return;
      default:
        return;
    }
  }

  private hearSurface(message: SurfaceMessage): void {
    const { job, nu, ny, u0_mm, du_mm, y0_mm, dy_mm, skin } = message;
    if (job === this.job) {
      this.trace.append(new Float32Array(message.trace));
      this.onSurface({ t_s: message.t_s, nu, ny, u0_mm, du_mm, y0_mm, dy_mm, skin: new Float32Array(skin) });
      if (state.finished.value) this.seeks.answered();
    }
    this.bench.ask({ type: 'surfaceBack', buffer: skin }, [skin]);
  }

  private hearEnded(answer: Extract<BenchAnswer, { type: 'ended' }>): void {
    const { recording, hash, lag_s } = answer;
    const from = this.opening;
    this.opening = null;
    this.tool.ended();
    state.robotWelding.value = false;
    state.finished.value = {
      id: from?.id ?? crypto.randomUUID(),
      made_ms: from?.made_ms ?? Date.now(),
      recording,
      hash,
      lag_s,
      file: from?.file ?? null,
    };
    state.announcement.value = words.announce.ended[recording.ended];
    this.cuts.ask(state.cutAt.value);
    void keep(state.finished.value, null);
    void refreshCoupons(state.finished.value.id);
    state.busy.value = { what: 'measuring', share: 0 };
  }

  private broken(message: string): void {
    state.busy.value = null;
    this.cuts.reset();
    this.seeks.reset();
    state.problem.value = message;
  }

  private tell(error: unknown): void {
    state.problem.value = problemText(error);
  }
}
