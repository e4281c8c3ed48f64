import type { DeviceInfo } from '../../../engine/index.ts';
import type { Clock } from '../ports.ts';
import type { State } from '../session/state.ts';
import { HandRig } from './hand-rig.ts';
import type { Hold } from './pen.ts';
import type { TorchSample } from './sample.ts';
import type { TorchTool } from './torch-tool.ts';

/** How far above a fingertip the wire points, CSS pixels, so that the finger does not cover the puddle. */
const FINGER_REACH_PX = 64;
/** Readings are repeated at least this often while the rig still swings, ms. */
const REST_MS = 8;
/** Where the torch is before any device has said so, mm up the joint. */
const RESTING_MM = 3;

export type PointerKind = Extract<DeviceInfo['kind'], 'mouse' | 'touch' | 'pen'>;

export interface RouterHost {
  readonly tool: TorchTool;
  /** The hand is done. */
  finish(): void;
  cutAt(y_mm: number): void;
  /** Something that is drawn has moved. */
  moved(): void;
}

/**
 * Brings mouse, finger, pen, keys and gamepad to the one torch: which device holds the trigger, where the hand is, and what the rig between
 * hand and torch makes of it.
 */
export class InputRouter {
  private rig: HandRig | null = null;
  private rigged_ms = 0;
  private handAt: TorchSample | null = null;

  constructor(
    private readonly host: RouterHost,
    private readonly state: State,
    private readonly clock: Clock,
  ) {}

  /** What the exercise holds for devices that cannot tell. */
  hold(): Hold {
    return this.state.exercise.value.hold;
  }

  /** True once a check has shown that this pen reports how it leans. */
  penTilts(): boolean {
    return this.state.preferences.value.penTilts;
  }

  fingerReach_px(): number {
    return FINGER_REACH_PX;
  }

  /** False while presses mean something else than welding (a finished piece is on the bench). */
  ready(): boolean {
    const { robotWelding, torchState, busy } = this.state;
    return !robotWelding.value && torchState.value !== 'stopped' && busy.value === null;
  }

  /** The pointer has moved over the joint. */
  near(kind: PointerKind, samples: TorchSample[]): void {
    const { tool } = this.host;
    this.host.moved();
    if (tool.state === 'stopped') return;
    // A gamepad's trigger stays down while the pointer only aims.
    const trigger = tool.triggerDown;
    this.handAt = samples.at(-1) ?? null;
    if (tool.state === 'idle') this.state.deviceKind.value = kind;
    tool.move(samples.map((sample) => this.rigged({ ...sample, trigger })));
  }

  press(kind: PointerKind, sample: TorchSample): void {
    this.state.deviceKind.value = kind;
    this.startRig(sample);
    this.host.tool.press(sample);
  }

  release(sample: TorchSample): void {
    this.host.tool.release(this.rigged(sample));
  }

  /** A press while not ready. */
  point(sample: TorchSample): void {
    if (this.state.finished.value) this.host.cutAt(sample.y_mm);
  }

  leave(): void {
    const { tool } = this.host;
    if (tool.state === 'idle') tool.last = null;
    this.host.moved();
  }

  /** The space bar went down or up. */
  key(down: boolean): void {
    const { tool } = this.host;
    if (this.state.preferences.value.latchTrigger) {
      if (!down) return;
      if (tool.state === 'welding') this.letGo();
      else this.pressWith('keyboard');
      return;
    }
    if (down) this.pressWith('keyboard');
    else if (this.state.deviceKind.value === 'keyboard') this.letGo();
  }

  /** A gamepad's button went down or up. */
  pad(down: boolean): void {
    if (down) this.pressWith('gamepad');
    else if (this.state.deviceKind.value === 'gamepad') this.letGo();
  }

  finish(): void {
    this.host.finish();
  }

  /** The arrow keys moved the torch by this much. */
  nudge(du_mm: number, dy_mm: number): void {
    const { tool } = this.host;
    if (tool.state === 'stopped') return;
    const at = this.handAt ?? this.restingPlace();
    const at_ms = this.clock.now_ms();
    const moved = { ...at, u_mm: at.u_mm + du_mm, y_mm: at.y_mm + dy_mm, at_ms, trigger: tool.triggerDown };
    this.handAt = moved;
    tool.move([this.rigged(moved)]);
    this.host.moved();
  }

  /** Once a frame: the gun swings on while the hand rests, so the bench needs readings though the pointer sends none. */
  settle(): void {
    const at_ms = this.clock.now_ms();
    if (!this.rig || !this.handAt || at_ms - this.rigged_ms < REST_MS) return;
    if (this.host.tool.state !== 'welding') return;
    this.host.tool.move([this.rigged({ ...this.handAt, at_ms, trigger: true })]);
  }

  private pressWith(kind: 'keyboard' | 'gamepad'): void {
    const { tool } = this.host;
    if (this.state.robotWelding.value || this.state.busy.value || (tool.state !== 'idle' && tool.state !== 'out'))
      return;
    const at = this.handAt ?? this.restingPlace();
    this.state.deviceKind.value = kind;
    const sample = { ...at, ...this.hold(), at_ms: this.clock.now_ms(), trigger: true };
    this.startRig(sample);
    tool.press(sample);
  }

  private letGo(): void {
    const { tool } = this.host;
    if (tool.state !== 'welding' || !tool.last) return;
    tool.release({ ...tool.last, at_ms: this.clock.now_ms(), trigger: false });
  }

  private restingPlace(): TorchSample {
    return { at_ms: this.clock.now_ms(), u_mm: 0, y_mm: RESTING_MM, ...this.hold(), trigger: false };
  }

  private startRig(sample: TorchSample): void {
    const { handRig } = this.state.preferences.value;
    this.handAt = sample;
    if (this.host.tool.state !== 'idle') return;
    this.rig = handRig ? new HandRig(handRig, sample.u_mm, sample.y_mm) : null;
    this.rigged_ms = sample.at_ms;
  }

  private rigged(sample: TorchSample): TorchSample {
    if (!this.rig) return sample;
    const dt = sample.at_ms - this.rigged_ms;
    this.rigged_ms = sample.at_ms;
    return { ...sample, ...this.rig.follow(sample.u_mm, sample.y_mm, dt) };
  }
}
