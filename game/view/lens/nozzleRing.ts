import { svgElement } from '../svg.ts';
import { type Look, type Place, see } from './pinhole.ts';
import { type Wire, wireOf } from './wire.ts';

const POINTS = 36;
const RIM_PX = 2;

/**
 * The nozzle's mouth as a thin ring in the close view: it says how the torch leans and reaches, and hides nothing. The drawing is small
 * and carried about whole, so that moving it paints nothing; it is drawn anew only when the torch leans or reaches differently.
 */
export class NozzleRing {
  readonly element = svgElement('svg', 'nozzleseen');
  private readonly ring = svgElement('polygon', 'ring');
  private drawn = '';
  /** From the foot's place in the picture to the drawing's top left. */
  private left_px = 0;
  private top_px = 0;

  constructor() {
    this.element.append(this.ring);
  }

  draw(look: Look, foot: Place | null, torch: Wire | null, nozzle_mm: number, tip_mm: number): void {
    this.element.style.visibility = foot && torch ? 'inherit' : 'hidden';
    if (!foot || !torch) return;
    const at = see(look, foot);
    const { tipToWork_mm, workAngle_deg, travelAngle_deg } = torch;
    const key = [look.scale, tipToWork_mm, workAngle_deg, travelAngle_deg, nozzle_mm, tip_mm]
      .map((x) => x.toFixed(1))
      .join(' ');
    if (key !== this.drawn) {
      this.drawn = key;
      this.shape(look, foot, torch, nozzle_mm, tip_mm);
    }
    const x = at.x_px + this.left_px;
    const y = at.y_px + this.top_px;
    this.element.style.transform = `translate(${x.toFixed(1)}px, ${y.toFixed(1)}px)`;
  }

  private shape(look: Look, foot: Place, torch: Wire, nozzle_mm: number, tip_mm: number): void {
    const points = mouth(foot, torch, nozzle_mm / 2, Math.max(torch.tipToWork_mm - tip_mm, 0)).map((p) => see(look, p));
    const low = { x: Math.min(...points.map((p) => p.x_px)), y: Math.min(...points.map((p) => p.y_px)) };
    const high = { x: Math.max(...points.map((p) => p.x_px)), y: Math.max(...points.map((p) => p.y_px)) };
    const at = see(look, foot);
    this.left_px = low.x - RIM_PX - at.x_px;
    this.top_px = low.y - RIM_PX - at.y_px;
    this.element.setAttribute('width', String(Math.ceil(high.x - low.x) + 2 * RIM_PX));
    this.element.setAttribute('height', String(Math.ceil(high.y - low.y) + 2 * RIM_PX));
    const inside = points.map((p) => `${(p.x_px - low.x + RIM_PX).toFixed(1)},${(p.y_px - low.y + RIM_PX).toFixed(1)}`);
    this.ring.setAttribute('points', inside.join(' '));
  }
}

/** A circle square to the wire, `back_mm` out along it from the foot. */
function mouth(foot: Place, torch: Wire, radius_mm: number, back_mm: number): Place[] {
  const { axis } = wireOf(foot, torch);
  const flat = Math.hypot(axis.u_mm, axis.w_mm);
  const across = { u: axis.w_mm / flat, w: -axis.u_mm / flat };
  const along = { u: axis.y_mm * across.w, y: flat, w: -axis.y_mm * across.u };
  return Array.from({ length: POINTS }, (_, n) => {
    const c = Math.cos((2 * Math.PI * n) / POINTS) * radius_mm;
    const s = Math.sin((2 * Math.PI * n) / POINTS) * radius_mm;
    return {
      u_mm: foot.u_mm + axis.u_mm * back_mm + across.u * c + along.u * s,
      y_mm: foot.y_mm + axis.y_mm * back_mm + along.y * s,
      w_mm: foot.w_mm + axis.w_mm * back_mm + across.w * c + along.w * s,
    };
  });
}
