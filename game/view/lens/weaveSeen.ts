import { noFaults, POSE_RATE_HZ, type Pose, type WeaveOptions, weaveHand } from '../../../engine/index.ts';
import { place, svgElement } from '../svg.ts';
import { type Look, see } from './pinhole.ts';

/** Length of weave that is drawn and gone through before it starts over, mm. */
const SHOWN_MM = 14;
const REST_S = 0.8;
/** Poses between two points of the drawn line. */
const THIN = 3;
/** The hand stands still at a toe if it moves less than this between two poses, mm. */
const STILL_MM = 0.02;

/**
 * The weave an exercise asks for, drawn on the bare joint before the strike, with a dot that goes through it at the true beat. With
 * motion reduced the line stands alone.
 */
export class WeaveSeen {
  readonly element = svgElement('svg', 'weaveseen');
  private readonly line = svgElement('polyline', 'path');
  private readonly pauses = svgElement('g', 'pauses');
  /** Lies over the drawing on a layer of its own: moving it paints nothing. */
  readonly dot = document.createElement('i');
  private poses: Pose[] = [];
  private of: WeaveOptions | null = null;
  private look: Look | null = null;
  private began_ms = 0;
  private shown = false;

  constructor() {
    this.dot.className = 'weavedot';
    this.element.append(this.line, this.pauses);
  }

  /** Draws the line for a weave as a look sees it; null takes it away. */
  draw(weave: WeaveOptions | null, look: Look): void {
    this.element.style.visibility = weave ? 'inherit' : 'hidden';
    this.look = look;
    this.shown = weave !== null;
    if (!weave) return;
    if (weave !== this.of) {
      this.of = weave;
      this.poses = [...weaveHand({ ...weave, length_mm: SHOWN_MM }, noFaults())].filter((pose) => pose.trigger);
    }
    this.line.setAttribute(
      'points',
      this.poses
        .filter((_, i) => i % THIN === 0)
        .map((pose) => this.at(pose))
        .map(({ x_px, y_px }) => `${x_px.toFixed(1)},${y_px.toFixed(1)}`)
        .join(' '),
    );
    this.pauses.replaceChildren(...this.restingPlaces().map((pose) => this.ring(pose)));
  }

  /** Moves the dot; cheap, and nothing of the joint is drawn anew. */
  step(now_ms: number, still: boolean): void {
    this.dot.style.visibility = this.shown && !still ? 'inherit' : 'hidden';
    if (!this.shown || still || !this.look || this.poses.length === 0) return;
    const n = Math.floor(((now_ms - this.began_ms) / 1000) * POSE_RATE_HZ);
    if (n >= this.poses.length + REST_S * POSE_RATE_HZ || n < 0) this.began_ms = now_ms;
    const pose = this.poses[Math.min(Math.max(n, 0), this.poses.length - 1)];
    const { x_px, y_px } = this.at(pose);
    this.dot.style.transform = `translate(${x_px.toFixed(1)}px, ${y_px.toFixed(1)}px)`;
  }

  private at(pose: Pose): { x_px: number; y_px: number } {
    const look = this.look;
    if (!look) return { x_px: 0, y_px: 0 };
    return see(look, { u_mm: pose.u_mm, y_mm: pose.y_mm, w_mm: Math.abs(pose.u_mm) + 0.4 });
  }

  /** First pose of each stand at a toe. */
  private restingPlaces(): Pose[] {
    const resting = (i: number): boolean =>
      i > 0 && Math.abs(this.poses[i].u_mm - this.poses[i - 1].u_mm) < STILL_MM && Math.abs(this.poses[i].u_mm) > 1;
    return this.poses.filter((_, i) => resting(i) && !resting(i - 1));
  }

  private ring(pose: Pose): SVGElement {
    const { x_px, y_px } = this.at(pose);
    const circle = svgElement('circle', 'pause');
    place(circle, { cx: x_px, cy: y_px, r: 4 });
    return circle;
  }
}
