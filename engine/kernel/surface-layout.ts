/**
 * Where a puddle's columns lie in one linear memory while its surface is relaxed, so that the plain-TypeScript kernel and its SIMD twin
 * work on the same bytes.
 *
 * Height and response of a node stand side by side (`pair`), because both follow the same sweep: one 128-bit register. A contact line is
 * a ghost node with the toe's height and no response, a wall a link to the node itself over no distance: no branches in the sweeps.
 * Faces: 0 u-, 1 u+, 2 y-, 3 y+.
 */

/** A puddle's columns as nodes; arrays are reused, `count` says how many are in use. */
export interface Nodes {
  count: number;
  capacity: number;
  /** Nodes of the first colour in `order`. */
  red: number;
  /** Height mm and response mm/Pa of node n at 2n and 2n + 1; those of the ghost of face f at 2 (capacity + f). */
  pair: Float64Array;
  /** Per face, the node it looks at: another node, the face's own ghost (capacity + f), or the node itself (wall). */
  link: Int32Array;
  /** Per face, the distance to what it looks at, mm; 0 for a wall. */
  distance: Float64Array;
  /** Per face, tension x length over distance and stretch, g/s². */
  face: Float64Array;
  bottom: Float64Array;
  load: Float64Array;
  /** Slope along u and along y of node n at 2n and 2n + 1. */
  slope: Float64Array;
  /** Nodes in sweeping order: first colour, then the other, each in scan order. */
  order: Int32Array;
  /** Of the flow that moves the metal (pool/flow.ts). Per face, channel to the next node, mm; 0 where none is. */
  channel: Float64Array;
  /** Per node, sum of its channels, and the volume it is to give, mm³. */
  stiff: Float64Array;
  source: Float64Array;
  /** Per node, potential of the flow, mm²; 0 for every ghost. */
  potential: Float64Array;
}

export interface SurfaceConstants {
  du: number;
  dy: number;
  /** Surface tension in g/s² (1 N/m = 1000 g/s²). */
  tension: number;
}

/** Relaxes a puddle's surface. Both twins must give the same bits. */
export interface SurfaceKernel {
  readonly name: 'reference' | 'simd';
  readonly nodes: Nodes;
  /**
   * `sweeps` red-black sweeps towards equilibrium with Σ w = `volume` (a sum of heights, mm), starting from pressure `lambda`, Pa.
   * Returns the pressure. What is left of the volume after the last correction is shared by liquid depth, so the sum is exact.
   */
  relax(constants: SurfaceConstants, volume: number, lambda: number, sweeps: number): number;
  /** `sweeps` red-black sweeps of the flow's potential φ towards Σq channel (φn - φq) = source in every node. */
  flow(sweeps: number): void;
}

/** Over-relaxation; 1.5 suits puddles 5 to 20 columns across. */
export const OMEGA = 1.5;
/** Over-relaxation of the flow: how fast it converges, not to what. */
export const FLOW_OMEGA = 1.7;
/** Sweeps between corrections of λ and of the lagged curvature, and corrections after the last sweep. */
export const CORRECT_EVERY = 4;
/** Largest step of λ in one correction, Pa. */
export const LAMBDA_STEP = 400;
export const TINY = 1e-6;

export interface SurfaceLayout {
  pair: number;
  link: number;
  distance: number;
  face: number;
  bottom: number;
  load: number;
  slope: number;
  order: number;
  channel: number;
  stiff: number;
  source: number;
  potential: number;
  bytes: number;
}

export function planSurface(capacity: number): SurfaceLayout {
  let at = 1024;
  const take = (bytes: number): number => {
    const start = at;
    at += (bytes + 63) & ~63;
    return start;
  };
  return {
    pair: take(80 * capacity),
    link: take(16 * capacity),
    distance: take(32 * capacity),
    face: take(32 * capacity),
    bottom: take(8 * capacity),
    load: take(8 * capacity),
    slope: take(16 * capacity),
    order: take(4 * capacity),
    channel: take(32 * capacity),
    stiff: take(8 * capacity),
    source: take(8 * capacity),
    potential: take(40 * capacity),
    bytes: at,
  };
}

export function viewNodes(memory: ArrayBuffer, layout: SurfaceLayout, capacity: number): Nodes {
  return {
    count: 0,
    capacity,
    red: 0,
    pair: new Float64Array(memory, layout.pair, 10 * capacity),
    link: new Int32Array(memory, layout.link, 4 * capacity),
    distance: new Float64Array(memory, layout.distance, 4 * capacity),
    face: new Float64Array(memory, layout.face, 4 * capacity),
    bottom: new Float64Array(memory, layout.bottom, capacity),
    load: new Float64Array(memory, layout.load, capacity),
    slope: new Float64Array(memory, layout.slope, 2 * capacity),
    order: new Int32Array(memory, layout.order, capacity),
    channel: new Float64Array(memory, layout.channel, 4 * capacity),
    stiff: new Float64Array(memory, layout.stiff, capacity),
    source: new Float64Array(memory, layout.source, capacity),
    potential: new Float64Array(memory, layout.potential, 5 * capacity),
  };
}
