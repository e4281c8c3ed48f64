/** The SIMD twin: WebAssembly compiled from simd/heat.ts. `null` where the machine has no WebAssembly SIMD. */
import { INV_STEP_F32 } from '../material.ts';
import { type HeatKernel, type KernelLayout, LEAST_FILL } from './layout.ts';
import { HEAT_WASM } from './simd-module.ts';

interface HeatExports {
  setup(...words: number[]): void;
  potential(j0: number, j1: number): void;
  conduct(j0: number, j1: number): void;
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

let compiled: WebAssembly.Module | null | undefined;

function heatModule(): WebAssembly.Module | null {
  if (compiled === undefined) {
    const bytes = decode(HEAT_WASM);
    compiled = typeof WebAssembly === 'object' && WebAssembly.validate(bytes) ? new WebAssembly.Module(bytes) : null;
  }
  return compiled;
}

export function createSimdKernel(layout: KernelLayout): HeatKernel | null {
  const module = heatModule();
  if (!module) return null;
  const pages = (layout.bytes + 65535) >> 16;
  const memory = new WebAssembly.Memory({ initial: pages });
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
    layout.program,
    layout.coefficient,
    layout.listRod,
    layout.listCoefficient,
    INV_STEP_F32,
    Math.fround(LEAST_FILL),
  );
  return {
    name: 'simd',
    memory: memory.buffer,
    // Whole vectors: the last may run into the padding, which nothing reads.
    potential: (j0, j1) => heat.potential(j0, (j1 + 3) & ~3),
    conduct: (j0, j1) => heat.conduct(j0, (j1 + 3) & ~3),
  };
}
