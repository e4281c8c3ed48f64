/**
 * `npm run bench [-- --json FILE] [--record]`: every speed figure of the project in one run. Ratios are taken within the run; absolute
 * figures belong to the machine named beside them. Needs the built library and, for the page, the built game (`npm run build`).
 */
import { execFileSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { cpus, totalmem } from 'node:os';
import { fileURLToPath } from 'node:url';
import { benchKernels, benchPace } from './kernels.ts';
import { benchPage } from './page.ts';
import { benchWelds, standardWelder } from './welds.ts';

/** Bytes moved and operations done per cell update of a full rod, for its place under the roofline. */
const BYTES_PER_CELL = 4 * (2 + 1 + 2 + 1 + 5 + 2 + 2);
const OPERATIONS_PER_CELL = 5 + 18 + 4;

const root = fileURLToPath(new URL('../../..', import.meta.url));
execFileSync(process.execPath, ['node_modules/typescript-native/bin/tsc', '-p', 'tsconfig.lib.json'], { cwd: root });

const kernels = benchKernels();
const welds = await benchWelds();
const welder = standardWelder();
const pace = await benchPace(welder.timesRealTime);
await welder.stop();
const page = await benchPage();
const ratio = (a: number | null, b: number | null): number | null => (a !== null && b !== null ? a / b : null);
/** Million cell updates a second that the machine's operations or its bytes allow, whichever are fewer. */
const roof =
  kernels.roof === null
    ? null
    : 1000 * Math.min(kernels.roof.operations / OPERATIONS_PER_CELL, kernels.roof.bytes / BYTES_PER_CELL);
const result = {
  machine: {
    cpu: cpus()[0]?.model ?? 'unknown',
    cores: cpus().length,
    memory_GB: Math.round(totalmem() / 1e9),
    node: process.version,
  },
  kernels: { simd: kernels.simd, reference: kernels.reference, c128: kernels.c128, cNative: kernels.cNative },
  sameBits: kernels.sameBits,
  roof: kernels.roof,
  ratios: {
    simdToC128: ratio(kernels.simd, kernels.c128),
    simdToCNative: ratio(kernels.simd, kernels.cNative),
    simdToRoof: ratio(kernels.simd, roof),
    c128ToRoof: ratio(kernels.c128, roof),
    realTimeToC128: pace,
  },
  realTimeFactor: welds.realTimeFactor,
  realTimeFactorWorst: welds.realTimeFactorWorst,
  workers2: welds.workers2,
  costMsPerSecond: welds.costMsPerSecond,
  costRatio240to30: welds.costRatio240to30,
  heap_MB: welds.heap_MB,
  stretchMs: welds.stretchMs,
  page: {
    mainThreadMs: page.mainThreadMs,
    workerShare: page.workerShare,
    frameMs: page.frameMs,
    inputMs: page.inputMs,
    inputFrames: page.inputFrames,
    firstLoadKb: page.firstLoadKb,
  },
  why: { ...kernels.why, ...page.why },
};

const show = (value: number | null, digits = 2): string => (value === null ? 'not taken' : value.toFixed(digits));
const lines = [
  `| figure | value | target |`,
  `|---|---|---|`,
  `| SIMD kernel, Mcell/s | ${show(result.kernels.simd, 0)} | |`,
  `| reference kernel, Mcell/s | ${show(result.kernels.reference, 0)} | |`,
  `| C, 128-bit, Mcell/s | ${show(result.kernels.c128, 0)} | |`,
  `| C, native, Mcell/s | ${show(result.kernels.cNative, 0)} | |`,
  `| SIMD to 128-bit C | ${show(result.ratios.simdToC128)} | 0.85 |`,
  `| SIMD to native C | ${show(result.ratios.simdToCNative)} | 0.40 |`,
  `| measured roof, 128-bit: Gflop/s and GB/s over arrays of this size | ${show(result.roof?.operations ?? null, 1)} and ${show(result.roof?.bytes ?? null, 0)} | |`,
  `| share of that roof: SIMD kernel, C 128-bit | ${show(result.ratios.simdToRoof)}, ${show(result.ratios.c128ToRoof)} | |`,
  `| same bits in all four | ${result.sameBits ? 'yes' : 'NO'} | yes |`,
  `| standard 30 s run, times real time, median (worst) | ${show(result.realTimeFactor, 1)} (${show(result.realTimeFactorWorst, 1)}) | 60 |`,
  `| times real time over C 128-bit Mcell/s | ${show(result.ratios.realTimeToC128, 3)} | 0.15 |`,
  `| ms of one core per welded second at 30 / 60 / 120 / 240 mm | ${['30', '60', '120', '240'].map((l) => show(result.costMsPerSecond[l]!, 1)).join(' / ')} | |`,
  `| cost per second at 240 mm over 30 mm | ${show(result.costRatio240to30)} | 1.3 |`,
  `| two workers over one | ${show(result.workers2)} | 1.8 |`,
  `| 20 mm welded anew for *what if*, ms: where the piece was welded, and as a thread's first work | ${show(result.stretchMs.warm, 0)} and ${show(result.stretchMs.cold, 0)} | 500 |`,
  `| heap and buffers of one weld, MB | ${show(result.heap_MB, 0)} | |`,
  `| main thread, all tasks, a frame while welding, ms | ${show(result.page.mainThreadMs)} | 4 |`,
  `| Worker while welding, share of one core | ${show(result.page.workerShare)} | 0.33 |`,
  `| time between frames, drawn by the processor, ms | ${show(result.page.frameMs, 1)} | |`,
  `| pointer event to the frame that shows it, ms, median and p95 | ${show(result.page.inputMs?.median ?? null, 1)} and ${show(result.page.inputMs?.p95 ?? null, 1)} | |`,
  `| the same in frames | ${show(result.page.inputFrames?.median ?? null, 0)} and ${show(result.page.inputFrames?.p95 ?? null, 0)} | 1 |`,
  `| first load without the Worker, kB gzip | ${show(result.page.firstLoadKb, 0)} | 380 |`,
];
process.stdout.write(`${lines.join('\n')}\n`);
for (const [name, reason] of Object.entries(result.why)) process.stdout.write(`${name}: ${reason}\n`);

const jsonAt = process.argv.indexOf('--json');
if (jsonAt >= 0) writeFileSync(process.argv[jsonAt + 1] ?? 'bench.json', `${JSON.stringify(result, null, 2)}\n`);
if (process.argv.includes('--record')) {
  const { cpu, cores, memory_GB, node } = result.machine;
  writeFileSync(
    new URL('RESULTS.md', import.meta.url),
    `# Benchmark results\n\nMade by \`npm run bench -- --record\` on ${cpu}, ${cores} cores, ${memory_GB} GB, Node ${node}. Shared machine: quote ratios.\n\n${lines.join('\n')}\n\n` +
      `What limits. Kernel: a full-rod cell update moves about ${BYTES_PER_CELL} bytes (a window of the joint fits the second-level cache) and does about ${OPERATIONS_PER_CELL} f32 operations; the potential's table look-up is four scalar loads a vector in every version, so wider vectors (native C) gain less than their width. Whole weld: about a third of the time is in the heat kernels, a twelfth in the surface kernel; the rest is spread thinly over arc footprint, liquid set, contact lines, metal moved, faces and accounts in TypeScript, none much above a twentieth. One run is not split over threads: a tick of the fine window takes some 30 µs, less than waking two threads twice would cost. Many runs: one thread each.\n`,
  );
}
