import type { FilletOptions, WeaveOptions } from '../../engine/index.ts';
import { metalEnds } from '../core/bench/metal-ends.ts';
import type { SurfaceFrame } from '../core/bench/surface-frame.ts';
import { type Camera, fitCamera } from '../core/hand/camera.ts';
import { type ArcLight, ArcLightFilter } from './arcLight.ts';
import { BeatView } from './beatView.ts';
import { Canvas, sharpest } from './canvas.ts';
import { JointView } from './jointView.ts';
import { prefersDark } from './room.ts';
import { SpatterView } from './spatter.ts';
import { type TorchPose, TorchView } from './torchView.ts';

/** What the stage shows in one frame. */
export interface Scene {
  torch: TorchPose | null;
  arcOn: boolean;
  nozzle_mm: number;
  tip_mm: number;
  plain: boolean;
  /** The user asks for little motion. */
  still: boolean;
  /** Nothing on show moves by itself (a replay at rest), so it may be drawn in full. */
  paused: boolean;
  /** The weave whose beat is to be seen, and seconds since the strike; null shows none. */
  beat: { weave: WeaveOptions; since_s: number } | null;
}

/** Plates run this close to the pane's edge before the break line. */
const BREAK_INSET_PX = 62;
const FULL_HALF_WIDTH_MM = 53;
/** Frames slower than this, on average, make the picture coarser; a long run of fast ones sharpens it again. */
const SLOW_FRAME_S = 1 / 46;
const FAST_FRAME_S = 1 / 55;
/** Part of a frame's time the drawing may take, and the frame that is timed: the first ones compile. */
const DRAWING_MAY_TAKE_S = 0.008;
const TIMED_FRAME = 2;
/** Weight of one frame in the average. */
const AVERAGE = 0.25;
const COARSEST = 0.35;
const FINE_ENOUGH = 0.7;
/** Bounds of one change: a slow frame may have other reasons than pixels. */
const LEAST_CHANGE = 0.85;
const MOST_CHANGE = 0.5;
/** Frames between two changes, and fast frames before the picture is sharpened. */
const SETTLE_FRAMES = 6;
const SHARPEN_FRAMES = 400;

/**
 * Layers, size and resolution of the canvas. Metal, arc and spatter are shaded in the canvas; torch and beat are lines over it. It
 * renders only when told to, so an idle page costs nothing, and shades more coarsely before the picture stutters: the Worker needs the
 * processor more than the eye needs pixels.
 */
export class Stage {
  camera: Camera = fitCamera({ width_px: 1, height_px: 1, low_mm: 0, high_mm: 1, fixedScale: null });
  readonly spatter = new SpatterView();
  private readonly joint = new JointView();
  private readonly torch = new TorchView();
  private readonly beat = new BeatView();
  private readonly filter = new ArcLightFilter();
  private arcAt = { u_mm: 0, y_mm: 0 };
  /** The arc's light and the room's darkness as last drawn; the close view shows the same. */
  light: Readonly<ArcLight> = { light: 0, dark: 0 };
  /** Share of full resolution the moving picture is drawn at; a still one is always drawn in full. */
  private sharpness = 1;
  private drawnAt = 1;
  private drawn = 0;
  private frame_s = 1 / 60;
  private sinceChange = 0;
  /** The picture has been lost and is to be drawn anew. */
  private owed = false;

  private constructor(
    private readonly canvas: Canvas,
    host: HTMLElement,
  ) {
    canvas.scene.addChild(this.joint.layer.mesh, this.spatter.mesh);
    host.prepend(canvas.element, this.torch.element, this.beat.element);
    canvas.element.addEventListener('webglcontextrestored', () => {
      this.owed = true;
    });
  }

  /** Throws if the browser has no WebGL 2. */
  static async create(host: HTMLElement): Promise<Stage> {
    return new Stage(await Canvas.open(host), host);
  }

  get wantsDark(): boolean {
    return this.filter.wantsDark;
  }

  /** Light still fading or spatter still flying: the next frame differs from this one. */
  get restless(): boolean {
    return this.filter.fading || this.spatter.flying || this.owed;
  }

