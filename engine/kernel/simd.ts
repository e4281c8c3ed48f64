/** The SIMD twins: WebAssembly compiled from simd/. `null` where the machine has no WebAssembly SIMD. */
import { INV_STEP_F32 } from '../physics/steel.ts';
import { type HeatKernel, type KernelLayout, LEAST_FILL } from './layout.ts';
import { HEAT_WASM, SURFACE_WASM } from './simd-module.ts';
import {
  CORRECT_EVERY,
  FLOW_OMEGA,
  LAMBDA_STEP,
  OMEGA,
  planSurface,
  type SurfaceConstants,
  type SurfaceKernel,
  TINY,
  viewNodes,
} from './surface-layout.ts';

interface HeatExports {
  setup(...words: number[]): void;
  potential(j0: number, j1: number): void;
  join(j: number, out: number, first: number, share: number): void;
  conduct(j0: number, j1: number): void;
  faying(j0: number, j1: number): void;
  cool(j0: number, j1: number, time: number): void;
}

const ALPHABET = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/';

function decode(base64: string): Uint8Array<ArrayBuffer> {
  const clean = base64.replace(/=+$/, '');
  const out = new Uint8Array((clean.length * 3) >> 2);
  let bits = 0;
  let held = 0;
  let at = 0;
  for (let i = 0; i < clean.length; i++) {
    held = (held << 6) | ALPHABET.indexOf(clean[i]!);
    bits += 6;
    if (bits >= 8) {
      bits -= 8;
      out[at++] = (held >> bits) & 255;
    }
  }
  return out;
}

const compiled = new Map<string, WebAssembly.Module | null>();

function moduleOf(base64: string): WebAssembly.Module | null {
  let module = compiled.get(base64);
  if (module === undefined) {
    const bytes = decode(base64);
    module = typeof WebAssembly === 'object' && WebAssembly.validate(bytes) ? new WebAssembly.Module(bytes) : null;
    compiled.set(base64, module);
  }
  return module;
}

function memoryOf(bytes: number): WebAssembly.Memory {
  return new WebAssembly.Memory({ initial: (bytes + 65535) >> 16 });
}

export function createSimdKernel(layout: KernelLayout): HeatKernel | null {
  const module = moduleOf(HEAT_WASM);
  if (!module) return null;
  const memory = memoryOf(layout.bytes);
  const heat = new WebAssembly.Instance(module, { env: { memory } }).exports as unknown as HeatExports;
  heat.setup(
    layout.count,
    layout.ny,
    layout.stride,
    layout.enthalpy,
    layout.residual,
    layout.potential,
    layout.fill,
    layout.peak,
    layout.table,
    layout.lossTable,
    layout.program,
    layout.coefficient,
    layout.listRod,
    layout.listCoefficient,
    layout.flux,
    layout.temperatureTable,
    layout.gaps,
    layout.gapCount,
    layout.tileOf,
    layout.crossingGain,
    layout.tilePotential,
    layout.tileCrossing,
    INV_STEP_F32,
    Math.fround(LEAST_FILL),
  );
  return {
    name: 'simd',
    memory: memory.buffer,
    // Whole vectors: the last may run into the padding, which nothing reads.
    potential: (j0, j1) => heat.potential(j0, (j1 + 3) & ~3),
    join: (j, out, first, share) => heat.join(j, out, first, share),
    conduct: (j0, j1) => heat.conduct(j0, (j1 + 3) & ~3),
    faying: (j0, j1) => heat.faying(j0, (j1 + 3) & ~3),
    cool: (j0, j1, time) => heat.cool(j0, j1, time),
    flux: new Float64Array(memory.buffer, layout.flux, layout.count),
  };
}

interface SurfaceExports {
  setup(...words: number[]): void;
  relax(
    count: number,
    red: number,
    du: number,
    dy: number,
    tension: number,
    volume: number,
    lambda: number,
    sweeps: number,
  ): number;
  flow(count: number, red: number, sweeps: number): void;
}

export function createSimdSurface(capacity: number): SurfaceKernel | null {
  const module = moduleOf(SURFACE_WASM);
  if (!module) return null;
  const layout = planSurface(capacity);
  const memory = memoryOf(layout.bytes);
  const surface = new WebAssembly.Instance(module, { env: { memory } }).exports as unknown as SurfaceExports;
  const { pair, link, distance, face, bottom, load, slope, order, channel, stiff, source, potential } = layout;
  const numbers = [OMEGA, CORRECT_EVERY, LAMBDA_STEP, TINY, FLOW_OMEGA];
  const flows = [channel, stiff, source, potential];
  surface.setup(capacity, pair, link, distance, face, bottom, load, slope, order, ...flows, ...numbers);
  const nodes = viewNodes(memory.buffer, layout, capacity);
  return {
    name: 'simd',
    nodes,
    relax: (k: SurfaceConstants, volume, lambda, sweeps) =>
      surface.relax(nodes.count, nodes.red, k.du, k.dy, k.tension, volume, lambda, sweeps),
    flow: (sweeps) => surface.flow(nodes.count, nodes.red, sweeps),
  };
}
