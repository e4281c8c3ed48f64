/** The readable surface kernel, f64 throughout; the SIMD twin does the same operations in the same order. */
import {
  CORRECT_EVERY,
  FLOW_OMEGA,
  LAMBDA_STEP,
  type Nodes,
  OMEGA,
  planSurface,
  type SurfaceConstants,
  type SurfaceKernel,
  TINY,
  viewNodes,
} from './surface-layout.ts';

export function createReferenceSurface(capacity: number): SurfaceKernel {
  const layout = planSurface(capacity);
  const nodes = viewNodes(new ArrayBuffer(layout.bytes), layout, capacity);
  return {
    name: 'reference',
    nodes,
    relax: (constants, volume, lambda, sweeps) => relax(nodes, constants, volume, lambda, sweeps),
    flow(sweeps) {
      for (let pass = 0; pass < sweeps; pass++) {
        sweepFlow(nodes, 0, nodes.red);
        sweepFlow(nodes, nodes.red, nodes.count);
      }
    },
  };
}

function relax(n: Nodes, k: SurfaceConstants, volume: number, lambda: number, sweeps: number): number {
  const area = k.du * k.dy;
  let pressure = lambda;
  for (let pass = 0; pass < sweeps; pass++) {
    if (pass % CORRECT_EVERY === 0) updateFaces(n, k);
    sweep(n, area, pressure, 0, n.red);
    sweep(n, area, pressure, n.red, n.count);
    if (pass % CORRECT_EVERY === CORRECT_EVERY - 1) pressure = correct(n, volume, pressure);
  }
  for (let pass = 0; pass < CORRECT_EVERY; pass++) pressure = correct(n, volume, pressure);
  const { pair, bottom } = n;
  let sum = 0;
  let depth = 0;
  for (let i = 0; i < n.count; i++) {
    sum += pair[2 * i]!;
    depth += pair[2 * i]! - bottom[i]!;
  }
  if (depth > TINY) {
    const scale = Math.max(-1, (volume - sum) / depth);
    for (let i = 0; i < n.count; i++) pair[2 * i]! += scale * (pair[2 * i]! - bottom[i]!);
  }
  return pressure;
}

/** Lagged curvature: face coefficients from the present surface. A face between two nodes is computed once and given to both. */
export function updateFaces(n: Nodes, k: SurfaceConstants): void {
  const { pair, link, distance, face, slope, capacity } = n;
  for (let i = 0; i < n.count; i++) {
    const here = pair[2 * i]!;
    for (let axis = 0; axis < 2; axis++) {
      const f = 4 * i + 2 * axis;
      const rise = here - pair[2 * link[f]!]! + (pair[2 * link[f + 1]!]! - here);
      const run = distance[f]! + distance[f + 1]!;
      slope[2 * i + axis] = run > 0 ? rise / run : 0;
    }
  }
  const stiffU = k.tension * k.dy;
  const stiffY = k.tension * k.du;
  for (let i = 0; i < n.count; i++) {
    const here = pair[2 * i]!;
    for (let side = 0; side < 4; side++) {
      const f = 4 * i + side;
      const q = link[f]!;
      const d = distance[f]!;
      if (d === 0) {
        face[f] = 0;
        continue;
      }
      const other = q < capacity;
      if (other && (side & 1) === 0) continue;
      const across = side < 2;
      const along = across ? 1 : 0;
      const gn = (pair[2 * q]! - here) / d;
      const gt = 0.5 * (slope[2 * i + along]! + slope[2 * (other ? q : i) + along]!);
      const a = (across ? stiffU : stiffY) / (d * Math.sqrt(1 + gn * gn + gt * gt));
      face[f] = a;
      if (other) face[4 * q + side - 1] = a;
    }
  }
}

function sweep(n: Nodes, area: number, lambda: number, from: number, to: number): void {
  const { pair, link, face, bottom, load, order } = n;
  for (let k = from; k < to; k++) {
    const i = order[k]!;
    let stiff = TINY;
    let height = 0;
    let response = 0;
    for (let f = 4 * i; f < 4 * i + 4; f++) {
      const a = face[f]!;
      const q = 2 * link[f]!;
      stiff += a;
      height += a * pair[q]!;
      response += a * pair[q + 1]!;
    }
    const w = pair[2 * i]!;
    const r = pair[2 * i + 1]!;
    const next = w + OMEGA * ((height + area * (lambda - load[i]!)) / stiff - w);
    const held = next <= bottom[i]!;
    pair[2 * i] = held ? bottom[i]! : next;
    pair[2 * i + 1] = held ? 0 : r + OMEGA * ((response + area) / stiff - r);
  }
}

function correct(n: Nodes, volume: number, lambda: number): number {
  const { pair, bottom } = n;
  let height = 0;
  let response = 0;
  for (let i = 0; i < n.count; i++) {
    height += pair[2 * i]!;
    response += pair[2 * i + 1]!;
  }
  // With every node on its bottom nothing responds: step towards the missing volume until something does.
  let d = response > 1e-12 ? (volume - height) / response : volume > height ? LAMBDA_STEP : 0;
  d = d > LAMBDA_STEP ? LAMBDA_STEP : Math.max(d, -LAMBDA_STEP);
  for (let i = 0; i < n.count; i++) {
    const next = pair[2 * i]! + d * pair[2 * i + 1]!;
    pair[2 * i] = Math.max(next, bottom[i]!);
  }
  return lambda + d;
}

/** Where a face has no channel it adds nothing, whatever potential it looks at. */
function sweepFlow(n: Nodes, from: number, to: number): void {
  const { link, order, channel, stiff, source, potential } = n;
  for (let k = from; k < to; k++) {
    const i = order[k]!;
    // A column on its own has nowhere to give to.
    if (stiff[i] === 0) continue;
    let sum = 0;
    for (let f = 4 * i; f < 4 * i + 4; f++) sum += channel[f]! * potential[link[f]!]!;
    potential[i]! += FLOW_OMEGA * ((sum + source[i]!) / stiff[i]! - potential[i]!);
  }
}
