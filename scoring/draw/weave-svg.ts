import { cycleShares, type WeaveOptions, weaveAt } from '../../engine/index.ts';
import { drawingOf, pathOf, type Spot, type Svg, tag, textAt } from './svg.ts';

/** Cycles drawn, and how many points each is drawn with. */
const CYCLES = 3;
const POINTS = 96;
/** A straight run is drawn this far, mm. */
const STRAIGHT_MM = 8;
/** Room around the weave for its lettering, mm of the joint. */
const SIDE_MM = 3.4;

/** Pixels of a page in a millimetre of paper: 96 to the inch (CSS Values and Units). */
const PX = 96 / 25.4;

/** A weave drawn, and how large it is on paper. */
export interface WeaveDrawing {
  svg: Svg;
  width_mm: number;
  height_mm: number;
}

/**
 * A weave to scale, as the welder sees it: up is up, the right (back) toe right. The arc's path with a dot for each stay at a toe as large as it
 * is long, the root dashed, a rule of millimetres.
 * @param scale paper millimetres for each millimetre of the joint
 */
export function weaveSvg(weave: WeaveOptions, scale: number): WeaveDrawing {
  const straight = weave.pattern === 'straight';
  const seconds = straight ? STRAIGHT_MM / weave.travel_mmps : CYCLES / weave.cyclesPerSecond;
  const path: Spot[] = [];
  for (let i = 0; i <= CYCLES * POINTS; i++) {
    const t_s = (seconds * i) / (CYCLES * POINTS);
    const { u_mm, ahead_mm } = weaveAt(weave, (t_s * weave.cyclesPerSecond) % 1);
    path.push({ x: u_mm, y: weave.travel_mmps * t_s + ahead_mm });
  }
  const low = Math.min(...path.map((p) => p.y)) - 1;
  const high = Math.ceil(Math.max(...path.map((p) => p.y))) + 1;
  const half = Math.max(...path.map((p) => Math.abs(p.x)), 1) + SIDE_MM;
  const at = (p: Spot): Spot => ({ x: (p.x + half) * scale * PX, y: (high - p.y) * scale * PX });
  const ruler = -half + 0.8;
  const marks: string[] = [];
  for (let y = 0; y < high; y++) {
    const long = y % 5 === 0;
    const [a, b] = [at({ x: ruler, y }), at({ x: ruler + (long ? 0.8 : 0.4), y })];
    marks.push(line(a, b, 0.2));
    if (long) marks.push(textAt({ x: b.x + 3, y: b.y + 3.4 }, String(y), { 'font-size': 10, fill: '#000000' }));
  }
  const [width_mm, height_mm] = [2 * half * scale, (high - low) * scale];
  const svg = drawingOf(
    Math.round(width_mm * PX),
    Math.round(height_mm * PX),
    'The weave, to scale',
    [
      line(at({ x: 0, y: low }), at({ x: 0, y: high }), 0.25, '8 5'),
      ...marks,
      tag('path', {
        d: pathOf(path.map(at), false),
        fill: 'none',
        stroke: '#000000',
        'stroke-width': 0.6 * PX,
        'stroke-linejoin': 'round',
      }),
      ...(straight ? [] : stays(weave, seconds).map(({ spot, pause_s }) => dot(at(spot), pause_s))),
    ].join(''),
  );
  return { svg, width_mm, height_mm };
}

/** Every stay at a toe within the seconds drawn: where the weave stands farthest from the root without moving across. */
function stays(weave: WeaveOptions, seconds: number): { spot: Spot; pause_s: number }[] {
  const found: { spot: Spot; pause_s: number }[] = [];
  for (let cycle = 0; cycle < CYCLES; cycle++) {
    for (const [toe, pause_s] of [
      ['A', weave.pauseA_s],
      ['B', weave.pauseB_s],
    ] as const) {
      const phase = middleOfStay(weave, toe);
      const t_s = (cycle + phase) / weave.cyclesPerSecond;
      if (pause_s === 0 || t_s > seconds) continue;
      const { u_mm, ahead_mm } = weaveAt(weave, phase);
      found.push({ spot: { x: u_mm, y: weave.travel_mmps * t_s + ahead_mm }, pause_s });
    }
  }
  return found;
}

/** Phase of a cycle in the middle of the stay at a toe; a cycle begins with the stay at the first toe. */
function middleOfStay(weave: WeaveOptions, toe: 'A' | 'B'): number {
  const { pauseA, pauseB, cross } = cycleShares(weave);
  const [first, second] = weave.firstToe === 'A' ? [pauseA, pauseB] : [pauseB, pauseA];
  return toe === weave.firstToe ? first / 2 : first + cross + second / 2;
}

function dot({ x, y }: Spot, pause_s: number): string {
  return tag('circle', { cx: x, cy: y, r: (0.6 + 2 * Math.min(pause_s, 0.6)) * PX, fill: '#000000' });
}

function line(a: Spot, b: Spot, width_mm: number, dash?: string): string {
  return tag('line', {
    x1: a.x,
    y1: a.y,
    x2: b.x,
    y2: b.y,
    stroke: '#000000',
    'stroke-width': width_mm * PX,
    ...(dash === undefined ? {} : { 'stroke-dasharray': dash }),
  });
}