  layOut(width_px: number, height_px: number, joint: FilletOptions, fixedScale: number | null): Camera {
    this.camera = fitCamera({ width_px, height_px, ...metalEnds(joint), fixedScale });
    const half = Math.min(FULL_HALF_WIDTH_MM, (width_px / 2 - BREAK_INSET_PX) / this.camera.scale);
    this.joint.setCamera(this.camera, joint, half);
    this.resize();
    return this.camera;
  }

  setSurface(frame: SurfaceFrame): void {
    this.joint.setSurface(frame);
  }

  render(scene: Scene, dt_s: number): void {
    this.light = this.filter.step(scene.arcOn, dt_s, scene.still);
    const { light, dark } = this.light;
    if (scene.torch && scene.arcOn) this.arcAt = { u_mm: scene.torch.u_mm, y_mm: scene.torch.y_mm };
    this.torch.draw(this.camera, scene.torch, scene.nozzle_mm, scene.tip_mm);
    this.beat.draw(this.camera, scene.beat?.weave ?? null, scene.beat?.since_s ?? -1, scene.still);
    // Flying sparks are motion for its own sake: none where motion is to be reduced.
    if (scene.still) this.spatter.clear();
    else this.spatter.step(dt_s);
    this.spatter.draw(this.camera);
    if (this.moving(scene)) this.judgeSpeed(dt_s);
    this.setDrawn(this.moving(scene) ? this.sharpness : 1);
    // Drawn this coarsely the lens's mirror and grain are lost; what is left is the plain view's, at a third of the cost.
    const plain = scene.plain || (this.moving(scene) && this.sharpness < FINE_ENOUGH);
    this.joint.setLight(this.arcAt.u_mm, this.arcAt.y_mm, light, dark, plain);
    this.draw();
    if (this.drawn === TIMED_FRAME) this.timeOneFrame();
    this.drawn += 1;
  }

  destroy(): void {
    this.torch.element.remove();
    this.beat.element.remove();
    this.joint.destroy();
    this.canvas.destroy();
  }

  private draw(): void {
    this.owed = !this.canvas.drawable;
    if (this.owed) return;
    this.joint.draw(this.canvas.renderer, Math.max(this.light.dark, Number(prefersDark.peek())));
    this.canvas.render();
  }

  /**
   * Draws one frame to the end and takes its time, so that the first arc on a machine without a graphics card does not begin with a
   * second of stutter. Asking for a pixel waits for the picture; it is asked once, before anything is welded.
   */
  private timeOneFrame(): void {
    const gl = this.canvas.gl;
    if (!gl || !this.canvas.drawable) return;
    const pixel = new Uint8Array(4);
    const wait = (): void => gl.readPixels(0, 0, 1, 1, gl.RGBA, gl.UNSIGNED_BYTE, pixel);
    wait();
    const start = performance.now();
    this.draw();
    wait();
    const took_s = (performance.now() - start) / 1000;
    this.setSharpness(Math.sqrt(DRAWING_MAY_TAKE_S / Math.max(took_s, DRAWING_MAY_TAKE_S)));
  }

  private moving(scene: Scene): boolean {
    return !scene.paused && (scene.arcOn || this.restless);
  }

  private setDrawn(share: number): void {
    if (share === this.drawnAt) return;
    this.drawnAt = share;
    this.sizeMetal();
  }

  private resize(): void {
    const { width_px, height_px } = this.camera;
    this.canvas.resize(width_px, height_px);
    this.sizeMetal();
  }

  private sizeMetal(): void {
    this.joint.resize(sharpest() * this.drawnAt);
  }

  private judgeSpeed(dt_s: number): void {
    this.frame_s += AVERAGE * (dt_s - this.frame_s);
    this.sinceChange += 1;
    if (this.frame_s > SLOW_FRAME_S && this.sinceChange > SETTLE_FRAMES && this.sharpness > COARSEST)
      // Shading costs as the area, so the edge shrinks by the root of how much too slow it is.
      this.setSharpness(
        this.sharpness * Math.min(LEAST_CHANGE, Math.max(MOST_CHANGE, Math.sqrt(SLOW_FRAME_S / this.frame_s))),
      );
    else if (this.frame_s < FAST_FRAME_S && this.sinceChange > SHARPEN_FRAMES && this.sharpness < 1)
      this.setSharpness(this.sharpness / LEAST_CHANGE);
  }

  private setSharpness(sharpness: number): void {
    this.sharpness = Math.min(1, Math.max(COARSEST, sharpness));
    this.sinceChange = 0;
  }
}
