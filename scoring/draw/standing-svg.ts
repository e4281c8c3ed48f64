import type { Line } from '../schema/result.ts';
import { drawingOf, num, type Svg, tag } from './svg.ts';

const WIDTH = 132;
const HEIGHT = 20;
const LIMIT_X = 84;
/** Pixels for one plus-minus. */
const UNIT = 13;
/** Farthest shown, in plus-minus; what lies beyond is drawn at the end with an arrow. */
const INSIDE_MOST = 5.4;
const OUTSIDE_MOST = 2.6;

/**
 * Where a reading stands against its limit: the limit a heavy stroke, the side beyond it hatched, the reading a dot with its plus-minus as a
 * bar. Scaled in units of the line's own plus-minus. Clear of the hatch: within. In it: outside. Across the stroke: too close to call.
 */
export function standingSvg(line: Line): Svg {
  const give = Math.max(line.plusMinus, 1e-6);
  const out = (line.sense === 'at most' ? line.reading - line.limit : line.limit - line.reading) / give;
  const shown = Math.min(OUTSIDE_MOST, Math.max(-INSIDE_MOST, out));
  const x = LIMIT_X + shown * UNIT;
  const mid = HEIGHT / 2;
  const from = Math.max(2, x - UNIT);
  const to = Math.min(WIDTH - 2, x + UNIT);
  const hatch: string[] = [];
  for (let k = LIMIT_X + 5; k < WIDTH + HEIGHT; k += 5) {
    const bottom = Math.max(LIMIT_X, k - HEIGHT);
    const top = Math.min(WIDTH, k);
    hatch.push(`M${num(bottom)} ${num(k - bottom)}L${num(top)} ${num(k - top)}`);
  }
  const arrow = (tip: number, way: number): string =>
    tag('path', { d: `M${num(tip)} ${mid}l${num(-6 * way)} -4v8z`, fill: '#000000' });
  return drawingOf(
    WIDTH,
    HEIGHT,
    line.verdict,
    tag('path', { d: hatch.join(''), stroke: '#9a9a9a', 'stroke-width': 0.7, fill: 'none' }) +
      tag('line', { x1: 2, y1: mid, x2: LIMIT_X, y2: mid, stroke: '#b0b0b0', 'stroke-width': 0.7 }) +
      tag('line', { x1: LIMIT_X, y1: 1, x2: LIMIT_X, y2: HEIGHT - 1, stroke: '#000000', 'stroke-width': 2.2 }) +
      tag('line', { x1: from, y1: mid, x2: to, y2: mid, stroke: '#000000', 'stroke-width': 1.6 }) +
      (out < -INSIDE_MOST
        ? arrow(2, -1)
        : out > OUTSIDE_MOST
          ? arrow(WIDTH - 2, 1)
          : tag('circle', { cx: x, cy: mid, r: 3.6, fill: '#000000' })),
  );
}
