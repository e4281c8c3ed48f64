/**
 * The readable kernel. Every operation is rounded to f32 (`Math.fround`) in the order the SIMD twin uses, so the two agree bit for
 * bit. f32 was chosen because four cells fit a 128-bit register and twice as many stay in cache; the small increments f32 would
 * lose are carried in `residual` (Kahan), so accounts still close.
 */
import { INV_STEP_F32, TABLE_STEPS } from '../physics/steel.ts';
import {
  COEFFICIENT,
  COEFFICIENT_WORDS,
  firstCell,
  GAP,
  GAP_WORDS,
  type HeatKernel,
  type KernelLayout,
  LEAST_FILL,
  PROGRAM,
  PROGRAM_WORDS,
  ROD,
} from './layout.ts';

const f = Math.fround;
const LEAST = f(LEAST_FILL);

/** One closure over the fields it steps, in the order of the SIMD kernel that is its twin: the two are read side by side. */
export function createReferenceKernel(layout: KernelLayout): HeatKernel {
  const memory = new ArrayBuffer((layout.bytes + 65535) & ~65535);
  const { count, ny, stride, listLength } = layout;
  const field = count * stride;
  const H = new Float32Array(memory, layout.enthalpy, field);
  const R = new Float32Array(memory, layout.residual, field);
  const T = new Float32Array(memory, layout.potential, field);
  const P = new Float32Array(memory, layout.fill, field);
  const K = new Float32Array(memory, layout.peak, field);
  const table = new Float32Array(memory, layout.table, 2 * TABLE_STEPS);
  const lossTable = new Float32Array(memory, layout.lossTable, 2 * TABLE_STEPS);
  const temperatureTable = new Float32Array(memory, layout.temperatureTable, 2 * TABLE_STEPS);
  const gapCells = new Int32Array(memory, layout.gaps, layout.gapCount * GAP_WORDS);
  const gapNumbers = new Float32Array(memory, layout.gaps, layout.gapCount * GAP_WORDS);
  const flux = new Float64Array(memory, layout.flux, count);
  const program = new Int32Array(memory, layout.program, count * PROGRAM_WORDS);
  const coefficient = new Float32Array(memory, layout.coefficient, count * COEFFICIENT_WORDS);
  const listRod = new Int32Array(memory, layout.listRod, listLength);
  const tileOf = new Int32Array(memory, layout.tileOf, count);
  const gain = new Float64Array(memory, layout.crossingGain, count);
  const beyond = new Float64Array(memory, layout.tilePotential, layout.tiles);
  const crossing = new Float64Array(memory, layout.tileCrossing, layout.tiles);
  const listC = new Float32Array(memory, layout.listCoefficient, listLength);

  return {
    name: 'reference',
    memory,
    flux,
    potential(j0, j1) {
      for (let r = 0; r < count; r++) {
        if (program[r * PROGRAM_WORDS] === ROD.SKIP) continue;
        const base = firstCell(layout, r);
        for (let c = base + j0; c < base + j1; c++) {
          const h = H[c]!;
          T[c] = read(table, h);
          if (h > K[c]!) K[c] = h;
        }
        T[base - 1] = T[base]!;
        T[base + ny] = T[base + ny - 1]!;
      }
    },
    join(j, out, first, share) {
      for (let r = 0; r < count; r++) {
        const flag = program[r * PROGRAM_WORDS]!;
        if (flag === ROD.SKIP) continue;
        const base = firstCell(layout, r);
        const at = first + tileOf[r]!;
        const here = T[base + j]!;
        const ghost = f(here + share * (beyond[at]! - here));
        T[base + out] = ghost;
        const through = flag === ROD.FULL ? 1 : Math.min(P[base + j]!, P[base + out]!);
        crossing[at]! -= gain[r]! * through * (ghost - here);
      }
    },
    conduct(j0, j1) {
      for (let r = 0; r < count; r++) {
        const flag = program[r * PROGRAM_WORDS]!;
        if (flag === ROD.SKIP) continue;
        const base = firstCell(layout, r);
        const w = r * PROGRAM_WORDS;
        const q = r * COEFFICIENT_WORDS;
        const n0 = program[w + PROGRAM.NEIGHBOUR]!;
        const n1 = program[w + PROGRAM.NEIGHBOUR + 1]!;
        const n2 = program[w + PROGRAM.NEIGHBOUR + 2]!;
        const n3 = program[w + PROGRAM.NEIGHBOUR + 3]!;
        const c0 = coefficient[q]!;
        const c1 = coefficient[q + 1]!;
        const c2 = coefficient[q + 2]!;
        const c3 = coefficient[q + 3]!;
        const cy = coefficient[q + COEFFICIENT.ALONG]!;
        const listStart = program[w + PROGRAM.LIST_START]!;
        const listEnd = listStart + program[w + PROGRAM.LIST_LENGTH]!;
        for (let j = j0; j < j1; j++) {
          const c = base + j;
          const t = T[c]!;
          let sum: number;
          if (flag === ROD.PARTIAL) {
            const p = P[c]!;
            const f0 = f(f(c0 * Math.min(p, P[n0 + j]!)) * f(T[n0 + j]! - t));
            const f1 = f(f(c1 * Math.min(p, P[n1 + j]!)) * f(T[n1 + j]! - t));
            const f2 = f(f(c2 * Math.min(p, P[n2 + j]!)) * f(T[n2 + j]! - t));
            const f3 = f(f(c3 * Math.min(p, P[n3 + j]!)) * f(T[n3 + j]! - t));
            const below = f(Math.min(p, P[c - 1]!) * f(T[c - 1]! - t));
            const above = f(Math.min(p, P[c + 1]!) * f(T[c + 1]! - t));
            sum = f(f(f(f0 + f1) + f(f2 + f3)) + f(cy * f(below + above)));
            sum = f(sum / Math.max(p, LEAST));
          } else {
            const f0 = f(c0 * f(T[n0 + j]! - t));
            const f1 = f(c1 * f(T[n1 + j]! - t));
            const f2 = f(c2 * f(T[n2 + j]! - t));
            const f3 = f(c3 * f(T[n3 + j]! - t));
            sum = f(f(f(f0 + f1) + f(f2 + f3)) + f(cy * f(f(T[c - 1]! - t) + f(T[c + 1]! - t))));
            for (let l = listStart; l < listEnd; l++) sum = f(sum + f(listC[l]! * f(T[listRod[l]! + j]! - t)));
          }
          const y = f(sum + R[c]!);
          const h = H[c]!;
          const next = f(h + y);
          R[c] = f(y - f(next - h));
          H[c] = next;
        }
      }
    },
    faying(j0, j1) {
      for (let at = 0; at < gapCells.length; at += GAP_WORDS) {
        const first = gapCells[at + GAP.FIRST]!;
        const across = gapCells[at + GAP.SECOND]! - first;
        const shape = gapNumbers[at + GAP.SHAPE]!;
        const open = gapNumbers[at + GAP.OPEN]!;
        const riseP = gapNumbers[at + GAP.RISE_P]!;
        const riseQ = gapNumbers[at + GAP.RISE_Q]!;
        const solidus = gapNumbers[at + GAP.SOLIDUS]!;
        for (let p = first + j0; p < first + j1; p++) {
          const q = p + across;
          const fillP = P[p]!;
          const fillQ = P[q]!;
          const through = Math.min(fillP, fillQ);
          const solid = f(shape * f(T[q]! - T[p]!));
          const gapped = f(open * f(read(temperatureTable, H[q]!) - read(temperatureTable, H[p]!)));
          const joined = K[p]! > solidus && K[q]! > solidus;
          let flow = joined || Math.abs(gapped) >= Math.abs(solid) ? solid : gapped;
          if (through < LEAST) flow = 0;
          H[p] = f(H[p]! + f(f(riseP * flow) * f(through / Math.max(fillP, LEAST))));
          H[q] = f(H[q]! - f(f(riseQ * flow) * f(through / Math.max(fillQ, LEAST))));
        }
      }
    },
    cool(j0, j1, time) {
      for (let r = 0; r < count; r++) {
        flux[r] = 0;
        const share = coefficient[r * COEFFICIENT_WORDS + COEFFICIENT.LOSS]!;
        if (share === 0 || program[r * PROGRAM_WORDS] === ROD.SKIP) continue;
        const k = f(f(time) * share);
        const base = firstCell(layout, r);
        // Four running sums, as the twin's lanes.
        const sums = [0, 0, 0, 0];
        for (let j = j0; j < j1; j++) {
          const c = base + j;
          const p = P[c]!;
          if (p <= 0) continue;
          const off = read(lossTable, H[c]!);
          H[c] = f(H[c]! - f(k * off));
          sums[(j - j0) & 3]! += f(off * p);
        }
        flux[r] = sums[0]! + sums[1]! + (sums[2]! + sums[3]!);
      }
    },
  };
}

/** A table's value at enthalpy h, in f32. */
function read(pairs: Float32Array, h: number): number {
  const x = f(h * INV_STEP_F32);
  let i = x | 0;
  if (i < 0) i = 0;
  else if (i > TABLE_STEPS - 1) i = TABLE_STEPS - 1;
  return f(pairs[2 * i]! + f(f(x - i) * pairs[2 * i + 1]!));
}
