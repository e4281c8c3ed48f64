/**
 * The equilibrium surface of one puddle: Young-Laplace with an obstacle and an exact volume. Minimise
 *
 *     Σ γ |area| + Σ (load - λ) w A,   w >= bottom,   Σ w A = volume
 *
 * Discretised over columns with lagged full curvature: a face of length l between columns d apart carries
 * a = γ l / (d sqrt(1 + gn² + gt²)), and each column balances Σ a (w_q - w) + A (λ - load) = 0. Red-black projected SOR; λ is
 * corrected from the response r = ∂w/∂λ, solved alongside. Fixed sweep counts: nothing stops early, so replays agree.
 */

/** Over-relaxation; 1.5 suits puddles 5 to 20 columns across. */
const OMEGA = 1.5;
/** Sweeps between corrections of λ and of the lagged curvature. */
const CORRECT_EVERY = 4;
/** Largest step of λ in one correction, Pa. */
const LAMBDA_STEP = 400;
const TINY = 1e-6;

/** Kinds of neighbour beside another liquid column. */
export const NEIGHBOUR = { WALL: -1, TOE: -2 } as const;

/** A puddle's columns as nodes; arrays are reused, `count` says how many are in use. Faces: 0 u-, 1 u+, 2 y-, 3 y+. */
export interface Nodes {
  count: number;
  /** Neighbour node, WALL (nothing beyond, no force) or TOE (contact line at distance `reach` and height `toe`). */
  neighbour: Int32Array;
  /** Distance of a toe from the node's centre, mm. */
  reach: Float64Array;
  toe: Float64Array;
  bottom: Float64Array;
  load: Float64Array;
  /** Colour for red-black order: (column + slice) & 1. */
  colour: Uint8Array;
  w: Float64Array;
  response: Float64Array;
  /** Face coefficients, N/m-like units g/s². */
  a: Float64Array;
}

export interface SurfaceConstants {
  du: number;
  dy: number;
  /** Surface tension in g/s² (1 N/m = 1000 g/s²). */
  tension: number;
}

export function createNodes(capacity: number): Nodes {
  return {
    count: 0,
    neighbour: new Int32Array(4 * capacity),
    reach: new Float64Array(4 * capacity),
    toe: new Float64Array(4 * capacity),
    bottom: new Float64Array(capacity),
    load: new Float64Array(capacity),
    colour: new Uint8Array(capacity),
    w: new Float64Array(capacity),
    response: new Float64Array(capacity),
    a: new Float64Array(4 * capacity),
  };
}

/** Lagged curvature: face coefficients from the present surface. */
function updateFaces(n: Nodes, k: SurfaceConstants): void {
  const { neighbour, reach, toe, w, a } = n;
  for (let i = 0; i < n.count; i++) {
    const gu = slope(n, i, 0, k.du);
    const gy = slope(n, i, 2, k.dy);
    for (let f = 0; f < 4; f++) {
      const q = neighbour[4 * i + f]!;
      if (q === NEIGHBOUR.WALL) {
        a[4 * i + f] = 0;
        continue;
      }
      const across = f < 2;
      const d = q === NEIGHBOUR.TOE ? reach[4 * i + f]! : across ? k.du : k.dy;
      const gn = ((q === NEIGHBOUR.TOE ? toe[4 * i + f]! : w[q]!) - w[i]!) / d;
      const own = across ? gy : gu;
      const gt = q === NEIGHBOUR.TOE ? own : 0.5 * (own + slope(n, q, across ? 2 : 0, across ? k.dy : k.du));
      const length = across ? k.dy : k.du;
      a[4 * i + f] = (k.tension * length) / (d * Math.sqrt(1 + gn * gn + gt * gt));
    }
  }
}

/** Slope of node i along u (f = 0) or y (f = 2) from its two neighbours. */
function slope(n: Nodes, i: number, f: number, d: number): number {
  const low = n.neighbour[4 * i + f]!;
  const high = n.neighbour[4 * i + f + 1]!;
  let rise = 0;
  let run = 0;
  const here = n.w[i]!;
  if (low >= 0) {
    rise += here - n.w[low]!;
    run += d;
  } else if (low === NEIGHBOUR.TOE) {
    rise += here - n.toe[4 * i + f]!;
    run += n.reach[4 * i + f]!;
  }
  if (high >= 0) {
    rise += n.w[high]! - here;
    run += d;
  } else if (high === NEIGHBOUR.TOE) {
    rise += n.toe[4 * i + f + 1]! - here;
    run += n.reach[4 * i + f + 1]!;
  }
  return run > 0 ? rise / run : 0;
}

