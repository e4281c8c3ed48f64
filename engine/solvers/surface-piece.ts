/**
 * The liquid's surface alone: the equilibrium an attempt's puddle relaxes towards, taken all the way and with a word on whether it got
 * there. It runs on the weld's own kernel, full curvature, obstacle and exact volume; an attempt stops after a few sweeps and goes on next tick.
 *
 *     const strip = settleSurface({
 *       nu: 16, ny: 1, du_mm: 0.53, dy_mm: 0.75,
 *       bottom_mm: 0, edge: (c, j, face) => (face < 2 ? { height_mm: 0 } : null),
 *       tension_NpM: 1.2, density_kgpm3: 7000, gravity_mps2: { u: 0, y: 0, w: 0 }, volume_mm3: 4,
 *     });
 *     strip.height_mm; strip.pressure_Pa; strip.converged;
 */

import { EngineError } from '../input/error.ts';
import type { Nodes, SurfaceConstants, SurfaceKernel } from '../kernel/surface-layout.ts';
import { createSurface, linkNode, linkToe, linkWall, orderNodes, surfaceResidual } from '../pool/surface.ts';
import { requireNumber } from './check.ts';
import type { SurfaceCase, SurfaceEdge, SurfaceFace, SurfaceResult } from './surface-types.ts';

const SWEEPS_A_ROUND = 64;
const DEFAULT_TOLERANCE_MM = 1e-7;
const DEFAULT_MOST_SWEEPS = 100_000;
const DEFAULT_GRAVITY = { u: 0, y: -9.81, w: 0 };
const MOST_COLUMNS = 1e6;

/**
 * Settles a pool under its own weight and surface tension until nothing moves any more.
 * @throws EngineError with the field's path when the case cannot be computed.
 */
export function settleSurface(c: SurfaceCase): SurfaceResult {
  check(c);
  const { nu, ny } = c;
  const nodeOf = new Int32Array(nu * ny).fill(-1);
  const columns: number[] = [];
  for (let i = 0; i < nu * ny; i++) {
    if (c.liquid && !c.liquid[i]) continue;
    nodeOf[i] = columns.length;
    columns.push(i);
  }
  if (columns.length === 0) throw new EngineError('out-of-range', 'liquid', 'no liquid column', 'at least one');
  const surface = createSurface(columns.length, 'auto');
  const { nodes } = surface;
  nodes.count = columns.length;
  const bottoms = columns.map((i) => (typeof c.bottom_mm === 'number' ? c.bottom_mm : c.bottom_mm[i]!));
  const level = bottoms.reduce((sum, b) => sum + b, 0) + c.volume_mm3 / (c.du_mm * c.dy_mm);
  const depth = c.volume_mm3 / (c.du_mm * c.dy_mm * columns.length);
  columns.forEach((i, n) => {
    nodes.bottom[n] = bottoms[n]!;
    nodes.pair[2 * n] = c.start_mm ? c.start_mm[i]! : bottoms[n]! + depth;
    nodes.pair[2 * n + 1] = 0;
    for (const face of [0, 1, 2, 3] as const) join(c, nodes, nodeOf, i, n, face);
  });
  orderNodes(nodes, (n) => (Math.floor(columns[n]! / ny) + (columns[n]! % ny)) & 1);
  return relax(c, surface, columns, level);
}

/** Sweeps in rounds until nothing moves. Weight across the surface (gravity along w) follows the surface from round to round. */
function relax(c: SurfaceCase, surface: SurfaceKernel, columns: number[], level: number): SurfaceResult {
  const { nodes } = surface;
  const constants: SurfaceConstants = { du: c.du_mm, dy: c.dy_mm, tension: c.tension_NpM * 1000 };
  const tolerance = c.tolerance_mm ?? DEFAULT_TOLERANCE_MM;
  const most = c.mostSweeps ?? DEFAULT_MOST_SWEEPS;
  const fixed = fixedLoads(c, columns);
  const weight = -(c.density_kgpm3 * 1e-6) * (c.gravity_mps2 ?? DEFAULT_GRAVITY).w * 1000;
  const part = followPart(c, weight);
  const head = Float64Array.from(columns, (_, n) => nodes.pair[2 * n]!);
  // Starting from the mean load keeps the first sweeps from pressing the whole pool onto its bottom, where nothing answers any more.
  let pressure = fixed.reduce((sum, load, n) => sum + load + weight * head[n]!, 0) / nodes.count;
  let sweeps = 0;
  let residual = Number.POSITIVE_INFINITY;
  while (sweeps < most && !(residual <= tolerance)) {
    for (let n = 0; n < nodes.count; n++) nodes.load[n] = fixed[n]! + weight * head[n]!;
    pressure = surface.relax(constants, level, pressure, SWEEPS_A_ROUND);
    sweeps += SWEEPS_A_ROUND;
    residual = Math.max(surfaceResidual(nodes, constants, pressure), missing(nodes, level) / nodes.count);
    if (weight === 0) continue;
    for (let n = 0; n < nodes.count; n++) {
      const lag = nodes.pair[2 * n]! - head[n]!;
      residual = Math.max(residual, Math.abs(lag));
      head[n]! += part * lag;
    }
  }
  const height = new Float64Array(c.nu * c.ny).fill(Number.NaN);
  columns.forEach((i, n) => {
    height[i] = nodes.pair[2 * n]!;
  });
  return {
    height_mm: height,
    pressure_Pa: pressure,
    converged: residual <= tolerance,
    residual_mm: residual,
    sweeps,
  };
}

