import type { Clock } from '../core/ports.ts';
import type { Player } from '../core/session/player.ts';
import type { Session } from '../core/session/session.ts';
import type { State } from '../core/session/state.ts';
import { Pacer } from './pacer.ts';
import type { Scene, Stage } from './stage.ts';
import type { TorchPose } from './torchView.ts';

/** Makes the stage's scene out of what the session and its state say now. */
export class SceneMaker {
  private readonly pacer = new Pacer();
  private spattered = 0;

  constructor(
    private readonly session: Pick<Session, 'tool' | 'trace'>,
    private readonly player: Player,
    private readonly state: State,
    private readonly clock: Clock,
  ) {}

  /** The pacer is on its way, so the next scene differs from this one. */
  get running(): boolean {
    return this.pacer.running;
  }

  /**
   * @param struck_ms when the arc was struck; 0: it was not
   * @param still the user asks for little motion
   */
  scene(struck_ms: number, still: boolean): Scene {
    const { state } = this;
    const p = state.preferences.value;
    const guides = state.guides.value;
    const { process } = state.exercise.value;
    const { row } = this.player;
    const torchState = state.torchState.value;
    const byHand = torchState === 'welding' || torchState === 'out';
    const live = byHand || state.robotWelding.value;
    const hand = this.session.tool.last;
    let torch: TorchPose | null = null;
    let arcOn = false;
    if (live || state.shownTime.value !== null) {
      arcOn = row >= 0 && this.session.trace.value(row, 'arcOn') === 1;
      torch = byHand ? hand : this.tracedTorch(row);
    } else if (torchState === 'idle') {
      torch = guides.pacer ? (this.pacer.step(state.exercise.value, this.clock.now_ms()) ?? hand) : hand;
    }
    if (!guides.pacer || torchState !== 'idle') this.pacer.stop();
    return {
      torch,
      arcOn,
      nozzle_mm: process.nozzle_mm,
      tip_mm: process.tip_mm,
      plain: p.plainView,
      still,
      paused: !live && !state.playing.value,
      beat:
        struck_ms > 0 && guides.beatSeen
          ? { weave: state.exercise.value.demonstration, since_s: (this.clock.now_ms() - struck_ms) / 1000 }
          : null,
    };
  }

  /** Spatter and drops of what was welded since the last call. */
  throwSpatter(spatter: Stage['spatter']): void {
    const { trace } = this.session;
    if (trace.length < this.spattered || this.state.finished.value) this.spattered = trace.length;
    for (; this.spattered < trace.length; this.spattered++)
      spatter.add(
        trace.value(this.spattered, 'spatter_g'),
        trace.value(this.spattered, 'dripped_g'),
        trace.value(this.spattered, 'footU_mm'),
        trace.value(this.spattered, 'footY_mm'),
      );
  }

  private tracedTorch(row: number): TorchPose | null {
    if (row < 0) return null;
    const { trace } = this.session;
    return {
      u_mm: trace.value(row, 'aimU_mm'),
      y_mm: trace.value(row, 'aimY_mm'),
      tipToWork_mm: trace.value(row, 'tipToWork_mm'),
      workAngle_deg: trace.value(row, 'workAngle_deg'),
      travelAngle_deg: trace.value(row, 'travelAngle_deg'),
    };
  }
}
