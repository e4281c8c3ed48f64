import { svgElement } from '../svg.ts';
import { type Look, type Place, see } from './pinhole.ts';
import { type Wire, wireOf } from './wire.ts';

const POINTS = 36;

/** The nozzle's mouth as a thin ring in the close view: it says how the torch leans and reaches, and hides nothing. */
export class NozzleRing {
  readonly element = svgElement('svg', 'nozzleseen');
  private readonly ring = svgElement('polygon', 'ring');

  constructor() {
    this.element.append(this.ring);
  }

  draw(look: Look, foot: Place | null, torch: Wire | null, nozzle_mm: number, tip_mm: number): void {
    this.element.style.visibility = foot && torch ? 'visible' : 'hidden';
    if (!foot || !torch) return;
    const { axis } = wireOf(foot, torch);
    const back = Math.max(torch.tipToWork_mm - tip_mm, 0);
    // Two directions square to the wire.
    const flat = Math.hypot(axis.u_mm, axis.w_mm);
    const e1 = { u: axis.w_mm / flat, y: 0, w: -axis.u_mm / flat };
    const e2 = {
      u: axis.y_mm * e1.w,
      y: axis.w_mm * e1.u - axis.u_mm * e1.w,
      w: -axis.y_mm * e1.u,
    };
    const points: string[] = [];
    for (let n = 0; n < POINTS; n++) {
      const c = (Math.cos((2 * Math.PI * n) / POINTS) * nozzle_mm) / 2;
      const s = (Math.sin((2 * Math.PI * n) / POINTS) * nozzle_mm) / 2;
      const { x_px, y_px } = see(look, {
        u_mm: foot.u_mm + axis.u_mm * back + e1.u * c + e2.u * s,
        y_mm: foot.y_mm + axis.y_mm * back + e1.y * c + e2.y * s,
        w_mm: foot.w_mm + axis.w_mm * back + e1.w * c + e2.w * s,
      });
      points.push(`${x_px.toFixed(1)},${y_px.toFixed(1)}`);
    }
    this.ring.setAttribute('points', points.join(' '));
  }
}