function sweep(n: Nodes, area: number, lambda: number, colour: number): void {
  const { neighbour, toe, bottom, load, w, response, a } = n;
  for (let i = 0; i < n.count; i++) {
    if (n.colour[i] !== colour) continue;
    let sa = TINY;
    let sw = 0;
    let sr = 0;
    for (let f = 4 * i; f < 4 * i + 4; f++) {
      const q = neighbour[f]!;
      const af = a[f]!;
      sa += af;
      if (q >= 0) {
        sw += af * w[q]!;
        sr += af * response[q]!;
      } else if (q === NEIGHBOUR.TOE) sw += af * toe[f]!;
    }
    const target = (sw + area * (lambda - load[i]!)) / sa;
    const next = w[i]! + OMEGA * (target - w[i]!);
    const held = next <= bottom[i]!;
    w[i] = held ? bottom[i]! : next;
    response[i] = held ? 0 : response[i]! + OMEGA * ((sr + area) / sa - response[i]!);
  }
}

function correct(n: Nodes, volume: number, lambda: number): number {
  let sw = 0;
  let sr = 0;
  for (let i = 0; i < n.count; i++) {
    sw += n.w[i]!;
    sr += n.response[i]!;
  }
  // With every node on its bottom nothing responds: step towards the missing volume until something does.
  let d = sr > 1e-12 ? (volume - sw) / sr : volume > sw ? LAMBDA_STEP : 0;
  d = d > LAMBDA_STEP ? LAMBDA_STEP : Math.max(d, -LAMBDA_STEP);
  for (let i = 0; i < n.count; i++) {
    const next = n.w[i]! + d * n.response[i]!;
    n.w[i] = Math.max(next, n.bottom[i]!);
  }
  return lambda + d;
}

/**
 * Relaxes the nodes' surface towards equilibrium with Σ w = volume (a sum of heights, mm). Returns the pressure λ, Pa.
 * What is left of the volume after the last correction is shared by liquid depth, so the sum is exact.
 */
export function relaxSurface(n: Nodes, k: SurfaceConstants, volume: number, lambda: number, sweeps: number): number {
  const area = k.du * k.dy;
  let pressure = lambda;
  for (let pass = 0; pass < sweeps; pass++) {
    if (pass % CORRECT_EVERY === 0) updateFaces(n, k);
    sweep(n, area, pressure, 0);
    sweep(n, area, pressure, 1);
    if (pass % CORRECT_EVERY === CORRECT_EVERY - 1) pressure = correct(n, volume, pressure);
  }
  for (let pass = 0; pass < 4; pass++) pressure = correct(n, volume, pressure);
  let sum = 0;
  let depth = 0;
  for (let i = 0; i < n.count; i++) {
    sum += n.w[i]!;
    depth += n.w[i]! - n.bottom[i]!;
  }
  const rest = volume - sum;
  if (depth > TINY) {
    const scale = Math.max(-1, rest / depth);
    for (let i = 0; i < n.count; i++) n.w[i]! += scale * (n.w[i]! - n.bottom[i]!);
  }
  return pressure;
}

/** Largest change one more pair of sweeps would make, mm: small means converged. */
export function surfaceResidual(n: Nodes, k: SurfaceConstants, lambda: number): number {
  updateFaces(n, k);
  const area = k.du * k.dy;
  let worst = 0;
  for (let i = 0; i < n.count; i++) {
    let sa = TINY;
    let sw = 0;
    for (let f = 4 * i; f < 4 * i + 4; f++) {
      const q = n.neighbour[f]!;
      sa += n.a[f]!;
      if (q >= 0) sw += n.a[f]! * n.w[q]!;
      else if (q === NEIGHBOUR.TOE) sw += n.a[f]! * n.toe[f]!;
    }
    const target = (sw + area * (lambda - n.load[i]!)) / sa;
    const off = n.w[i]! <= n.bottom[i]! && target <= n.bottom[i]! ? 0 : Math.abs(target - n.w[i]!);
    if (off > worst) worst = off;
  }
  return worst;
}
