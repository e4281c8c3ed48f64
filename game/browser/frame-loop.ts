import { effect } from '@preact/signals-core';
import { wireState } from '../../engine/index.ts';
import { Sound } from '../audio/sound.ts';
import { InputRouter } from '../core/hand/router.ts';
import type { Clock } from '../core/ports.ts';
import type { Player } from '../core/session/player.ts';
import type { Session } from '../core/session/session.ts';
import type { State } from '../core/session/state.ts';
import { lensAtHand } from '../view/lens/atHand.ts';
import { SceneMaker } from '../view/scene.ts';
import type { Scene, Stage } from '../view/stage.ts';
import { GamepadTrigger } from './gamepad.ts';
import { KeyboardTorch } from './keyboard.ts';
import { listenPointer } from './pointer.ts';

/** Readings this much older than the frame have surely arrived: browsers deliver pointer events just before each frame. */
const ON_THE_WAY_MS = 8;
/** A frame that comes later than this does not move keys and replay further. */
const LONGEST_FRAME_S = 0.25;

/** The page's frame: reads keys, gamepad and rig, moves replay, sound and scene on, and draws if anything on the joint has changed. */
export class FrameLoop {
  private readonly router: InputRouter;
  private readonly keyboard: KeyboardTorch;
  private readonly gamepad: GamepadTrigger;
  private readonly player: Player;
  private readonly scenes: SceneMaker;
  private readonly sound: Sound;
  private struck_ms = 0;
  private frame = 0;
  private last_ms = 0;
  private changed = true;
  private readonly stops: (() => void)[] = [];
  private readonly still = window.matchMedia('(prefers-reduced-motion: reduce)');

  constructor(
    private readonly session: Session,
    private readonly state: State,
    private readonly clock: Clock,
    private readonly stage: Stage,
    pane: HTMLElement,
  ) {
    const touch = (): void => this.touch();
    this.router = new InputRouter(
      {
        get tool() {
          return session.tool;
        },
        finish: () => session.finish(),
        cutAt: (y_mm) => session.cutAt(y_mm),
        moved: touch,
      },
      state,
      clock,
    );
    this.player = session.player;
    this.scenes = new SceneMaker(session, this.player, state, clock);
    this.sound = new Sound(clock);
    this.keyboard = new KeyboardTorch({
      trigger: (down) => this.router.key(down),
      finish: () => this.router.finish(),
      nudge: (du, dy) => this.router.nudge(du, dy),
    });
    this.gamepad = new GamepadTrigger((down) => this.router.pad(down));
    this.stops.push(
      this.keyboard.attach(pane),
      this.gamepad.attach(),
      this.sound.attach(),
      listenPointer(pane, this.router, () => stage.camera),
      effect(() => this.followArc()),
      effect(() => this.followTip()),
    );
    session.onSurface = (surface) => {
      stage.setSurface(surface);
      lensAtHand.peek()?.setSurface(surface);
      this.touch();
    };
    this.frame = requestAnimationFrame(this.tick);
  }

  destroy(): void {
    cancelAnimationFrame(this.frame);
    for (const stop of this.stops) stop();
    this.sound.stop();
  }

  /** Something outside the loop (size, preference) changed the picture. */
  touch(): void {
    this.changed = true;
  }

  /** Sound and beat begin with the strike and end with the attempt. */
  private followArc(): void {
    const torch = this.state.torchState.value;
    const welding = torch === 'welding' || this.state.robotWelding.value;
    if (welding && this.struck_ms === 0) this.strike();
    if (!welding && torch !== 'out') {
      this.struck_ms = 0;
      this.sound.stop();
    }
  }

  private followTip(): void {
    const tip_mm = this.state.live.value?.tipToWork_mm ?? 0;
    if (tip_mm > 0 && this.struck_ms > 0) this.sound.follow(wireState(this.state.exercise.peek().process, tip_mm));
  }

  private strike(): void {
    this.struck_ms = this.clock.now_ms();
    const { sound } = this.state.preferences.peek();
    const { beatHeard } = this.state.guides.peek();
    const { process, hold, demonstration } = this.state.exercise.peek();
    this.sound.strike(sound, wireState(process, hold.tipToWork_mm), beatHeard ? demonstration : null, this.struck_ms);
  }

  private readonly tick = (time_ms: number): void => {
    this.frame = requestAnimationFrame(this.tick);
    const dt_s = Math.min(LONGEST_FRAME_S, (time_ms - this.last_ms) / 1000);
    this.last_ms = time_ms;
    this.keyboard.tick(dt_s);
    this.gamepad.tick();
    this.router.settle();
    this.session.tick(performance.timeOrigin + time_ms - ON_THE_WAY_MS);
    this.player.advance(dt_s);
    const scene = this.scenes.scene(this.struck_ms, this.still.matches);
    this.sound.arcOn(scene.arcOn && this.struck_ms > 0);
    const active = (scene.arcOn && !scene.paused) || this.stage.restless || this.scenes.running;
    if (active || this.changed) {
      this.changed = false;
      this.scenes.throwSpatter(this.stage.spatter);
      this.stage.render(scene, dt_s);
    }
    this.renderLens(scene, dt_s);
    if (this.state.dark.value !== this.stage.wantsDark) this.state.dark.value = this.stage.wantsDark;
  };

  /** The close view knows by itself whether it has anything new to draw. */
  private renderLens(scene: Scene, dt_s: number): void {
    const { process, demonstration } = this.state.exercise.peek();
    const stage = this.state.stage.peek();
    lensAtHand.peek()?.render(
      {
        ...scene,
        ...this.stage.light,
        hidden: stage === 'read',
        following: stage === 'weld' || stage === 'replay',
        wire_mm: process.wire_mm,
        weave: stage === 'rest' ? demonstration : null,
      },
      dt_s,
    );
  }
}
