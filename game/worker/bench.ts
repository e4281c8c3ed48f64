import { createSimulation, type Pose, poses, type Recording, type Simulation } from '../../engine/index.ts';
import { type AttemptRecording, openedRoot } from '../../scoring/index.ts';
import type { TorchSample } from '../input/sample.ts';
import { metalEnds } from '../view/metal.ts';
import { Attempt } from './attempt.ts';
import { answerCut, type CutRequest } from './cuts.ts';
import { MOVE_MS, PoseClock } from './poseClock.ts';
import type { AttemptMeta, BenchAnswer, BenchRequest, EndReason } from './protocol.ts';
import { now_ms, type PoseSource, runRealTime } from './realTime.ts';
import { RobotSource } from './robotSource.ts';
import { SurfacePost } from './surfacePost.ts';

/** The arc past the end of the metal by this much has nothing left to weld. */
const RUN_OFF_MM = 3;
/** An attempt longer than this is stopped: no joint here takes half as long. */
const LONGEST_S = 480;
/** Least time between two pictures while welding again. */
const PROGRESS_MS = 120;

export type Post = (message: BenchAnswer, transfer?: Transferable[]) => void;

/**
 * The bench in its Worker: holds the piece being welded, welds it in real time, welds recordings again, cuts and scores.
 * States: nothing prepared, prepared (a cold piece waits), welding, finished (the attempt can be cut and scrubbed).
 */
export class Bench {
  private job = 0;
  private prepared: Simulation | null = null;
  private attempt: Attempt | null = null;
  private clock: PoseClock | null = null;
  private halt: (() => void) | null = null;
  private posted = 0;
  private shown_s: number | null = null;
  /** A picture that must be shown and found no buffer free; posted when one comes back. */
  private owed: { piece: Simulation; t_s: number } | null = null;
  private readonly surfaces = new SurfacePost();

  constructor(private readonly post: Post) {}

  handle(request: BenchRequest): void {
    switch (request.type) {
      case 'prepare':
        this.reset(request.job);
        this.prepared = createSimulation(request.simulation);
        this.show(this.prepared, 0);
        return;
      case 'strike':
        this.strike(request.meta, request.samples, request.job);
        return;
      case 'samples':
        this.clock?.add(request.samples, request.until_ms);
        return;
      case 'finish':
        this.finish(request.at_ms);
        return;
      case 'demonstrate':
        this.demonstrate(request);
        return;
      case 'open':
        this.open(request.recording, request.job);
        return;
      case 'seek':
        this.seek(request.t_s);
        return;
      case 'cut':
      case 'etched':
      case 'compareOwn':
        this.cutFor(request);
        return;
      case 'surfaceBack':
        this.surfaces.takeBack(request.buffer);
        if (this.owed) this.show(this.owed.piece, this.owed.t_s, true);
        return;
    }
  }

  private reset(job: number): void {
    this.halt?.();
    this.halt = null;
    this.clock = null;
    this.attempt = null;
    this.prepared = null;
    this.posted = 0;
    this.shown_s = null;
    this.owed = null;
    this.job = job;
  }

  private begin(meta: AttemptMeta, job: number): Attempt {
    const piece = this.prepared;
    if (!piece) throw new Error('A piece has to be prepared before it is welded.');
    this.reset(job);
    this.attempt = new Attempt(piece, meta);
    return this.attempt;
  }

  private strike(meta: AttemptMeta, samples: readonly TorchSample[], job: number): void {
    const attempt = this.begin(meta, job);
    const clock = new PoseClock(samples[0].at_ms);
    clock.add(samples, samples[0].at_ms);
    this.clock = clock;
    this.run(clock, attempt, () => null);
  }

  private demonstrate(request: Extract<BenchRequest, { type: 'demonstrate' }>): void {
    const attempt = this.begin(request.meta, request.job);
    const source = new RobotSource(request.weave, request.faults);
    this.run(source, attempt, () => (source.done ? 'hand-finished' : null));
  }