/** Sum of heights the surface lacks or has too much, mm. */
function missing(nodes: Nodes, level: number): number {
  let sum = 0;
  for (let n = 0; n < nodes.count; n++) sum += nodes.pair[2 * n]!;
  return Math.abs(level - sum);
}

/**
 * Weight taken from the surface of the round before pushes back (L/πl)² times too far at worst, over a pool L wide with capillary
 * length l; following only 1 / (1 + that) of the way always closes in.
 */
function followPart(c: SurfaceCase, weight: number): number {
  const widest = Math.max(c.nu * c.du_mm, c.ny * c.dy_mm);
  const stiff = (weight * widest * widest) / (Math.PI * Math.PI * c.tension_NpM * 1000);
  return 1 / (1 + Math.abs(stiff));
}

function fixedLoads(c: SurfaceCase, columns: number[]): Float64Array {
  const gravity = c.gravity_mps2 ?? DEFAULT_GRAVITY;
  const density = c.density_kgpm3 * 1e-6;
  return Float64Array.from(columns, (i) => {
    const u = (c.u0_mm ?? 0) + Math.floor(i / c.ny) * c.du_mm;
    const y = (c.y0_mm ?? 0) + (i % c.ny) * c.dy_mm;
    const push = typeof c.pressure_Pa === 'function' ? c.pressure_Pa(u, y) : (c.pressure_Pa?.[i] ?? 0);
    return push - density * 1000 * (gravity.u * u + gravity.y * y);
  });
}

function join(c: SurfaceCase, nodes: Nodes, nodeOf: Int32Array, i: number, n: number, face: SurfaceFace): void {
  const column = Math.floor(i / c.ny);
  const slice = i % c.ny;
  const beyond = face === 0 ? column - 1 : face === 1 ? column + 1 : face === 2 ? slice - 1 : slice + 1;
  const inside = beyond >= 0 && beyond < (face < 2 ? c.nu : c.ny);
  const q = inside ? (face < 2 ? beyond * c.ny + slice : column * c.ny + beyond) : -1;
  if (q >= 0 && nodeOf[q]! >= 0) {
    linkNode(nodes, n, face, nodeOf[q]!, face < 2 ? c.du_mm : c.dy_mm);
    return;
  }
  const edge = edgeAt(c, column, slice, face, q);
  if (edge === null) {
    linkWall(nodes, n, face);
    return;
  }
  const half = (face < 2 ? c.du_mm : c.dy_mm) / 2;
  const reach = edge.reach_mm ?? half;
  requireNumber(`edge(${column}, ${slice}, ${face}).reach_mm`, reach, 1e-3 * half, 4 * half, 'mm');
  requireNumber(`edge(${column}, ${slice}, ${face}).height_mm`, edge.height_mm, -1e6, 1e6, 'mm');
  linkToe(nodes, n, face, reach, edge.height_mm);
}

function edgeAt(c: SurfaceCase, column: number, slice: number, face: SurfaceFace, dry: number): SurfaceEdge | null {
  if (typeof c.edge === 'function') return c.edge(column, slice, face);
  if (dry < 0) return null;
  return { height_mm: typeof c.edge === 'number' ? c.edge : c.edge[dry]! };
}

function check(c: SurfaceCase): void {
  requireNumber('nu', c.nu, 1, MOST_COLUMNS, 'columns');
  requireNumber('ny', c.ny, 1, MOST_COLUMNS, 'slices');
  requireNumber('nu x ny', c.nu * c.ny, 1, MOST_COLUMNS, 'columns');
  requireNumber('du_mm', c.du_mm, 1e-3, 1e3, 'mm');
  requireNumber('dy_mm', c.dy_mm, 1e-3, 1e3, 'mm');
  requireNumber('tension_NpM', c.tension_NpM, 1e-4, 100, 'N/m');
  requireNumber('density_kgpm3', c.density_kgpm3, 0, 30_000, 'kg/m³');
  requireNumber('volume_mm3', c.volume_mm3, 0, 1e9, 'mm³');
  const lists = [
    ['liquid', c.liquid],
    ['bottom_mm', c.bottom_mm],
    ['edge', c.edge],
    ['pressure_Pa', c.pressure_Pa],
    ['start_mm', c.start_mm],
  ] as const;
  for (const [name, list] of lists) {
    if (list === undefined || typeof list === 'number' || typeof list === 'function') continue;
    if (list.length !== c.nu * c.ny)
      throw new EngineError('inconsistent', name, `${list.length} entries`, `nu x ny = ${c.nu * c.ny} entries`);
  }
}
