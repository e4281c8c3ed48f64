/**
 * The equilibrium surface of one puddle: Young-Laplace with an obstacle and an exact volume. Minimise
 *
 *     Σ γ |area| + Σ (load - λ) w A,   w >= bottom,   Σ w A = volume
 *
 * Discretised over columns with lagged full curvature: a face of length l between columns d apart carries
 * a = γ l / (d sqrt(1 + gn² + gt²)), and each column balances Σ a (w_q - w) + A (λ - load) = 0. Red-black projected SOR; λ is
 * corrected from the response r = ∂w/∂λ, solved alongside. Fixed sweep counts: nothing stops early, so replays agree.
 *
 * Here: how nodes are put together. The sweeps are in kernel/surface-reference.ts and its SIMD twin.
 */

import type { KernelChoice } from '../kernel/layout.ts';
import { createSimdSurface } from '../kernel/simd.ts';
import { type Nodes, type SurfaceConstants, type SurfaceKernel, TINY } from '../kernel/surface-layout.ts';
import { createReferenceSurface, updateFaces } from '../kernel/surface-reference.ts';

export function createSurface(capacity: number, choice: KernelChoice): SurfaceKernel {
  const simd = choice === 'reference' ? null : createSimdSurface(capacity);
  return simd ?? createReferenceSurface(capacity);
}

/** Sweeping order from the nodes' colours, (column + slice) & 1. */
export function orderNodes(n: Nodes, colourOf: (node: number) => number): void {
  let at = 0;
  for (let i = 0; i < n.count; i++) if (colourOf(i) === 0) n.order[at++] = i;
  n.red = at;
  for (let i = 0; i < n.count; i++) if (colourOf(i) !== 0) n.order[at++] = i;
}

export function linkNode(n: Nodes, node: number, face: number, other: number, distance: number): void {
  n.link[4 * node + face] = other;
  n.distance[4 * node + face] = distance;
}

/** Nothing beyond this face: no force. */
export function linkWall(n: Nodes, node: number, face: number): void {
  n.link[4 * node + face] = node;
  n.distance[4 * node + face] = 0;
}

/** The surface ends at a contact line `reach` from the node's centre, at this height. */
export function linkToe(n: Nodes, node: number, face: number, reach: number, height: number): void {
  const f = 4 * node + face;
  n.link[f] = n.capacity + f;
  n.distance[f] = reach;
  n.pair[2 * (n.capacity + f)] = height;
  n.pair[2 * (n.capacity + f) + 1] = 0;
}

/** Largest change one more pair of sweeps would make, mm: small means converged. */
export function surfaceResidual(n: Nodes, k: SurfaceConstants, lambda: number): number {
  updateFaces(n, k);
  const area = k.du * k.dy;
  let worst = 0;
  for (let i = 0; i < n.count; i++) {
    let stiff = TINY;
    let height = 0;
    for (let f = 4 * i; f < 4 * i + 4; f++) {
      stiff += n.face[f]!;
      height += n.face[f]! * n.pair[2 * n.link[f]!]!;
    }
    const w = n.pair[2 * i]!;
    const target = (height + area * (lambda - n.load[i]!)) / stiff;
    const off = w <= n.bottom[i]! && target <= n.bottom[i]! ? 0 : Math.abs(target - w);
    if (off > worst) worst = off;
  }
  return worst;
}