  private run(source: PoseSource, attempt: Attempt, finished: () => EndReason | null): void {
    const { high_mm } = metalEnds(attempt.simulation.options.joint);
    let reason: EndReason | null = null;
    this.halt = runRealTime(source, {
      weld: (pose: Pose) => {
        attempt.weld(pose);
        if (pose.trigger && pose.y_mm > high_mm + RUN_OFF_MM) reason = 'length-reached';
        if (attempt.duration_s > LONGEST_S) reason = 'time-limit';
      },
      spell: () => {
        this.show(attempt.simulation, attempt.duration_s);
        reason ??= finished();
        if (reason) this.end(reason, 0);
        return reason !== null;
      },
      tooSlow: (lag_s) => this.end('too-slow', lag_s),
    });
  }

  /** The hand is done: welds what it did up to that moment, then ends. */
  private finish(at_ms: number): void {
    this.clock?.add([], at_ms + MOVE_MS);
    for (let pose = this.clock?.take(); pose; pose = this.clock?.take()) this.attempt?.weld(pose);
    this.end('stopped', 0);
  }

  private end(reason: EndReason, lag_s: number): void {
    const attempt = this.attempt;
    if (!attempt || attempt.recording) return;
    this.halt?.();
    this.halt = null;
    this.clock = null;
    const recording = attempt.end(reason);
    const hash = recording.stateHash ?? '';
    this.show(attempt.simulation, attempt.duration_s, true);
    this.post({ type: 'ended', job: this.job, recording, hash, lag_s });
    this.judge(attempt, recording);
  }

  /** Welds a recording again, in slices, so that the page hears how far it is and can open something else meanwhile. */
  private open(recording: Recording, job: number): void {
    // Made before the bench is cleared: settings the engine refuses must not cost the piece that lies there.
    const attempt = new Attempt(createSimulation(recording.simulation), recording);
    this.reset(job);
    this.attempt = attempt;
    const all = [...poses(recording)];
    let next = 0;
    const slice = (): void => {
      const until = now_ms() + PROGRESS_MS;
      while (next < all.length && now_ms() < until) attempt.weld(all[next++]);
      this.show(attempt.simulation, attempt.duration_s);
      this.post({ type: 'progress', job, share: all.length === 0 ? 1 : next / all.length });
      if (next < all.length) {
        const timer = setTimeout(slice, 0);
        this.halt = () => clearTimeout(timer);
        return;
      }
      this.halt = null;
      const hash = attempt.endOpened(recording);
      this.show(attempt.simulation, attempt.duration_s, true);
      this.post({ type: 'ended', job, recording, hash, lag_s: 0 });
      this.judge(attempt, recording);
    };
    slice();
  }

  /** After the messages that show the piece, so that it lies on the bench while it is measured. */
  private judge(attempt: Attempt, recording: Recording): void {
    const job = this.job;
    setTimeout(() => {
      if (job !== this.job) return;
      try {
        const { simulation } = attempt;
        const { length_mm } = simulation.options.joint;
        const strip = openedRoot((y_mm) => simulation.section(y_mm), length_mm);
        // Written by this bench or read by scoring's own reader: the exercise in it has scoring's shape.
        this.post({ type: 'scored', job, result: attempt.judge(recording as AttemptRecording), strip });
      } catch (error) {
        const message = error instanceof Error ? error.message : String(error);
        this.post({ type: 'failed', job, doing: 'finish', message });
      }
    }, 0);
  }

  private seek(t_s: number | null): void {
    const attempt = this.attempt;
    if (!attempt?.recording) return;
    this.shown_s = t_s;
    this.show(t_s === null ? attempt.simulation : attempt.at(t_s), t_s ?? attempt.duration_s, true);
  }

  private cutFor(request: CutRequest): void {
    const attempt = this.attempt;
    const piece = attempt ? (this.shown_s === null ? attempt.simulation : attempt.at(this.shown_s)) : this.prepared;
    if (piece) this.post(answerCut(request, piece.section(request.y_mm), this.job));
  }

  /** Posts the surface if a buffer is at hand; with `must` it is posted as soon as one is, unless something newer is shown first. */
  private show(piece: Simulation, t_s: number, must = false): void {
    const trace = this.attempt?.trace;
    const message = this.surfaces.pack(this.job, t_s, piece, trace?.slice(this.posted) ?? new Float32Array(0));
    this.owed = message || !must ? null : { piece, t_s };
    if (!message) return;
    this.posted = trace?.length ?? 0;
    this.post(message, [message.texels, message.trace]);
  }
}
