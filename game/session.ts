import type { AidsInUse, DeviceInfo, Recording } from '../engine/index.ts';
import { type Exercise, exerciseNamed, exercises, InputError, readRecording } from '../scoring/index.ts';
import type { TorchSample } from './input/sample.ts';
import { TorchTool } from './input/torchTool.ts';
import { words } from './locale/index.ts';
import { editExercise, type SetupEdit, simulationOf } from './setup.ts';
import * as state from './state.ts';
import { keepAttempt, listAttempts, loadAttempt, removeAttempt } from './storage/attempts.ts';
import { downloadRecording, fileName, readText } from './storage/files.ts';
import type { SurfaceFrame } from './view/surfaceFrame.ts';
import { BenchClient } from './worker/client.ts';
import type { AttemptMeta, BenchAnswer, SurfaceMessage } from './worker/protocol.ts';
import { TraceLog } from './worker/traceLog.ts';

/** Cuts are drawn this wide, CSS pixels; the SVG scales to its place. */
const CUT_PIXELS = 560;

/**
 * Joins hand, bench Workers and screen. Three Workers at most: one welds and cuts, one measures (so that cutting stays quick while it
 * does), one holds a second attempt to compare with.
 */
export class Session {
  readonly tool: TorchTool;
  readonly trace = new TraceLog();
  /** Told of each new picture of the surface; must hand the buffer back when done. */
  onSurface: (frame: SurfaceFrame) => void = () => undefined;
  private job = 0;
  private readonly bench: BenchClient;
  private measurer: BenchClient | null = null;
  private comparer: BenchClient | null = null;
  /** An opening under way: becomes the attempt on the bench only once it has been welded again. */
  private opening: { recording: Recording; file: string | null; id: string | null; made_ms: number } | null = null;
  private cutAsked = Number.NaN;

  constructor() {
    this.bench = new BenchClient(
      (a) => this.hear(a),
      (m) => this.broken(m),
    );
    this.tool = new TorchTool({
      strike: (sample) => this.strike(sample),
      samples: (samples) => this.bench.ask({ type: 'samples', samples }),
      finish: () => this.bench.ask({ type: 'finish' }),
      changed: (torch) => {
        state.torchState.value = torch;
        state.announcement.value = words.announce[torch];
      },
    });
    this.prepare();
    void this.refreshShelf();
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
    this.prepare();
  }

  /** The robot hand welds the exercise's weave, marked as a robot in the recording. */
  demonstrate(): void {
    this.again();
    const exercise = state.exercise.value;
    const { demonstration: weave } = exercise;
    const faults = {
      seed: 1,
      tremor_mm: 0,
      driftU_mm: 0,
      driftTip_mm: 0,
      driftTravel_deg: 0,
      lag_s: 0,
      timing: 0,
      lead_mm: 0,
    };
    const device: DeviceInfo = {
      kind: 'robot',
      measures: { tipToWork: true, workAngle: true, travelAngle: true },
      scale: null,
    };
    this.job += 1;
    state.robotWelding.value = true;
    this.bench.ask({
      type: 'demonstrate',
      job: this.job,
      meta: this.meta({ kind: 'robot', weave, faults }, device),
      weave,
      faults,
    });
  }

  stopRobot(): void {
    this.bench.ask({ type: 'finish' });
  }

  cutAt(y_mm: number): void {
    const { length_mm } = state.exercise.value.joint;
    state.cutAt.value = Math.round(Math.min(Math.max(y_mm, 0), length_mm) * 10) / 10;
    this.askCut();
  }

  /** Shows the attempt as it was at a time; null goes back to the finished piece. */
  seek(t_s: number | null): void {
    const end = state.duration_s.value;
    state.shownTime.value = t_s === null || t_s >= end ? null : Math.max(0, t_s);
    this.bench.ask({ type: 'seek', t_s: state.shownTime.value });
    this.cutAsked = Number.NaN;
    this.askCut();
  }

  /** One click that takes joint, cut and replay to a place of the attempt. */
  goTo(y_mm: number | null, t_s: number | null): void {
    state.playing.value = false;
    const time = t_s ?? (y_mm === null ? null : this.timeAt(y_mm));
    if (y_mm !== null) state.cutAt.value = Math.round(y_mm * 10) / 10;
    if (time !== null) this.seek(time);
    else this.cutAt(state.cutAt.value);
  }

  /** When the arc first came to a height, s; null if it never did. */
  timeAt(y_mm: number): number | null {
    for (let row = 0; row < this.trace.length; row++)
      if (this.trace.value(row, 'arcOn') === 1 && this.trace.value(row, 'footY_mm') >= y_mm)
        return this.trace.value(row, 't_s');
    return null;
  }

