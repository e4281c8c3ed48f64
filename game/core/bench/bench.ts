import { createSimulation, type Pose, poses, type Recording, type Simulation } from '../../../engine/index.ts';
import { type AttemptRecording, accountsOpen, openedRoot, readSection, sectionSvg } from '../../../scoring/index.ts';
import type { TorchSample } from '../hand/sample.ts';
import type { Clock } from '../ports.ts';
import { messageOf } from '../session/problem.ts';
import { Attempt } from './attempt.ts';
import { answerCut, type CutRequest, cutMessage } from './cuts.ts';
import { metalEnds } from './metal-ends.ts';
import { PoseChunks } from './pose-chunk.ts';
import { MOVE_MS, PoseClock } from './pose-clock.ts';
import type { AttemptMeta, BenchAnswer, BenchRequest, EndReason } from './protocol.ts';
import { type PoseSource, runRealTime } from './real-time.ts';
import { RobotSource } from './robot-source.ts';
import { SurfacePost } from './surface-post.ts';

/** The arc past the end of the metal by this much has nothing left to weld. */
const RUN_OFF_MM = 3;
/** An attempt longer than this is stopped: no joint here takes half as long. */
const LONGEST_S = 480;
/** Time between two signs of life while welding. */
const ALIVE_MS = 100;
/** Least time between two pictures while welding again. */
const PROGRESS_MS = 120;

export type Post = (message: BenchAnswer, transfer?: Transferable[]) => void;

/**
 * The bench: holds the piece being welded, welds it in real time, welds recordings again, cuts and scores.
 * States: nothing prepared, prepared (a cold piece waits), welding, finished (the attempt can be cut and scrubbed).
 */
export class Bench {
  private job = 0;
  private prepared: Simulation | null = null;
  private attempt: Attempt | null = null;
  private poses: PoseClock | null = null;
  private halt: (() => void) | null = null;
  private posted = 0;
  private said_ms = 0;
  private shown_s: number | null = null;
  /** A picture that must be shown and found no buffer free; posted when one comes back. */
  private owed: { piece: Simulation; t_s: number } | null = null;
  private readonly surfaces = new SurfacePost();

