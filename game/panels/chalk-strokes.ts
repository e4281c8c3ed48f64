/** A place on the window as shares of its width and height, so that what is drawn stays where it was when the window changes. */
export interface ChalkSpot {
  x: number;
  y: number;
}

/** One stroke, from press to release. */
export type Stroke = readonly ChalkSpot[];

/** Most strokes and places in one; an hour of drawing does not come near. */
const MOST_STROKES = 400;
const MOST_SPOTS = 2000;
/** Nearer than this, in shares, a place adds nothing to a stroke. */
const LEAST_STEP = 0.0015;

/** A new stroke that begins at a place; of too many the first goes. */
export function begin(strokes: readonly Stroke[], at: ChalkSpot): Stroke[] {
  return [...strokes.slice(-(MOST_STROKES - 1)), [at]];
}

/** The last stroke drawn on to a place; the same strokes where it has hardly moved. */
export function drawOn(strokes: readonly Stroke[], to: ChalkSpot): readonly Stroke[] {
  const stroke = strokes.at(-1);
  const last = stroke?.at(-1);
  if (!stroke || !last || stroke.length >= MOST_SPOTS) return strokes;
  if (Math.abs(to.x - last.x) < LEAST_STEP && Math.abs(to.y - last.y) < LEAST_STEP) return strokes;
  return [...strokes.slice(0, -1), [...stroke, to]];
}

/** A stroke as the path of a drawing a thousand units wide and high; a tap is a dot. */
export function pathOfStroke(stroke: Stroke): string {
  const spot = ({ x, y }: ChalkSpot): string => `${(1000 * x).toFixed(1)} ${(1000 * y).toFixed(1)}`;
  const [first, ...rest] = stroke;
  if (first === undefined) return '';
  return rest.length === 0 ? `M${spot(first)}h0.1` : `M${spot(first)}${rest.map((p) => `L${spot(p)}`).join('')}`;
}
