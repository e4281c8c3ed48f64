/** Cell updates a second of both kernels and of the same stencil in C, on one and the same state: a weave half way up a 60 mm tee. */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { defaultOptions, defaultWeave, weaveHand } from '../../../engine/index.ts';
import { type HeatKernel, type KernelLayout, LEAST_FILL, PROGRAM_WORDS, ROD } from '../../../engine/kernel/layout.ts';
import { createReferenceKernel } from '../../../engine/kernel/reference.ts';
import { createSimdKernel } from '../../../engine/kernel/simd.ts';
import { INV_STEP_F32 } from '../../../engine/physics/steel.ts';
import { createSimulationState } from './state.ts';
import { median } from './statistics.ts';

export interface KernelFigures {
  /** Million cell updates a second; one update is potential and conduction of one cell. */
  simd: number | null;
  reference: number;
  c128: number | null;
  cNative: number | null;
  sameBits: boolean;
  /** What the machine can do at most, by roofline.c: billion f32 operations and bytes a second, 128-bit vectors. */
  roof: { operations: number; bytes: number } | null;
  why: Record<string, string>;
}

const WARM = 60;
const STEPS = 120;
const REPEATS = 9;

interface Image {
  layout: KernelLayout;
  memory: ArrayBuffer;
  cells: number;
}

/** A state in the middle of a weld, fine everywhere, so that every kind of rod is there. */
function takeImage(): Image {
  const options = defaultOptions();
  options.joint.length_mm = 60;
  const state = createSimulationState(options, weaveHand({ ...defaultWeave(), length_mm: 24 }));
  const { layout, kernel, program } = state.heat;
  let rods = 0;
  for (let r = 0; r < layout.count; r++) if (program[r * PROGRAM_WORDS] !== ROD.SKIP) rods++;
  return { layout, memory: kernel.memory.slice(0), cells: rods * layout.ny };
}

function load(kernel: HeatKernel, image: Image): void {
  new Uint8Array(kernel.memory).set(
    new Uint8Array(image.memory, 0, Math.min(image.memory.byteLength, kernel.memory.byteLength)),
  );
}

function run(kernel: HeatKernel, layout: KernelLayout, steps: number): void {
  for (let s = 0; s < steps; s++) {
    kernel.potential(0, layout.ny);
    kernel.conduct(0, layout.ny);
  }
}

function hash(memory: ArrayBuffer, layout: KernelLayout): string {
  const words = new Uint32Array(memory, layout.enthalpy, layout.count * layout.stride);
  let h = 0x811c9dc5;
  for (let r = 0; r < layout.count; r++)
    for (let j = 0; j < layout.ny; j++) h = Math.imul(h ^ words[r * layout.stride + 4 + j]!, 0x01000193);
  return (h >>> 0).toString(16).padStart(8, '0');
}

function timeKernel(kernel: HeatKernel, image: Image): { seconds: number[]; hash: string } {
  load(kernel, image);
  run(kernel, image.layout, WARM);
  const seconds: number[] = [];
  for (let k = 0; k < REPEATS; k++) {
    const t0 = performance.now();
    run(kernel, image.layout, STEPS);
    seconds.push((performance.now() - t0) / 1000);
  }
  return { seconds, hash: hash(kernel.memory, image.layout) };
}

function runC(program: string, imageFile: string): { seconds: number[]; hash: string } {
  const args = [imageFile, String(WARM), String(STEPS), String(REPEATS)];
  const lines = execFileSync(program, args).toString().trim().split('\n');
  return { hash: lines.pop()!, seconds: lines.map(Number) };
}

const SSE = ['-msse2', '-mno-avx'];

function buildC(dir: string, name: string, flags: string[]): string {
  const out = join(dir, `${name}${flags.join('')}`.replace(/[^\w.-]/g, '_'));
  const source = fileURLToPath(new URL(`${name}.c`, import.meta.url));
  execFileSync(
    'gcc',
    ['-O3', ...flags, '-ffp-contract=off', '-fno-math-errno', '-fno-trapping-math', '-o', out, source],
    { stdio: 'pipe' },
  );
  return out;
}

