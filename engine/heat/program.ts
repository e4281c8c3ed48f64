/** The metal in a kernel's memory, and the program the kernels run by. */

import type { RodPlan } from '../grid/rods.ts';
import {
  COEFFICIENT,
  COEFFICIENT_WORDS,
  firstCell,
  GAP,
  GAP_WORDS,
  type KernelChoice,
  PROGRAM,
  PROGRAM_WORDS,
  planLayout,
  ROD,
} from '../kernel/layout.ts';
import { createReferenceKernel } from '../kernel/reference.ts';
import { createSimdKernel } from '../kernel/simd.ts';
import { DENSITY_GPMM3, type MaterialTable } from '../physics/steel.ts';
import { dimsOf, makeArrays, makeProgram } from '../state/allocate.ts';
import type { HeatState } from '../state/state.ts';

export interface HeatPieces {
  rods: RodPlan;
  ny: number;
  dy: number;
  dt: number;
  table: MaterialTable;
  /** Flux off a face over enthalpy (losses.ts). */
  losses: Float32Array;
  /** Across a faying face, W/(mm² K). */
  gapConductance: number;
  /** Metal share of each rod at the start. */
  fill: Float64Array;
  startH: number;
  /** Tiles of all coarse blocks; 0 where the whole piece is fine. */
  tiles: number;
  kernel: KernelChoice;
}

/** Lays the metal out in a kernel's memory, cold, with the program the kernel runs by. */
export function layHeat(pieces: HeatPieces): HeatState {
  const { rods, ny, dt, table, losses, startH } = pieces;
  const lists = rods.lists.reduce((n, l) => n + l.neighbours.length, 0);
  const layout = planLayout(rods.count, ny, Math.max(1, lists), rods.gaps.length, pieces.tiles);
  const simd = pieces.kernel === 'reference' ? null : createSimdKernel(layout);
  if (pieces.kernel === 'simd' && !simd) throw new Error('this machine has no WebAssembly SIMD');
  const kernel = simd ?? createReferenceKernel(layout);
  const m = kernel.memory;
  const arrays = makeArrays('heat', dimsOf({ nu: 0, ny }, layout), { memory: m, layout });
  const { H, residual, potential, fill, peak, notFull, holding } = arrays;
  const state: HeatState = {
    H,
    residual,
    potential,
    fill,
    peak,
    notFull,
    holding,
    kernel,
    layout,
    table,
    program: makeProgram(m, layout),
    beside: rods.slot.map((n, at) => (n < 0 ? at >> 2 : n)),
    flagsStale: true,
    dt,
  };
  new Float32Array(m, layout.table, table.potential.length).set(table.potential);
  new Float32Array(m, layout.lossTable, losses.length).set(losses);
  new Float32Array(m, layout.temperatureTable, table.temperature.length).set(table.temperature);
  writeProgram(state, rods, pieces.dy, dt);
  writeGaps(state, pieces);
  state.H.fill(startH);
  state.peak.fill(startH);
  for (let r = 0; r < rods.count; r++) {
    const base = firstCell(layout, r);
    state.fill.fill(pieces.fill[r]!, base - 1, base + ny + 1);
    state.notFull[r] = pieces.fill[r]! < 1 ? ny : 0;
    state.holding[r] = pieces.fill[r]! > 0 ? ny : 0;
  }
  refreshFlags(state);
  return state;
}

function writeProgram(state: HeatState, rods: RodPlan, dy: number, dt: number): void {
  const { layout } = state;
  const coefficient = new Float32Array(state.kernel.memory, layout.coefficient, layout.count * COEFFICIENT_WORDS);
  const listRod = new Int32Array(state.kernel.memory, layout.listRod, layout.listLength);
  const listC = new Float32Array(state.kernel.memory, layout.listCoefficient, layout.listLength);
  for (let r = 0; r < rods.count; r++) {
    const scale = dt / (DENSITY_GPMM3 * rods.area_mm2[r]!);
    for (let s = 0; s < 4; s++) {
      const isThere = rods.slot[4 * r + s]! >= 0;
      state.program[r * PROGRAM_WORDS + PROGRAM.NEIGHBOUR + s] = firstCell(layout, state.beside[4 * r + s]!);
      coefficient[r * COEFFICIENT_WORDS + COEFFICIENT.SLOT + s] = isThere ? scale * rods.shape[4 * r + s]! : 0;
    }
    coefficient[r * COEFFICIENT_WORDS + COEFFICIENT.ALONG] = dt / (DENSITY_GPMM3 * dy * dy);
    coefficient[r * COEFFICIENT_WORDS + COEFFICIENT.LOSS] = rods.exposed_mm[r]! / (DENSITY_GPMM3 * rods.area_mm2[r]!);
  }
  let at = 0;
  for (const list of rods.lists) {
    const w = list.rod * PROGRAM_WORDS;
    state.program[w + PROGRAM.LIST_START] = at;
    state.program[w + PROGRAM.LIST_LENGTH] = list.neighbours.length;
    list.neighbours.forEach((n, k) => {
      listRod[at] = firstCell(layout, n);
      listC[at] = (dt / (DENSITY_GPMM3 * rods.area_mm2[list.rod]!)) * list.shapes[k]!;
      at++;
    });
  }
}

function writeGaps(state: HeatState, { rods, dt, table, gapConductance }: HeatPieces): void {
  const { layout, kernel } = state;
  const cells = new Int32Array(kernel.memory, layout.gaps, layout.gapCount * GAP_WORDS);
  const numbers = new Float32Array(kernel.memory, layout.gaps, layout.gapCount * GAP_WORDS);
  rods.gaps.forEach(({ p, q, shape, width_mm }, g) => {
    const at = g * GAP_WORDS;
    const rise = (rod: number): number => dt / (rods.area_mm2[rod]! * DENSITY_GPMM3);
    cells.set([firstCell(layout, p), firstCell(layout, q)], at + GAP.FIRST);
    numbers.set([shape, gapConductance * width_mm, rise(p), rise(q), table.solidus_JPG], at + GAP.SHAPE);
  });
}

/** Chooses each rod's path in the kernel: empty, full with full neighbours, or with fills. Changes speed, never bits. */
export function refreshFlags(state: HeatState): void {
  const { program, beside, notFull, holding, layout } = state;
  for (let r = 0; r < layout.count; r++) {
    const w = r * PROGRAM_WORDS;
    let flag: number = ROD.FULL;
    if (holding[r] === 0) flag = ROD.SKIP;
    else if (program[w + PROGRAM.LIST_LENGTH]! > 0) flag = ROD.LIST;
    else {
      const b = 4 * r;
      // Counts are never negative: one test for the rod and all four.
      const missing =
        notFull[r]! |
        notFull[beside[b]!]! |
        notFull[beside[b + 1]!]! |
        notFull[beside[b + 2]!]! |
        notFull[beside[b + 3]!]!;
      if (missing > 0) flag = ROD.PARTIAL;
    }
    program[w] = flag;
  }
  state.flagsStale = false;
}
