import { effect } from '@preact/signals';
import { wireState } from '../engine/index.ts';
import { Sound } from './audio/sound.ts';
import { GamepadTrigger } from './input/gamepad.ts';
import { HandRig } from './input/handRig.ts';
import { KeyboardTorch } from './input/keyboard.ts';
import { listenPointer, type PointerKind } from './input/pointer.ts';
import type { TorchSample } from './input/sample.ts';
import type { Session } from './session/session.ts';
import * as state from './state.ts';
import { Pacer } from './view/pacer.ts';
import type { Scene, Stage } from './view/stage.ts';
import type { TorchPose } from './view/torchView.ts';
import { now_ms } from './worker/realTime.ts';

/** How far above a fingertip the wire points, CSS pixels. */
const FINGER_REACH_PX = 64;
/** Readings this much older than the frame have surely arrived: browsers deliver pointer events just before each frame. */
const ON_THE_WAY_MS = 8;
/** Readings are repeated at least this often while the rig still swings or the keys move, ms. */
const REST_MS = 8;

/**
 * The page's only clock: once a frame it reads keys, gamepad and rig, and draws if anything on the joint has changed.
 */
export class BenchLoop {
  private readonly keyboard: KeyboardTorch;
  private readonly gamepad = new GamepadTrigger((down) => this.padTrigger(down));
  private readonly pacer = new Pacer();
  private readonly sound = new Sound();
  private struck_ms = 0;
  private rig: HandRig | null = null;
  private handAt: TorchSample | null = null;
  private frame = 0;
  private last_ms = 0;
  private changed = true;
  private traced = 0;
  private readonly stops: (() => void)[] = [];
  private readonly still = window.matchMedia('(prefers-reduced-motion: reduce)');

  constructor(
    private readonly session: Session,
    private readonly stage: Stage,
    pane: HTMLElement,
  ) {
    this.keyboard = new KeyboardTorch({
      trigger: (down) => this.keyTrigger(down),
      finish: () => this.session.tool.finish(now_ms()),
      nudge: (du, dy) => this.nudge(du, dy),
    });
    this.stops.push(this.keyboard.attach(pane), this.gamepad.attach(), this.sound.attach(), this.listen(pane));
    this.stops.push(
      effect(() => {
        const welding = state.torchState.value === 'welding' || state.robotWelding.value;
        if (welding && this.struck_ms === 0) this.strike();
        if (!welding && state.torchState.value !== 'out') this.rest();
      }),
    );
    session.onSurface = (surface) => {
      this.stage.setSurface(surface);
      this.changed = true;
    };
    this.frame = requestAnimationFrame(this.tick);
  }

  destroy(): void {
    cancelAnimationFrame(this.frame);
    for (const stop of this.stops) stop();
    this.sound.stop();
  }

  private strike(): void {
    this.struck_ms = now_ms();
    const { sound } = state.preferences.peek();
    const { beatHeard } = state.guides.peek();
    const { process, hold, demonstration } = state.exercise.peek();
    this.sound.strike(sound, wireState(process, hold.tipToWork_mm), beatHeard ? demonstration : null, this.struck_ms);
  }

  private rest(): void {
    this.struck_ms = 0;
    this.sound.stop();
  }

  /** Something outside the loop (size, preference) changed the picture. */
  touch(): void {
    this.changed = true;
  }

  private listen(pane: HTMLElement): () => void {
    return listenPointer(pane, {
      camera: () => this.stage.camera,
      hold: () => state.exercise.value.hold,
      penTilts: () => state.preferences.value.penTilts,
      fingerReach_px: () => FINGER_REACH_PX,
      ready: () => !state.robotWelding.value && state.torchState.value !== 'stopped' && state.busy.value === null,
      near: (kind, samples) => this.near(kind, samples),
      press: (kind, sample) => {
        state.deviceKind.value = kind;
        this.startRig(sample);
        this.session.tool.press(sample);
      },
      release: (sample) => this.session.tool.release(this.rigged(sample)),
      point: (sample) => {
        if (state.finished.value) this.session.cutAt(sample.y_mm);
      },
      leave: () => {
        if (this.session.tool.state === 'idle') this.session.tool.last = null;
        this.changed = true;
      },
    });
  }

  private near(kind: PointerKind, samples: TorchSample[]): void {
    const { tool } = this.session;
    this.changed = true;
    if (tool.state === 'stopped') return;
    // A gamepad's trigger stays down while the pointer only aims.
    const trigger = tool.triggerDown;
    this.handAt = samples.at(-1) ?? null;
    if (tool.state === 'idle') state.deviceKind.value = kind;
    tool.move(samples.map((sample) => this.rigged({ ...sample, trigger })));
  }

  private startRig(sample: TorchSample): void {
    const { handRig } = state.preferences.value;
    this.handAt = sample;
    if (this.session.tool.state !== 'idle') return;
    this.rig = handRig ? new HandRig(handRig, sample.u_mm, sample.y_mm) : null;
    this.rigged_ms = sample.at_ms;
  }

  private rigged_ms = 0;

  private rigged(sample: TorchSample): TorchSample {
    if (!this.rig) return sample;
    const dt = sample.at_ms - this.rigged_ms;
    this.rigged_ms = sample.at_ms;
    return { ...sample, ...this.rig.follow(sample.u_mm, sample.y_mm, dt) };
  }

