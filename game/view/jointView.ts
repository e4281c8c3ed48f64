import type { Renderer } from 'pixi.js';
import type { FilletOptions } from '../../engine/index.ts';
import { metalEnds } from '../core/bench/metal-ends.ts';
import type { SurfaceFrame } from '../core/bench/surface-frame.ts';
import type { Camera } from '../core/hand/camera.ts';
import { LensLayer } from './lens/layer.ts';
import { LensPicture, type Manner } from './lens/picture.ts';
import type { Look } from './lens/pinhole.ts';

/** Seen square and from so far off that nothing is foreshortened: a millimetre is as many pixels everywhere, and the hand can aim. */
const FAR_MM = 1e6;
/** In the dark from this on the lens is before the eye. */
const LENS_DOWN = 0.5;

/** The whole joint, square on: what the hand steers on. The same picture as the close view's, from the same shaders. */
export class JointView {
  readonly layer = new LensLayer();
  private readonly picture = new LensPicture();
  private look: Look = { width_px: 1, height_px: 1, scale: 1, below_deg: 0, target: { u_mm: 0, y_mm: 0, w_mm: 0 } };
  private share = 1;
  private skin_s = 0;
  private manner: Manner = 'bench';

  setSurface(frame: SurfaceFrame): void {
    this.skin_s = frame.t_s;
    this.picture.setSkin(frame);
  }

  heightAt(u_mm: number, y_mm: number): number {
    return this.picture.heightAt(u_mm, y_mm);
  }

  setCamera(camera: Camera, joint: FilletOptions, halfWidth_mm: number): void {
    const { low_mm, high_mm } = metalEnds(joint);
    this.picture.setJoint(joint, low_mm, high_mm, halfWidth_mm);
    const { width_px, height_px, scale, originX_px, originY_px } = camera;
    const target = {
      u_mm: (width_px / 2 - originX_px) / scale,
      y_mm: (originY_px - height_px / 2) / scale,
      w_mm: 0,
    };
    this.look = { width_px, height_px, scale, below_deg: 0, eye_mm: FAR_MM, target };
  }

  /** @param share drawn pixels per CSS pixel */
  resize(share: number): void {
    this.share = share;
    this.layer.resize(this.look.width_px, this.look.height_px, share);
  }

  setLight(u_mm: number, y_mm: number, light: number, dark: number, plain: boolean): void {
    this.manner = plain ? 'plain' : dark < LENS_DOWN ? 'bench' : 'lens';
    const shown = { foot: { u_mm, y_mm }, torch: null, light, dark, skin_s: this.skin_s, clock_s: 0 };
    this.picture.aim(this.look, shown, this.manner, this.share);
  }

  draw(renderer: Renderer, ground: number): void {
    this.layer.draw(renderer, this.picture.scene, ground);
  }

  destroy(): void {
    this.picture.destroy();
  }
}
