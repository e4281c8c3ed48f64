import { POSE_RATE_HZ, type Pose } from '../../../engine/index.ts';
import { type Exercise, type HandMeasure, type HandReading, handAlone } from '../../../scoring/index.ts';
import { PoseClock } from '../bench/pose-clock.ts';
import { TorchTool } from '../hand/torch-tool.ts';
import type { Clock } from '../ports.ts';
import type { State } from '../session/state.ts';
import type { Drill } from './record.ts';
import type { DrillView } from './views.ts';

/** What each drill is about; the rest is read as well and stands beside it. */
export const DRILL_ASKS: Record<Drill, readonly HandMeasure[]> = {
  pattern: ['width', 'symmetry', 'climb'],
  beat: ['beat', 'evenness'],
  toes: ['pause A', 'pause B'],
};

/** A look at the running hand each so many poses, at the last so many. */
const LOOK = 50;
const WINDOW = 600;
/** Shorter than this there is nothing to read, s. */
const LEAST_S = 4;

/**
 * Drills without metal: the hand weaves on the joint with no arc. A torch of its own, so that nothing is struck; poses by the same clock and readings by the
 * same measures as of an attempt.
 */
export class Drills {
  readonly tool: TorchTool;
  private poseClock: PoseClock | null = null;
  private readonly poses: Pose[] = [];
  private since = 0;

  constructor(
    private readonly clock: Clock,
    private readonly state: State,
    /** A drill has been read. */
    private readonly done: (view: DrillView, exercise: Exercise) => void,
  ) {
    this.tool = new TorchTool({
      strike: (sample) => {
        this.poses.length = 0;
        this.since = 0;
        this.poseClock = new PoseClock(sample.at_ms);
        this.poseClock.add([sample], sample.at_ms);
        this.show('running', []);
      },
      samples: (samples, until_ms) => this.poseClock?.add(samples, until_ms),
      finish: () => this.end(),
      changed: (torch) => {
        // A drill has no second strike: letting go ends it.
        if (torch === 'out') this.tool.finish(this.clock.now_ms());
        if (torch === 'stopped') this.tool.again();
      },
    });
  }

  begin(drill: Drill): void {
    this.tool.again();
    this.poseClock = null;
    this.poses.length = 0;
    this.state.drill.value = { drill, phase: 'ready', readings: [], duration_s: 0 };
  }

  leave(): void {
    this.poseClock = null;
    this.tool.again();
    this.state.drill.value = null;
  }

  /** Once a frame. */
  tick(now_ms: number, complete_ms: number): void {
    this.tool.tick(now_ms, complete_ms);
    this.take();
    if (this.poseClock === null || this.since < LOOK) return;
    this.since = 0;
    this.show('running', handAlone(this.poses.slice(-WINDOW), this.state.exercise.peek()));
  }

  private take(): void {
    const { poseClock } = this;
    for (let pose = poseClock?.take() ?? null; pose; pose = poseClock?.take() ?? null) {
      this.poses.push(pose);
      this.since += 1;
    }
  }

  private end(): void {
    this.take();
    this.poseClock = null;
    const exercise = this.state.exercise.peek();
    if (this.poses.length / POSE_RATE_HZ < LEAST_S) {
      this.show('short', []);
      return;
    }
    this.show('done', handAlone(this.poses, exercise));
    const view = this.state.drill.peek();
    if (view) this.done(view, exercise);
  }

  private show(phase: DrillView['phase'], readings: HandReading[]): void {
    const view = this.state.drill.peek();
    if (!view) return;
    this.state.drill.value = { ...view, phase, readings, duration_s: this.poses.length / POSE_RATE_HZ };
  }
}