  save(): void {
    const done = state.finished.value;
    if (!done) return;
    const named = done.recording.exercise as Exercise | null;
    downloadRecording(done.recording, fileName(done.made_ms, named?.name ?? 'attempt'));
  }

  async openFile(file: File): Promise<void> {
    try {
      const recording = readRecording(await readText(file), file.name) as Recording;
      this.weldAgain(recording, file.name, null, Date.now());
    } catch (error) {
      this.tell(error);
    }
  }

  async openKept(id: string): Promise<void> {
    try {
      const kept = await loadAttempt(id);
      if (kept) this.weldAgain(kept.recording, null, id, kept.made_ms);
    } catch (error) {
      this.tell(error);
    }
  }

  async remove(id: string): Promise<void> {
    try {
      await removeAttempt(id);
      await this.refreshShelf();
    } catch (error) {
      this.tell(error);
    }
  }

  /** Lays a kept attempt beside the one on the bench. */
  async compareWith(id: string | null): Promise<void> {
    this.comparer?.close();
    this.comparer = null;
    state.other.value = null;
    state.otherCut.value = null;
    state.otherBusy.value = null;
    if (id === null) return;
    try {
      const kept = await loadAttempt(id);
      if (!kept) return;
      state.other.value = { id, title: kept.title };
      this.comparer = new BenchClient(
        (a) => this.hearOther(a),
        (m) => this.broken(m),
      );
      this.comparer.ask({ type: 'open', job: 1, recording: kept.recording });
    } catch (error) {
      this.tell(error);
    }
  }

  private useExercise(exercise: Exercise): void {
    state.exercise.value = exercise;
    const { length_mm } = exercise.joint;
    if (!exercise.cuts_mm.includes(state.cutAt.value)) state.cutAt.value = exercise.cuts_mm[1] ?? length_mm / 2;
    if (state.torchState.value === 'stopped') this.tool.again();
    this.prepare();
  }

  private prepare(): void {
    this.job += 1;
    this.clearAttempt();
    this.bench.ask({ type: 'prepare', job: this.job, simulation: simulationOf(state.exercise.value) });
    this.askCut();
  }

  private clearAttempt(): void {
    this.opening = null;
    this.trace.clear();
    this.cutAsked = Number.NaN;
    state.robotWelding.value = false;
    state.finished.value = null;
    state.result.value = null;
    state.busy.value = null;
    state.shownTime.value = null;
    state.playing.value = false;
    state.cut.value = null;
  }

  private strike(sample: TorchSample): void {
    this.job += 1;
    this.clearAttempt();
    const kind = state.deviceKind.value ?? 'mouse';
    const tilts = kind === 'pen' && state.preferences.value.penTilts;
    const device: DeviceInfo = {
      kind,
      measures: { tipToWork: false, workAngle: tilts, travelAngle: tilts },
      scale: this.scale(),
    };
    this.bench.ask({ type: 'strike', job: this.job, meta: this.meta({ kind: 'hand' }, device), samples: [sample] });
  }

  /** Joint millimetres per millimetre of hand: known to be 1 when welding at 1:1, unknown otherwise. */
  private scale(): number | null {
    const { devicePxPerMm, oneToOne } = state.preferences.value;
    return devicePxPerMm !== null && oneToOne ? 1 : null;
  }

  private meta(origin: AttemptMeta['origin'], device: DeviceInfo): AttemptMeta {
    const p = state.preferences.value;
    const aids: AidsInUse = {
      ghost: p.ghost,
      beat: p.beatHeard || p.beatSeen,
      toeMarks: p.toeMarks,
      plainView: p.plainView,
      handRig: p.handRig,
    };
    return { origin, device, aids, seed: 1, exercise: state.exercise.value };
  }

  private weldAgain(recording: Recording, file: string | null, id: string | null, made_ms: number): void {
    this.job += 1;
    this.trace.clear();
    this.opening = { recording, file, id, made_ms };
    state.result.value = null;
    state.problem.value = null;
    const exercise = recording.exercise as Exercise | null;
    state.exercise.value = exercise
      ? { ...exercise, joint: recording.simulation.joint, process: recording.simulation.process }
      : editExercise(state.exercise.value, {
          joint: recording.simulation.joint,
          process: recording.simulation.process,
        });
    state.busy.value = { what: 'welding again', share: 0 };
    this.bench.ask({ type: 'open', job: this.job, recording });
  }

  private hear(answer: BenchAnswer): void {
    if ('job' in answer && answer.job !== this.job && answer.job !== -1) {
      if (answer.type === 'surface') this.bench.ask({ type: 'surfaceBack', buffer: answer.texels }, [answer.texels]);
      return;
    }
    switch (answer.type) {
      case 'ready':
        return;
      case 'surface':
        this.hearSurface(answer);
        return;
      case 'ended':
        this.hearEnded(answer);
        return;
      case 'progress':
        state.busy.value = { what: answer.what, share: answer.share };
        return;
      case 'cut':
        state.cut.value = { y_mm: answer.y_mm, svg: answer.svg };
        this.cutAsked = Number.NaN;
        if (answer.y_mm !== state.cutAt.value) this.askCut();
        return;
      case 'scored':
        return;
      case 'failed':
        this.failed(answer.message);
        return;
    }
  }

