import type { Place } from '../draw/zones.ts';
import { type Outline, type Point, SQRT2, type Toe } from '../measures/section/outline.ts';
import { refused } from './joint-frame.ts';

/** Points the curve is read at, evenly along the toe line. */
const SAMPLES = 80;
/** Face points nearer to a toe than this along the toe line are taken as the toe itself, mm. */
const AT_TOE_MM = 0.05;

interface Knot {
  /** Along the toe line from toe B, mm. */
  x: number;
  /** Off the toe line, out of the root, mm. */
  off: number;
}

function pointOf({ a, b }: Place): Point {
  return { u: (a - b) / SQRT2, w: (a + b) / SQRT2 };
}

/**
 * The bead's outline through toes and face points set by hand: a smooth curve through every point (cubic pieces whose slope at a point is
 * that of the parabola through it and its neighbours), so that an arc marked at three points is read as an arc.
 * @param face in any order
 * @throws InputError when there is no face point, the toes coincide or a point lies outside the toes
 */
export function outlineThrough(toeA: Place, toeB: Place, face: readonly Place[]): Outline {
  const from = pointOf(toeB);
  const to = pointOf(toeA);
  const du = to.u - from.u;
  const dw = to.w - from.w;
  const width = Math.sqrt(du * du + dw * dw);
  if (!(width > 0.5)) throw refused('marks.toeA', `toes ${width.toFixed(1)} mm apart`, 'toes at least 0.5 mm apart');
  const along = { u: du / width, w: dw / width };
  const inner = face
    .map(pointOf)
    .map((p): Knot => {
      const u = p.u - from.u;
      const w = p.w - from.w;
      return { x: u * along.u + w * along.w, off: -u * along.w + w * along.u };
    })
    .sort((p, q) => p.x - q.x);
  for (const [i, knot] of inner.entries())
    if (knot.x < -AT_TOE_MM || knot.x > width + AT_TOE_MM)
      throw refused(`marks.face[${i}]`, 'a face point outside the two toes', 'points of the face between the toes');
  const own = inner.filter((knot) => knot.x > AT_TOE_MM && knot.x < width - AT_TOE_MM);
  if (own.length === 0) throw refused('marks.face', 'no point between the toes', 'at least one point of the face');
  const knots = [{ x: 0, off: 0 }, ...apartFrom(own), { x: width, off: 0 }];
  const slopes = knots.map((_, i) => slopeAt(knots, i));
  const point = (x: number): Point => {
    const off = curve(knots, slopes, x);
    return { u: from.u + x * along.u - off * along.w, w: from.w + x * along.w + off * along.u };
  };
  const toe = (side: 'A' | 'B', p: Point, slope: number): Toe => ({
    ...p,
    side,
    slope: (along.w + slope * along.u) / (along.u - slope * along.w),
    column: 0,
  });
  const points = Array.from({ length: SAMPLES + 1 }, (_, i) => point((i * width) / SAMPLES));
  return {
    toeA: toe('A', to, slopes[slopes.length - 1]!),
    toeB: toe('B', from, slopes[0]!),
    face: points,
    area_mm2: Math.abs(areaWithRoot(points)),
  };
}

/** Points at one place along the toe line are one point, half way between. */
function apartFrom(sorted: readonly Knot[]): Knot[] {
  const out: Knot[] = [];
  for (const knot of sorted) {
    const last = out[out.length - 1];
    if (last !== undefined && knot.x - last.x < AT_TOE_MM) last.off = (last.off + knot.off) / 2;
    else out.push({ ...knot });
  }
  return out;
}

/** Slope at a knot of the parabola through it and the two nearest. */
function slopeAt(knots: readonly Knot[], i: number): number {
  const m = Math.min(knots.length - 2, Math.max(1, i));
  const [p, q, r] = [knots[m - 1]!, knots[m]!, knots[m + 1]!];
  const left = (q.off - p.off) / (q.x - p.x);
  const right = (r.off - q.off) / (r.x - q.x);
  const bend = (right - left) / (r.x - p.x);
  return left + bend * (2 * knots[i]!.x - p.x - q.x);
}

function curve(knots: readonly Knot[], slopes: readonly number[], x: number): number {
  let i = 0;
  while (i < knots.length - 2 && x > knots[i + 1]!.x) i++;
  const p = knots[i]!;
  const q = knots[i + 1]!;
  const h = q.x - p.x;
  const t = (x - p.x) / h;
  const s = 1 - t;
  return (
    p.off * s * s * (1 + 2 * t) +
    q.off * t * t * (3 - 2 * t) +
    h * (slopes[i]! * t * s * s - slopes[i + 1]! * t * t * s)
  );
}

/** Area between the root and the face, mm². */
function areaWithRoot(points: readonly Point[]): number {
  let twice = 0;
  for (let i = 1; i < points.length; i++) {
    const p = points[i - 1]!;
    const q = points[i]!;
    twice += p.u * q.w - q.u * p.w;
  }
  return twice / 2;
}
