import { cycleShares, type WeaveOptions, weaveAt } from '../../engine/index.ts';
import { type Camera, toPane } from '../core/hand/camera.ts';

const FROM_BOTTOM_PX = 16;
const LEAST_HALF_MM = 2.5;

/**
 * The beat, seen: a short line as wide as the weave at the pane's lower edge, away from the puddle, with a dot that rests at each end as
 * long as the toe is meant to be waited on. With motion reduced the dot only changes ends.
 */
export class BeatView {
  readonly element = document.createElement('div');
  private readonly dot = document.createElement('i');

  constructor() {
    this.element.className = 'beatseen';
    this.element.append(this.dot);
  }

  draw(camera: Camera, weave: WeaveOptions | null, since_s: number, still: boolean): void {
    const visible = weave !== null && weave.pattern !== 'straight' && since_s >= 0;
    this.element.style.visibility = visible ? 'visible' : 'hidden';
    if (!visible) return;
    const half_px = Math.max(weave.width_mm / 2, LEAST_HALF_MM) * camera.scale;
    const phase = (since_s * weave.cyclesPerSecond) % 1;
    const { pauseA, pauseB, cross } = cycleShares(weave);
    const firstHalf = phase < (weave.firstToe === 'A' ? pauseA : pauseB) + cross;
    const end = firstHalf === (weave.firstToe === 'A') ? 1 : -1;
    const at = still ? end : weaveAt(weave, phase).u_mm / (weave.width_mm / 2);
    this.element.style.width = `${(2 * half_px).toFixed(1)}px`;
    this.element.style.left = `${(toPane(camera, 0, 0).x_px - half_px).toFixed(1)}px`;
    this.element.style.top = `${(camera.height_px - FROM_BOTTOM_PX).toFixed(1)}px`;
    this.dot.style.transform = `translateX(${(half_px * (1 + at)).toFixed(2)}px)`;
  }
}
