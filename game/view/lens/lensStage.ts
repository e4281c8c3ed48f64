import type { FilletOptions, WeaveOptions } from '../../../engine/index.ts';
import { metalEnds } from '../../core/bench/metal-ends.ts';
import type { SurfaceFrame } from '../../core/bench/surface-frame.ts';
import { Canvas, sharpest } from '../canvas.ts';
import { prefersDark } from '../room.ts';
import type { TorchPose } from '../torchView.ts';
import { Follow } from './follow.ts';
import { footOf } from './foot.ts';
import { LensLayer } from './layer.ts';
import { NozzleRing } from './nozzleRing.ts';
import { Pace } from './pace.ts';
import { LensPicture, type Manner, type Shown } from './picture.ts';
import { type Look, lookAt } from './pinhole.ts';
import { WeaveSeen } from './weaveSeen.ts';

/** What the close view shows in one frame. */
export interface LensScene {
  /** Something else stands in its place: nothing is drawn. */
  hidden: boolean;
  /** Welding, or a replay at a moment: the arc is followed. Otherwise the near end of the joint is looked at, lights up. */
  following: boolean;
  torch: TorchPose | null;
  arcOn: boolean;
  /** Light of the arc and darkness of the room, as the eye is given them. */
  light: number;
  dark: number;
  nozzle_mm: number;
  tip_mm: number;
  wire_mm: number;
  plain: boolean;
  still: boolean;
  /** Nothing moves by itself: drawn in full, once. */
  paused: boolean;
  /** The weave asked for, drawn while nothing has been welded; null shows none. */
  weave: WeaveOptions | null;
}

/** CSS pixels per millimetre: large enough to see a toe fill, small enough to see where the work goes. */
const SCALE_DESK = 20;
const SCALE_PHONE = 14;
const PHONE_PX = 480;
/** At rest the near end of the joint is shown with this much of both plates, mm. */
const REST_WIDTH_MM = 58;
const REST_BELOW_DEG = 24;
/** Share of the picture's height at which the near end lies, from the top. */
const REST_END_DOWN = 0.6;
/** The same where only the picture's lower part is seen. */
const UNCOVERED_END_DOWN = 0.72;
const REST_MOST_SCALE = 13;
/** The view that is timed before the first arc, drawn at this share. */
const TIMED_SHARE = 0.5;
const SLOW_STEP_MS = 100;
/** In the dark from this on the lens is before the eye. */
const LENS_DOWN = 0.5;

/** The close view: canvas, camera and pace. It draws when something it shows has changed, and never faster than the machine can. */
export class LensStage {
  private readonly picture = new LensPicture();
  private readonly layer = new LensLayer();
  private readonly weave = new WeaveSeen();
  private readonly nozzle = new NozzleRing();
  private readonly follow = new Follow();
  private readonly pace = new Pace();
  private width_px = 1;
  private height_px = 1;
  private covered_px = 0;
  private joint: FilletOptions | null = null;
  private low_mm = 0;
  private skin_s = 0;
  private clock_s = 0;
  private dirty = true;
  private timed = false;
  private stepped_ms = 0;
  private drawnShare = 0;
  private weaveKey = '';
  private last: { dark: number; following: boolean; plain: boolean } = { dark: 0, following: false, plain: false };

  private constructor(
    private readonly canvas: Canvas,
    host: HTMLElement,
  ) {
    canvas.scene.addChild(this.layer.mesh);
    host.prepend(canvas.element, this.weave.element, this.weave.dot, this.nozzle.element);
    canvas.element.addEventListener('webglcontextrestored', () => this.touch());
  }

  /** Throws if the browser has no WebGL 2. */
  static async create(host: HTMLElement): Promise<LensStage> {
    return new LensStage(await Canvas.open(host), host);
  }

  /** CSS pixels per millimetre while welding. */
  get scale(): number {
    return this.width_px < PHONE_PX ? SCALE_PHONE : SCALE_DESK;
  }

  /** The machine draws too slowly for the lens; the plain view stands in. */
  get tooSlow(): boolean {
    return this.pace.plain;
  }

  /** @param covered_px top of the picture that something else lies over at rest */
  layOut(width_px: number, height_px: number, covered_px: number): void {
    if (covered_px !== this.covered_px) this.touch();
    this.covered_px = covered_px;
    if (width_px === this.width_px && height_px === this.height_px) return;
    this.width_px = Math.max(1, width_px);
    this.height_px = Math.max(1, height_px);
    this.canvas.resize(this.width_px, this.height_px);
    this.drawnShare = 0;
    this.weaveKey = '';
    this.dirty = true;
  }

  setJoint(joint: FilletOptions): void {
    const { low_mm, high_mm } = metalEnds(joint);
    this.joint = joint;
    this.low_mm = low_mm;
    this.picture.setJoint(joint, low_mm, high_mm);
    this.weaveKey = '';
    this.dirty = true;
  }

  setSurface(frame: SurfaceFrame): void {
    this.picture.setSkin(frame);
    this.skin_s = frame.t_s;
    this.dirty = true;
  }

  touch(): void {
    this.dirty = true;
  }