  private keyTrigger(down: boolean): void {
    const { tool } = this.session;
    if (state.preferences.value.latchTrigger) {
      if (!down) return;
      if (tool.state === 'welding') this.release();
      else this.pressWith('keyboard');
      return;
    }
    if (down) this.pressWith('keyboard');
    else if (state.deviceKind.value === 'keyboard') this.release();
  }

  private padTrigger(down: boolean): void {
    if (down) this.pressWith('gamepad');
    else if (state.deviceKind.value === 'gamepad') this.release();
  }

  private pressWith(kind: 'keyboard' | 'gamepad'): void {
    const { tool } = this.session;
    if (state.robotWelding.value || state.busy.value || (tool.state !== 'idle' && tool.state !== 'out')) return;
    const at = this.handAt ?? this.restingPlace();
    state.deviceKind.value = kind;
    const sample = { ...at, ...state.exercise.value.hold, at_ms: now_ms(), trigger: true };
    this.startRig(sample);
    tool.press(sample);
  }

  private release(): void {
    const { tool } = this.session;
    if (tool.state !== 'welding' || !tool.last) return;
    tool.release({ ...tool.last, at_ms: now_ms(), trigger: false });
  }

  private restingPlace(): TorchSample {
    return { at_ms: now_ms(), u_mm: 0, y_mm: 3, ...state.exercise.value.hold, trigger: false };
  }

  private nudge(du_mm: number, dy_mm: number): void {
    const { tool } = this.session;
    if (tool.state === 'stopped') return;
    const at = this.handAt ?? this.restingPlace();
    const moved = { ...at, u_mm: at.u_mm + du_mm, y_mm: at.y_mm + dy_mm, at_ms: now_ms(), trigger: tool.triggerDown };
    this.handAt = moved;
    tool.move([this.rigged(moved)]);
    this.changed = true;
  }

  private readonly tick = (time_ms: number): void => {
    this.frame = requestAnimationFrame(this.tick);
    const dt_s = Math.min(0.25, (time_ms - this.last_ms) / 1000);
    this.last_ms = time_ms;
    const { tool } = this.session;
    this.keyboard.tick(dt_s);
    this.gamepad.tick();
    this.settleRig();
    tool.tick(now_ms(), performance.timeOrigin + time_ms - ON_THE_WAY_MS);
    if (state.playing.value) this.advanceReplay(dt_s);
    const scene = this.scene();
    this.sound.arcOn(scene.arcOn && this.struck_ms > 0);
    const active = (scene.arcOn && !scene.paused) || this.stage.restless || this.pacer.running;
    if (!active && !this.changed) return;
    this.changed = false;
    this.throwSpatter();
    this.stage.render(scene, dt_s);
    if (state.dark.value !== this.stage.wantsDark) state.dark.value = this.stage.wantsDark;
  };

  /** The gun swings on while the hand rests, so the Worker needs readings though the pointer sends none. */
  private settleRig(): void {
    const now = now_ms();
    if (!this.rig || !this.handAt || now - this.rigged_ms < REST_MS) return;
    if (this.session.tool.state !== 'welding') return;
    this.session.tool.move([this.rigged({ ...this.handAt, at_ms: now, trigger: true })]);
  }

  private advanceReplay(dt_s: number): void {
    const at = (state.shownTime.value ?? 0) + dt_s;
    if (at >= state.duration_s.value) {
      state.playing.value = false;
      this.session.seek(null);
    } else this.session.seek(at);
  }

  private scene(): Scene {
    const p = state.preferences.value;
    const guides = state.guides.value;
    const { process } = state.exercise.value;
    const row = this.shownRow();
    const live = state.torchState.value === 'welding' || state.torchState.value === 'out' || state.robotWelding.value;
    const hand = this.session.tool.last;
    let torch: TorchPose | null = null;
    let arcOn = false;
    if (live || state.shownTime.value !== null) {
      arcOn = row >= 0 && this.session.trace.value(row, 'arcOn') === 1;
      torch = state.torchState.value === 'welding' || state.torchState.value === 'out' ? hand : this.traced_torch(row);
    } else if (state.torchState.value === 'idle') {
      torch = guides.pacer ? (this.pacer.step(state.exercise.value, performance.now()) ?? hand) : hand;
    }
    if (!guides.pacer || state.torchState.value !== 'idle') this.pacer.stop();
    return {
      torch,
      arcOn,
      nozzle_mm: process.nozzle_mm,
      tip_mm: process.tip_mm,
      plain: p.plainView,
      still: this.still.matches,
      paused: !live && !state.playing.value,
      beat:
        this.struck_ms > 0 && guides.beatSeen
          ? { weave: state.exercise.value.demonstration, since_s: (now_ms() - this.struck_ms) / 1000 }
          : null,
    };
  }

  /** Row of the trace now on show: the newest while welding, the replay's otherwise. */
  private shownRow(): number {
    const { trace } = this.session;
    const shown = state.shownTime.value;
    if (shown === null) return trace.length - 1;
    return Math.min(trace.length - 1, Math.max(0, Math.round(shown * 100) - 1));
  }

  private traced_torch(row: number): TorchPose | null {
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

  private throwSpatter(): void {
    const { trace } = this.session;
    if (trace.length < this.traced || state.finished.value) this.traced = trace.length;
    for (; this.traced < trace.length; this.traced++)
      this.stage.spatter.add(
        trace.value(this.traced, 'spatter_g'),
        trace.value(this.traced, 'dripped_g'),
        trace.value(this.traced, 'footU_mm'),
        trace.value(this.traced, 'footY_mm'),
      );
  }
}
