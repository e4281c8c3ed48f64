import { Graphics } from 'pixi.js';
import type { Camera } from './camera.ts';
import { toPane } from './camera.ts';

export interface TorchPose {
  u_mm: number;
  y_mm: number;
  tipToWork_mm: number;
  workAngle_deg: number;
  travelAngle_deg: number;
}

const INK = 0x1f2326;
const NIGHT_INK = 0xd9d4c8;
const WIRE = 0xb06a3a;
const EVEN_WORK_ANGLE = 45;

/**
 * The torch as thin lines, so that it never hides the puddle: wire from the aim point to the contact tip, and the nozzle's mouth as the
 * ellipse a ring makes when the wire leans. A wire pointing up the joint (push) has its torch below the aim point.
 */
export class TorchView {
  readonly graphics = new Graphics();

  draw(camera: Camera, torch: TorchPose | null, nozzle_mm: number, tip_mm: number, dark: number): void {
    const g = this.graphics;
    g.clear();
    if (!torch) return;
    const color = dark > 0.5 ? NIGHT_INK : INK;
    const lean = Math.sin((torch.travelAngle_deg * Math.PI) / 180);
    // The work angle is measured from the right plate's face: under 45 the torch leans over the right plate.
    const across = Math.sin(((EVEN_WORK_ANGLE - torch.workAngle_deg) * Math.PI) / 180);
    const aim = toPane(camera, torch.u_mm, torch.y_mm);
    const along = (distance: number) => toPane(camera, torch.u_mm + across * distance, torch.y_mm - lean * distance);
    const tip = along(torch.tipToWork_mm);
    const mouth = along(Math.max(torch.tipToWork_mm - tip_mm, 0));
    const radius = (nozzle_mm / 2) * camera.scale;
    g.moveTo(aim.x_px, aim.y_px).lineTo(tip.x_px, tip.y_px).stroke({ width: 2, color: WIRE, alpha: 0.9 });
    g.circle(mouth.x_px, mouth.y_px, radius).stroke({ width: 1, color, alpha: 0.34 });
    g.circle(tip.x_px, tip.y_px, 1.6 * camera.scale).stroke({ width: 1, color, alpha: 0.34 });
    g.circle(aim.x_px, aim.y_px, 2).fill({ color, alpha: 0.8 });
  }
}
