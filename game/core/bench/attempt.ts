import {
  createRecorder,
  createSimulation,
  POSE_RATE_HZ,
  type Pose,
  poses,
  type Recording,
  type Simulation,
} from '../../../engine/index.ts';
import {
  type AttemptRecording,
  attemptHtml,
  attemptPaperOf,
  type Judged,
  type Judgement,
  judgementOf,
  type Language,
  resultOf,
  Survey,
  Trace,
} from '../../../scoring/index.ts';
import type { AttemptMeta, EndReason } from './protocol.ts';
import { type Lay, weldStretch } from './stretch.ts';
import { TraceLog } from './trace-log.ts';

/** Snapshots kept for scrubbing may take this much memory; past it every other one is dropped and the spacing doubles. */
const SNAPSHOT_BYTES = 160e6;
/** A puddle of these sizes is solid well within this time after the arc goes out. */
const FREEZE_S = 1.5;
const FIRST_SPACING = POSE_RATE_HZ / 2;

/**
 * One attempt on the bench: the simulation being welded, the recording of its poses, what it did, and snapshots to scrub by.
 * Replaying runs in a second simulation, so the finished piece stays on the bench to be cut.
 */
export class Attempt {
  readonly trace = new TraceLog();
  /** The same samples in the form scoring reads, at full precision. */
  private readonly scored = new Trace();
  recording: Recording | null = null;
  private readonly recorder;
  private snapshots: Lay[] = [];
  private spacing = FIRST_SPACING;
  private replaying: Simulation | null = null;
  private replayPoses: Pose[] = [];
  private replayStep = 0;
  private last: Pose | null = null;
  private sawn: Survey | null = null;
  private judged: (Omit<Judged, 'result'> & { judgement: Judgement }) | null = null;

  /** @param simulation a cold piece, not yet welded on */
  constructor(
    readonly simulation: Simulation,
    meta: AttemptMeta | Recording,
  ) {
    this.recorder = createRecorder(simulation, meta);
  }

  /** Welds one pose interval; the pose is recorded first, and the recorded (quantised) pose is what is welded, and handed back. */
  weld(pose: Pose): Pose {
    this.last = pose;
    this.keepSnapshot();
    const recorded = this.recorder.add(pose);
    const sample = this.simulation.step(recorded);
    this.trace.push(sample);
    this.scored.add(sample);
    return recorded;
  }

  /**
   * Ends the attempt. The trigger is off from here and the puddle freezes: metal stays liquid for a moment after the arc is out, and
   * what is cut and judged is a cold bead. These poses are part of the recording like any other.
   */
  end(reason: EndReason): Recording {
    if (this.last && !this.recording) {
      const rest = { ...this.last, trigger: false };
      for (let n = 0; n < FREEZE_S * POSE_RATE_HZ; n++) this.weld(rest);
    }
    this.recording = this.recorder.finish(reason);
    this.replayPoses = [...poses(this.recording)];
    return this.recording;
  }

  /** Ends an attempt that was welded from a recording; returns the state hash it came to here. */
  endOpened(recording: Recording): string {
    this.recording = recording;
    this.replayPoses = [...poses(recording)];
    return this.simulation.hash();
  }

  /** Judges the finished piece as it lies here; scoring a saved recording welds it again and comes to the same digits. */
  judge(recording: AttemptRecording): Judgement {
    const { simulation } = this;
    const attempt = {
      simulation: simulation.options,
      trace: this.scored,
      section: (y_mm: number) => simulation.section(y_mm),
      accounts: simulation.accounts(),
      stateHash: simulation.hash(),
      states: this.recorder.states(),
    };
    const judgement = judgementOf(recording, attempt, { survey: this.survey });
    this.judged = { recording, section: attempt.section, survey: this.survey, judgement };
    return judgement;
  }

  /** The report as it is printed, in a language; null before the attempt has been judged. */
  paper({ file, language, inches }: { file: string; language: Language; inches: boolean }): string | null {
    if (this.judged === null) return null;
    const { judgement, ...rest } = this.judged;
    return attemptHtml(attemptPaperOf({ ...rest, result: resultOf(judgement, language) }, file, { language, inches }));
  }

  /** The cuts of the finished piece, each made once: judging and everything that is shown of it share them. */
  get survey(): Survey {
    this.sawn ??= new Survey((y_mm) => this.simulation.section(y_mm));
    return this.sawn;
  }

  get duration_s(): number {
    return this.simulation.steps / POSE_RATE_HZ;
  }

  /** The piece as it was at a time of the attempt, by the nearest snapshot before it and the recorded poses since. */
  at(t_s: number): Simulation {
    const wanted = Math.round(Math.min(Math.max(t_s, 0), this.duration_s) * POSE_RATE_HZ);
    if (wanted >= this.simulation.steps) return this.simulation;
    this.replaying ??= createSimulation(this.simulation.options);
    const from = this.snapshots.filter((s) => s.step <= wanted).at(-1);
    if (from && (this.replayStep > wanted || this.replayStep < from.step || this.replaying.steps === 0)) {
      this.replaying.restore(from.state);
      this.replayStep = from.step;
    }
    for (; this.replayStep < wanted; this.replayStep++) this.replaying.step(this.replayPoses[this.replayStep]);
    return this.replaying;
  }

  /** The piece with the stretch about a height welded anew as another attempt; see stretch.ts. */
  stretch(changed: Recording, y_mm: number): Simulation | null {
    return weldStretch(this.replayPoses, this.snapshots, changed, y_mm);
  }

  private keepSnapshot(): void {
    const step = this.simulation.steps;
    if (step % this.spacing !== 0) return;
    const state = this.simulation.snapshot();
    this.snapshots.push({ step, state });
    if (this.snapshots.length * state.byteLength <= SNAPSHOT_BYTES || this.snapshots.length < 3) return;
    this.spacing *= 2;
    this.snapshots = this.snapshots.filter((s) => s.step % this.spacing === 0);
  }
}
