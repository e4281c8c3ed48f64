import { Application } from 'pixi.js';
import { LensLayer } from '../../view/lens/layer.ts';
import { LensPicture, type Manner } from '../../view/lens/picture.ts';
import { lookAt } from '../../view/lens/pinhole.ts';
import type { Still } from './still.ts';

/** How a still is to be drawn. */
export interface Wish {
  width_px: number;
  height_px: number;
  scale: number;
  manner: Manner;
  below_deg?: number;
  y_mm?: number;
  /** Drawn pixels per CSS pixel. */
  share?: number;
  mirrored?: boolean;
  /** Time of the picture, s: what drifts on the liquid. */
  clock_s?: number;
}

async function start(): Promise<void> {
  const app = new Application();
  await app.init({
    preference: 'webgl',
    autoStart: false,
    width: 700,
    height: 700,
    antialias: false,
    backgroundColor: 0x0f1011,
    preserveDrawingBuffer: true,
  });
  document.body.append(app.canvas);
  const picture = new LensPicture();
  const layer = new LensLayer();
  app.stage.addChild(layer.mesh);

  const draw = (still: Still, wish: Wish): void => {
    const bytes = Uint8Array.from(atob(still.skin), (c) => c.charCodeAt(0));
    let skin = new Float32Array(bytes.buffer);
    if (wish.mirrored) skin = mirror(skin, still.nu, still.ny);
    const sign = wish.mirrored ? -1 : 1;
    const { joint, nu, ny, u0_mm, du_mm, y0_mm, dy_mm, torch } = still;
    app.renderer.resize(wish.width_px, wish.height_px, 1);
    picture.setJoint(joint, 0, joint.length_mm);
    picture.setSkin({ t_s: still.t_s, nu, ny, u0_mm, du_mm, y0_mm, dy_mm, skin });
    const y = wish.y_mm ?? (torch ? torch.footY_mm : joint.length_mm / 2);
    const look = lookAt(y, wish.width_px, wish.height_px, wish.scale, wish.below_deg);
    const lit = wish.manner !== 'bench' && torch !== null;
    const shown = {
      foot: torch && { u_mm: sign * torch.footU_mm, y_mm: torch.footY_mm },
      torch:
        lit && torch
          ? { ...torch, workAngle_deg: 45 + sign * (torch.workAngle_deg - 45), wire_mm: still.wire_mm }
          : null,
      light: lit ? 1 : 0,
      dark: wish.manner === 'bench' ? 0 : 1,
      skin_s: still.t_s,
      clock_s: wish.clock_s ?? 3.7,
    };
    const share = wish.share ?? 1;
    picture.aim(look, shown, wish.manner, share);
    layer.resize(wish.width_px, wish.height_px, share);
    layer.draw(app.renderer, picture.scene, shown.dark);
    app.render();
  };
  const light = (still: Still, wish: Wish): string => {
    draw(still, wish);
    return lightOf(app);
  };
  Object.assign(window, {
    sheet: { draw, light, time: (still: Still, wish: Wish) => time(app, () => draw(still, wish)) },
  });
}

/** The picture's pixels as they are on screen, red, green, blue from the top left, base64. */
function lightOf(app: Application): string {
  const { width, height } = app.canvas;
  const gl = app.canvas.getContext('webgl2');
  const rgba = new Uint8Array(width * height * 4);
  gl?.readPixels(0, 0, width, height, gl.RGBA, gl.UNSIGNED_BYTE, rgba);
  let text = '';
  for (let row = height - 1; row >= 0; row--)
    for (let x = 0; x < width; x++) {
      const i = (row * width + x) * 4;
      text += String.fromCharCode(rgba[i], rgba[i + 1], rgba[i + 2]);
    }
  return btoa(text);
}

/** Milliseconds a drawing takes to its last pixel. */
function time(app: Application, draw: () => void): number {
  const gl = app.canvas.getContext('webgl2');
  const pixel = new Uint8Array(4);
  const wait = (): void => gl?.readPixels(0, 0, 1, 1, gl.RGBA, gl.UNSIGNED_BYTE, pixel);
  draw();
  wait();
  const start = performance.now();
  for (let n = 0; n < 4; n++) {
    draw();
    wait();
  }
  return (performance.now() - start) / 4;
}

function mirror(skin: Float32Array, nu: number, ny: number): Float32Array<ArrayBuffer> {
  const out = new Float32Array(skin.length);
  for (let texel = 0; texel < 2; texel++)
    for (let k = 0; k < nu; k++) {
      const from = (texel * nu + (nu - 1 - k)) * ny * 4;
      out.set(skin.subarray(from, from + ny * 4), (texel * nu + k) * ny * 4);
    }
  return out;
}

void start();