  /** Call once a frame; draws only what has changed. */
  render(scene: LensScene, dt_s: number): void {
    if (!this.joint || this.width_px < 2 || this.height_px < 2 || !this.canvas.drawable) return;
    if (scene.hidden) {
      this.follow.release();
      this.dirty = true;
      return;
    }
    this.stepWeave(scene.still);
    const { last } = this;
    const faded = Math.abs(scene.dark - last.dark) > 0.004;
    const moving = scene.following && !scene.paused;
    if (!moving && !faded && !this.dirty && scene.following === last.following && scene.plain === last.plain) return;
    if (moving && !scene.still) this.clock_s += dt_s;
    if (moving) this.pace.judge(dt_s);
    const foot =
      scene.torch &&
      footOf(scene.torch, { ...scene.torch, wire_mm: scene.wire_mm }, (u, y) => this.picture.heightAt(u, y));
    if (scene.following && foot) this.follow.step(foot.y_mm, dt_s, scene.still);
    if (!scene.following) this.follow.release();
    const look = this.lookOf(scene);
    this.drawOver(scene, look, foot);
    if (moving && !this.pace.due()) return;
    this.last = { dark: scene.dark, following: scene.following, plain: scene.plain };
    this.dirty = false;
    const shown: Shown = {
      foot,
      torch: scene.following && scene.torch ? { ...scene.torch, wire_mm: scene.wire_mm } : null,
      light: scene.following ? scene.light : 0,
      dark: scene.dark,
      skin_s: this.skin_s,
      clock_s: this.clock_s,
    };
    if (!this.timed) this.timeOne(look, shown);
    this.paint(look, shown, this.mannerOf(scene), moving ? this.pace.share : 1);
    this.canvas.render();
  }

  destroy(): void {
    this.weave.element.remove();
    this.weave.dot.remove();
    this.nozzle.element.remove();
    this.picture.destroy();
    this.canvas.destroy();
  }

  /** Without a graphics card every move makes the processor put the page together anew; ten a second still show the beat. */
  private stepWeave(still: boolean): void {
    const now = performance.now();
    if (this.pace.plain && now - this.stepped_ms < SLOW_STEP_MS) return;
    this.stepped_ms = now;
    this.weave.step(now, still);
  }

  private mannerOf(scene: LensScene): Manner {
    if (scene.plain) return 'plain';
    if (scene.dark < LENS_DOWN) return 'bench';
    return this.pace.plain && !scene.paused ? 'plain' : 'lens';
  }

  private lookOf(scene: LensScene): Look {
    const { width_px, height_px } = this;
    if (scene.following) return lookAt(this.follow.y_mm, width_px, height_px, this.scale);
    const scale = Math.min(width_px / REST_WIDTH_MM, REST_MOST_SCALE);
    const end =
      this.covered_px > 0
        ? this.covered_px + UNCOVERED_END_DOWN * (height_px - this.covered_px)
        : REST_END_DOWN * height_px;
    const up = (end - 0.45 * height_px) / scale / Math.cos((REST_BELOW_DEG * Math.PI) / 180);
    return lookAt(this.low_mm + up, width_px, height_px, scale, REST_BELOW_DEG);
  }

  private drawOver(scene: LensScene, look: Look, foot: { u_mm: number; y_mm: number } | null): void {
    const torch = scene.following && scene.torch ? { ...scene.torch, wire_mm: scene.wire_mm } : null;
    const place = foot && { ...foot, w_mm: this.picture.heightAt(foot.u_mm, foot.y_mm) };
    this.nozzle.draw(look, place, torch, scene.nozzle_mm, scene.tip_mm);
    const key = `${scene.weave ? JSON.stringify(scene.weave) : ''} ${look.scale} ${look.target.y_mm}`;
    if (key === this.weaveKey || (!scene.weave && this.weaveKey === '-')) return;
    this.weaveKey = scene.weave ? key : '-';
    this.weave.draw(scene.weave, look);
  }

  private paint(look: Look, shown: Shown, manner: Manner, share: number): void {
    const drawn = sharpest() * share;
    if (drawn !== this.drawnShare) {
      this.drawnShare = drawn;
      this.layer.resize(this.width_px, this.height_px, drawn);
    }
    this.picture.aim(look, shown, manner, drawn);
    this.layer.draw(this.canvas.renderer, this.picture.scene, Math.max(shown.dark, Number(prefersDark.peek())));
  }

  /** Draws the lens once to its last pixel before the first arc, so that the strike finds it compiled and its cost known. */
  private timeOne(look: Look, shown: Shown): void {
    this.timed = true;
    const gl = this.canvas.gl;
    if (!gl) return;
    const pixel = new Uint8Array(4);
    const lit: Shown = { ...shown, light: 1, dark: 1 };
    const draw = (manner: Manner): number => {
      const start = performance.now();
      this.paint(look, lit, manner, TIMED_SHARE);
      this.canvas.render();
      gl.readPixels(0, 0, 1, 1, gl.RGBA, gl.UNSIGNED_BYTE, pixel);
      return (performance.now() - start) / 1000;
    };
    draw('plain');
    draw('lens');
    this.pace.timed(draw('lens'), TIMED_SHARE);
  }
}