  constructor(
    private readonly post: Post,
    private readonly clock: Clock,
  ) {}

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
        this.poses?.add(request.samples, request.until_ms);
        return;
      case 'finish':
        this.finish(request.at_ms);
        return;
      case 'demonstrate':
        this.demonstrate(request);
        return;
      case 'open':
      case 'recover':
        this.open(request.recording, request.job, request.type === 'recover');
        return;
      case 'seek':
        this.seek(request.t_s);
        return;
      case 'cut':
      case 'etched':
      case 'compareOwn':
        this.cutFor(request);
        return;
      case 'stretch':
        this.stretch(request);
        return;
      case 'paper': {
        const html = request.job === this.job ? (this.attempt?.paper(request) ?? null) : null;
        if (html !== null) this.post({ type: 'paper', job: this.job, html });
        return;
      }
      case 'drawing':
        this.draw(request.y_mm);
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
    this.poses = null;
    this.attempt = null;
    this.prepared = null;
    this.posted = 0;
    this.shown_s = null;
    this.owed = null;
    this.surfaces.reset();
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
    const poses = new PoseClock(samples[0].at_ms);
    poses.add(samples, samples[0].at_ms);
    this.poses = poses;
    const chunks = new PoseChunks();
    this.run(
      poses,
      attempt,
      () => null,
      (pose) => this.handOn(chunks, pose),
    );
  }

  private demonstrate(request: Extract<BenchRequest, { type: 'demonstrate' }>): void {
    const attempt = this.begin(request.meta, request.job);
    const source = new RobotSource(request.weave, request.faults);
    this.run(source, attempt, () => (source.done ? 'hand-finished' : null));
  }

  private handOn(chunks: PoseChunks, pose: Pose): void {
    chunks.add(pose);
    const chunk = chunks.take();
    if (chunk) this.post({ type: 'poses', job: this.job, ...chunk });
  }

  /** At work: says so ten times a second, whatever else it has to say. */
  private sayAlive(): void {
    const now_ms = this.clock.now_ms();
    if (now_ms - this.said_ms < ALIVE_MS) return;
    this.said_ms = now_ms;
    this.post({ type: 'alive', job: this.job });
  }

  private run(
    source: PoseSource,
    attempt: Attempt,
    finished: () => EndReason | null,
    welded: (recorded: Pose) => void = () => undefined,
  ): void {
    const { high_mm } = metalEnds(attempt.simulation.options.joint);
    let reason: EndReason | null = null;
    this.halt = runRealTime(
      source,
      {
        weld: (pose: Pose) => {
          welded(attempt.weld(pose));
          this.sayAlive();
          if (pose.trigger && pose.y_mm > high_mm + RUN_OFF_MM) reason = 'length-reached';
          if (attempt.duration_s > LONGEST_S) reason = 'time-limit';
        },
        spell: () => {
          this.sayAlive();
          this.show(attempt.simulation, attempt.duration_s);
          reason ??= finished();
          if (reason) this.end(reason, 0);
          return reason !== null;
        },
        tooSlow: (lag_s) => this.end('too-slow', lag_s),
      },
      this.clock,
    );
  }

  /** The hand is done: welds what it did up to that moment, then ends. */
  private finish(at_ms: number): void {
    this.poses?.add([], at_ms + MOVE_MS);
    for (let pose = this.poses?.take(); pose; pose = this.poses?.take()) this.attempt?.weld(pose);
    this.end('stopped', 0);
  }

  private end(reason: EndReason, lag_s: number): void {
    const attempt = this.attempt;
    if (!attempt || attempt.recording) return;
    this.halt?.();
    this.halt = null;
    this.poses = null;
    const recording = attempt.end(reason);
    const hash = recording.stateHash ?? '';
    this.show(attempt.simulation, attempt.duration_s, true);
    this.post({ type: 'ended', job: this.job, recording, hash, lag_s });
    this.judge(attempt, recording);
  }

  /** Welds a recording again, in slices, so that the page hears how far it is and can open something else meanwhile. */
  private open(recording: Recording, job: number, unfinished: boolean): void {
    // Made before the bench is cleared: settings the engine refuses must not cost the piece that lies there.
    const attempt = new Attempt(createSimulation(recording.simulation), recording);
    this.reset(job);
    this.attempt = attempt;
    const all = [...poses(recording)];
    let next = 0;
    const slice = (): void => {
      const until = this.clock.now_ms() + PROGRESS_MS;
      while (next < all.length && this.clock.now_ms() < until) attempt.weld(all[next++]);
      this.show(attempt.simulation, attempt.duration_s);
      this.post({ type: 'progress', job, share: all.length === 0 ? 1 : next / all.length });
      if (next < all.length) {
        this.halt = this.clock.after(0, slice);
        return;
      }
      this.halt = null;
      if (unfinished) {
        this.end('interrupted', 0);
        return;
      }
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
    this.clock.after(0, () => {
      if (job !== this.job) return;
      try {
        const { length_mm } = attempt.simulation.options.joint;
        // Of a piece whose accounts are open nothing is read, here as in the result.
        const strip = accountsOpen(attempt.simulation.accounts()) ? [] : openedRoot(attempt.survey, length_mm);
        // Written by this bench or read by scoring's own reader: the exercise in it has scoring's shape.
        this.post({ type: 'scored', job, judgement: attempt.judge(recording as AttemptRecording), strip });
      } catch (error) {
        this.post({ type: 'failed', job, doing: 'finish', message: messageOf(error) });
      }
    });
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
    if (!piece) return;
    const { y_mm } = request;
    const section = piece.section(y_mm);
    // The finished piece has been measured where it was judged; a piece on its way is read as it stands.
    const finished = attempt?.recording && piece === attempt.simulation;
    const station = finished ? attempt.survey.at(y_mm)?.station : readSection(section)?.station;
    const read = accountsOpen(piece.accounts()) ? null : (station ?? null);
    this.post(answerCut(request, section, read, this.job));
  }

  /** Read as the command line reads a cut, of the finished piece whatever moment is shown. */
  private draw(y_mm: number): void {
    const piece = this.attempt?.recording ? this.attempt.simulation : null;
    if (!piece || accountsOpen(piece.accounts())) return;
    const section = piece.section(y_mm);
    const svg = sectionSvg(section, readSection(section)?.station ?? null);
    this.post({ type: 'drawing', job: this.job, y_mm, svg });
  }

  private stretch({ recording, turn, y_mm, id, scale, language }: Extract<BenchRequest, { type: 'stretch' }>): void {
    const piece = this.attempt?.recording ? this.attempt.stretch(recording, y_mm) : null;
    const section = piece?.section(y_mm);
    const station =
      piece && section && !accountsOpen(piece.accounts()) ? (readSection(section)?.station ?? null) : null;
    const cut = section ? cutMessage(section, station, { y_mm, id, scale, language }, this.job) : null;
    this.post({ type: 'stretch', job: this.job, turn, cut });
  }

  /** Posts the surface if a buffer is at hand; with `must` it is posted as soon as one is, unless something newer is shown first. */
  private show(piece: Simulation, t_s: number, must = false): void {
    const trace = this.attempt?.trace ?? null;
    const message = this.surfaces.pack(this.job, t_s, piece, trace, this.posted);
    this.owed = message || !must ? null : { piece, t_s };
    if (!message) return;
    this.posted = trace?.length ?? 0;
    this.post(message, [message.skin, message.trace]);
  }
}
