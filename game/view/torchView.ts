import type { Camera } from '../core/hand/camera.ts';
import { toPane } from '../core/hand/camera.ts';
import { place, svgElement } from './svg.ts';

export interface TorchPose {
  u_mm: number;
  y_mm: number;
  tipToWork_mm: number;
  workAngle_deg: number;
  travelAngle_deg: number;
}

const EVEN_WORK_ANGLE = 45;
const TIP_RADIUS_MM = 1.6;
/** Room round the drawing for the width of its lines. */
const RIM_PX = 2;

/**
 * The torch as thin lines, so that it never hides the puddle: wire from the aim point to the contact tip, and the nozzle's mouth as a
 * ring. A wire pointing up the joint (push) has its torch below the aim point; a work angle under 45 leans it over the right plate.
 * The drawing is small and carried about whole; it is only drawn anew when the torch leans or reaches differently.
 */
export class TorchView {
  readonly element = svgElement('svg', 'torch');
  private readonly wire = svgElement('line', 'wire');
  private readonly mouth = svgElement('circle', 'nozzle');
  private readonly tip = svgElement('circle', 'nozzle');
  private readonly aim = svgElement('circle', 'aim');
  private drawn = '';
  private middle = 0;

  constructor() {
    this.element.append(this.mouth, this.tip, this.wire, this.aim);
  }

  draw(camera: Camera, torch: TorchPose | null, nozzle_mm: number, tip_mm: number): void {
    this.element.style.visibility = torch ? 'visible' : 'hidden';
    if (!torch) return;
    this.shape(camera.scale, torch, nozzle_mm, tip_mm);
    const { x_px, y_px } = toPane(camera, torch.u_mm, torch.y_mm);
    this.element.style.transform = `translate(${(x_px - this.middle).toFixed(2)}px, ${(y_px - this.middle).toFixed(2)}px)`;
  }

  private shape(scale: number, torch: TorchPose, nozzle_mm: number, tip_mm: number): void {
    const { tipToWork_mm, workAngle_deg, travelAngle_deg } = torch;
    const numbers = [scale, tipToWork_mm, workAngle_deg, travelAngle_deg, nozzle_mm, tip_mm];
    const key = numbers.map((x) => x.toFixed(1)).join(' ');
    if (key === this.drawn) return;
    this.drawn = key;
    const lean = Math.sin((travelAngle_deg * Math.PI) / 180);
    const across = Math.sin(((EVEN_WORK_ANGLE - workAngle_deg) * Math.PI) / 180);
    const radius = (nozzle_mm / 2) * scale;
    const reach = Math.max(tipToWork_mm, tipToWork_mm - tip_mm) * scale * Math.hypot(lean, across);
    this.middle = Math.ceil(radius + reach) + RIM_PX;
    const size = String(2 * this.middle);
    this.element.setAttribute('width', size);
    this.element.setAttribute('height', size);
    const along = (distance_mm: number): { x: number; y: number } => ({
      x: this.middle + across * distance_mm * scale,
      y: this.middle + lean * distance_mm * scale,
    });
    const tip = along(tipToWork_mm);
    const mouth = along(Math.max(tipToWork_mm - tip_mm, 0));
    place(this.wire, { x1: this.middle, y1: this.middle, x2: tip.x, y2: tip.y });
    place(this.mouth, { cx: mouth.x, cy: mouth.y, r: radius });
    place(this.tip, { cx: tip.x, cy: tip.y, r: TIP_RADIUS_MM * scale });
    place(this.aim, { cx: this.middle, cy: this.middle, r: 2 });
  }
}