function writeImage(path: string, image: Image): void {
  const { layout } = image;
  const head = new ArrayBuffer(80);
  new Int32Array(head).set([
    layout.count,
    layout.ny,
    layout.stride,
    layout.listLength,
    0,
    layout.ny,
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
    layout.bytes,
    0,
  ]);
  new Float32Array(head, 72).set([INV_STEP_F32, Math.fround(LEAST_FILL)]);
  writeFileSync(path, Buffer.concat([Buffer.from(head), Buffer.from(image.memory, 0, layout.bytes)]));
}

/** The roof over arrays as large as the five heat fields together. */
function measureRoof(dir: string, { count, stride }: KernelLayout): KernelFigures['roof'] {
  const program = buildC(dir, 'roofline', SSE);
  const [operations, bytes] = execFileSync(program, [String(5 * 4 * count * stride)])
    .toString()
    .split(' ')
    .map(Number);
  return { operations: operations!, bytes: bytes! };
}

/** Million cell updates a second. */
const rateOf = ({ cells }: Image, seconds: number[]): number => (cells * STEPS) / median(seconds) / 1e6;

/** Rounds of stencil and weld. */
const ROUNDS = 9;

/**
 * Times real time of a whole weld over the million cell updates a second of the 128-bit C stencil: each weld over the stencil just before and
 * after it, since a shared machine is at one moment twice as fast as at another. Null where there is no gcc.
 */
export async function benchPace(timesRealTime: () => Promise<number>): Promise<number | null> {
  const image = takeImage();
  const dir = mkdtempSync(join(tmpdir(), 'toehold-bench-'));
  try {
    const imageFile = join(dir, 'image.bin');
    writeImage(imageFile, image);
    let program: string;
    try {
      program = buildC(dir, 'heat', SSE);
    } catch {
      return null;
    }
    const stencil = (): number => rateOf(image, runC(program, imageFile).seconds);
    const ratios: number[] = [];
    let before = stencil();
    for (let round = 0; round < ROUNDS; round++) {
      const weld = await timesRealTime();
      const after = stencil();
      ratios.push((2 * weld) / (before + after));
      before = after;
    }
    return median(ratios);
  } finally {
    rmSync(dir, { recursive: true, force: true });
  }
}

/** Interleaves the contestants: each is timed in turn, the medians are quoted. */
export function benchKernels(): KernelFigures {
  const image = takeImage();
  const why: Record<string, string> = {};
  const rate = (seconds: number[]): number => rateOf(image, seconds);
  const simdKernel = createSimdKernel(image.layout);
  if (!simdKernel) why.simd = 'no WebAssembly SIMD on this machine';
  const times: Record<string, number[]> = { simd: [], reference: [], c128: [], cNative: [] };
  const hashes = new Set<string>();
  let roof: KernelFigures['roof'] = null;
  const dir = mkdtempSync(join(tmpdir(), 'toehold-bench-'));
  try {
    const programs: Record<string, string> = {};
    const imageFile = join(dir, 'image.bin');
    writeImage(imageFile, image);
    for (const [name, flags] of [
      ['c128', SSE],
      ['cNative', ['-march=native']],
    ] as const) {
      try {
        programs[name] = buildC(dir, 'heat', [...flags]);
      } catch (error) {
        why[name] = `gcc could not build it: ${error instanceof Error ? error.message.split('\n')[0] : String(error)}`;
      }
    }
    try {
      roof = measureRoof(dir, image.layout);
    } catch (error) {
      why.roof = `gcc could not build roofline.c: ${error instanceof Error ? error.message.split('\n')[0] : String(error)}`;
    }
    for (let round = 0; round < 3; round++) {
      if (simdKernel) {
        const t = timeKernel(simdKernel, image);
        times.simd!.push(...t.seconds);
        hashes.add(t.hash);
      }
      for (const [name, program] of Object.entries(programs)) {
        const ran = runC(program, imageFile);
        times[name]!.push(...ran.seconds);
        hashes.add(ran.hash);
      }
      const t = timeKernel(createReferenceKernel(image.layout), image);
      times.reference!.push(...t.seconds);
      hashes.add(t.hash);
    }
  } finally {
    rmSync(dir, { recursive: true, force: true });
  }
  const figure = (name: string): number | null => (times[name]!.length > 0 ? rate(times[name]!) : null);
  return {
    simd: figure('simd'),
    reference: rate(times.reference!),
    c128: figure('c128'),
    cNative: figure('cNative'),
    sameBits: hashes.size === 1,
    roof,
    why,
  };
}