  private hearSurface(message: SurfaceMessage): void {
    this.trace.append(new Float32Array(message.trace));
    const { nu, ny, u0_mm, du_mm, y0_mm, dy_mm, texels } = message;
    this.onSurface({ nu, ny, u0_mm, du_mm, y0_mm, dy_mm, texels: new Float32Array(texels) });
    this.bench.ask({ type: 'surfaceBack', buffer: texels }, [texels]);
  }

  private hearEnded(answer: Extract<BenchAnswer, { type: 'ended' }>): void {
    const { recording, strip, hash, lag_s } = answer;
    const from = this.opening;
    this.opening = null;
    this.tool.ended();
    state.torchState.value = 'stopped';
    state.robotWelding.value = false;
    const made_ms = from?.made_ms ?? Date.now();
    const id = from?.id ?? crypto.randomUUID();
    state.finished.value = { id, made_ms, recording, strip, hash, lag_s, file: from?.file ?? null };
    state.announcement.value = words.announce.ended[recording.ended];
    this.cutAsked = Number.NaN;
    this.askCut();
    void this.keep();
    this.measure(recording);
  }

  private measure(recording: Recording): void {
    const job = this.job;
    state.busy.value = { what: 'measuring', share: 0 };
    this.measurer ??= new BenchClient(
      (a) => this.hearMeasured(a),
      (m) => this.broken(m),
    );
    this.measurer.ask({ type: 'score', job, recording });
  }

  private hearMeasured(answer: BenchAnswer): void {
    if (!('job' in answer) || answer.job !== this.job) return;
    if (answer.type === 'progress') state.busy.value = { what: answer.what, share: answer.share };
    if (answer.type === 'failed') this.failed(answer.message);
    if (answer.type !== 'scored') return;
    state.busy.value = null;
    state.result.value = answer.result;
    state.announcement.value = words.announce.verdict(answer.result);
    void this.keep();
  }

  private hearOther(answer: BenchAnswer): void {
    if (answer.type === 'surface') this.comparer?.ask({ type: 'surfaceBack', buffer: answer.texels }, [answer.texels]);
    if (answer.type === 'progress') state.otherBusy.value = { what: answer.what, share: answer.share };
    if (answer.type === 'failed') this.failed(answer.message);
    if (answer.type === 'ended') {
      state.otherBusy.value = null;
      this.comparer?.ask({ type: 'cut', y_mm: state.cutAt.value, label: words.cut.letter, pixels: CUT_PIXELS });
    }
    if (answer.type === 'cut') {
      state.otherCut.value = { y_mm: answer.y_mm, svg: answer.svg };
      if (answer.y_mm !== state.cutAt.value)
        this.comparer?.ask({ type: 'cut', y_mm: state.cutAt.value, label: words.cut.letter, pixels: CUT_PIXELS });
    }
  }

  /** Asks for the cut at the handle; one at a time, the newest place wins. */
  private askCut(): void {
    if (!Number.isNaN(this.cutAsked)) return;
    this.cutAsked = state.cutAt.value;
    const ask = { type: 'cut', y_mm: state.cutAt.value, label: words.cut.letter, pixels: CUT_PIXELS } as const;
    this.bench.ask(ask);
    if (state.otherCut.value && state.otherCut.value.y_mm !== state.cutAt.value) this.comparer?.ask(ask);
  }

  private async keep(): Promise<void> {
    const done = state.finished.value;
    if (!done) return;
    const named = done.recording.exercise as Exercise | null;
    try {
      await keepAttempt({
        id: done.id,
        made_ms: done.made_ms,
        title: named?.title ?? words.shelf.untitled,
        recording: done.recording,
        result: state.result.value,
      });
      await this.refreshShelf();
    } catch {
      state.problem.value = words.problems.notKept;
    }
  }

  private async refreshShelf(): Promise<void> {
    try {
      state.shelf.value = await listAttempts();
    } catch {
      state.shelf.value = [];
    }
  }

  private failed(message: string): void {
    state.busy.value = null;
    this.cutAsked = Number.NaN;
    state.problem.value = message;
  }

  private broken(message: string): void {
    state.problem.value = words.problems.worker(message);
  }

  private tell(error: unknown): void {
    state.problem.value =
      error instanceof InputError
        ? words.problems.input(error)
        : error instanceof Error
          ? error.message
          : String(error);
  }
}
