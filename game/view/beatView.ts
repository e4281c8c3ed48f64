import { Graphics } from 'pixi.js';
import { cycleShares, type WeaveOptions, weaveAt } from '../../engine/index.ts';
import { type Camera, toPane } from './camera.ts';

const INK = 0x1c5a78;
const NIGHT_INK = 0x8fc3dc;
const FROM_BOTTOM_PX = 16;

/**
 * The beat, seen: a short line as wide as the weave at the pane's lower edge, away from the puddle, with a dot that rests at each end as
 * long as the toe is meant to be waited on. With motion reduced the dot only changes ends.
 */
export class BeatView {
  readonly graphics = new Graphics();

  draw(camera: Camera, weave: WeaveOptions | null, since_s: number, dark: number, still: boolean): void {
    const g = this.graphics;
    g.clear();
    if (!weave || weave.pattern === 'straight' || since_s < 0) return;
    const color = dark > 0.5 ? NIGHT_INK : INK;
    const y = camera.height_px - FROM_BOTTOM_PX;
    const half = Math.max(weave.width_mm / 2, 2.5);
    const left = toPane(camera, -half, 0).x_px;
    const right = toPane(camera, half, 0).x_px;
    const phase = (since_s * weave.cyclesPerSecond) % 1;
    const at = (weaveAt(weave, phase).u_mm / (weave.width_mm / 2)) * half;
    const { pauseA, pauseB, cross } = cycleShares(weave);
    const firstHalf = phase < (weave.firstToe === 'A' ? pauseA : pauseB) + cross;
    const stillAt = firstHalf === (weave.firstToe === 'A') ? half : -half;
    g.moveTo(left, y).lineTo(right, y).stroke({ width: 1, color, alpha: 0.7 });
    g.moveTo(left, y - 6)
      .lineTo(left, y + 6)
      .moveTo(right, y - 6)
      .lineTo(right, y + 6)
      .stroke({ width: 1.5, color });
    g.circle(toPane(camera, still ? stillAt : at, 0).x_px, y, 4.5).fill({ color });
  }
}
