/**
 * Where the heat state lies in one linear memory, so that a plain-TypeScript kernel and its SIMD twin work on the same bytes. The twin's
 * constants are made from these (simd/constants.ts, by `npm run build:kernel`; a test checks that they are current).
 *
 * Field arrays (f32) hold `count` rods of `stride` cells; cell j of rod r is at r * stride + PAD + j. The cell before the first and
 * the cell after the last are guards that copy their neighbour: ends of the joint conduct nothing.
 */
import { TABLE_STEPS } from '../physics/steel.ts';

/** Cells before the first real one: keeps rods 16-byte aligned and leaves room for the guard. */
export const PAD = 4;

/** What a rod does this step. */
export const ROD = { SKIP: 0, FULL: 1, PARTIAL: 2, LIST: 3 } as const;

/** Program words per rod and what they hold: flag, four neighbours (first cell, in floats), list start and length. */
export const PROGRAM_WORDS = 8;
export const PROGRAM = { FLAG: 0, NEIGHBOUR: 1, LIST_START: 5, LIST_LENGTH: 6 } as const;
/** Coefficients per rod: four slots, along y, outer face over mass along y (mm²/g). */
export const COEFFICIENT_WORDS = 8;
export const COEFFICIENT = { SLOT: 0, ALONG: 4, LOSS: 5 } as const;
/**
 * Words per faying face: first cell of either rod (integers); face width over distance, gap conductance x width (W/(mm K)), rise of either
 * side for a unit of flow a tick, solidus (f32).
 */
export const GAP_WORDS = 8;
export const GAP = { FIRST: 0, SECOND: 1, SHAPE: 2, OPEN: 3, RISE_P: 4, RISE_Q: 5, SOLIDUS: 6 } as const;
export const TABLE_WORDS = 2 * TABLE_STEPS;
/** Fill below this share of a cell is treated as this share's heat capacity. */
export const LEAST_FILL = 1e-3;

export interface KernelLayout {
  count: number;
  ny: number;
  stride: number;
  listLength: number;
  gapCount: number;
  tiles: number;
  /** Byte offsets. */
  enthalpy: number;
  residual: number;
  potential: number;
  fill: number;
  peak: number;
  table: number;
  lossTable: number;
  temperatureTable: number;
  program: number;
  coefficient: number;
  listRod: number;
  listCoefficient: number;
  gaps: number;
  flux: number;
  /** Tile of each rod (i32), and what is joined at the fine region's ends; named as in state/fields.ts (f64). */
  tileOf: number;
  crossingGain: number;
  tilePotential: number;
  tileCrossing: number;
  bytes: number;
}

/** Index of a rod's first cell in every heat field; slice j is j further. */
export function firstCell(layout: Pick<KernelLayout, 'stride'>, rod: number): number {
  return rod * layout.stride + PAD;
}

/** Which kernel runs; 'auto' takes the SIMD twin where the machine has it. Results do not depend on it. */
export type KernelChoice = 'auto' | 'reference' | 'simd';

const align = (n: number): number => (n + 63) & ~63;

/** @param tiles of all coarse blocks; none where the whole piece is fine */
export function planLayout(
  count: number,
  ny: number,
  listLength: number,
  gapCount: number,
  tiles: number,
): KernelLayout {
  const stride = ((ny + 3) & ~3) + 2 * PAD;
  const field = align(count * stride * 4);
  let at = 1024;
  const take = (bytes: number): number => {
    const start = at;
    at += align(bytes);
    return start;
  };
  return {
    count,
    ny,
    stride,
    listLength,
    gapCount,
    tiles,
    enthalpy: take(field),
    residual: take(field),
    potential: take(field),
    fill: take(field),
    peak: take(field),
    table: take(TABLE_WORDS * 4),
    lossTable: take(TABLE_WORDS * 4),
    temperatureTable: take(TABLE_WORDS * 4),
    program: take(count * PROGRAM_WORDS * 4),
    coefficient: take(count * COEFFICIENT_WORDS * 4),
    listRod: take(listLength * 4),
    listCoefficient: take(listLength * 4),
    gaps: take(gapCount * GAP_WORDS * 4),
    flux: take(count * 8),
    tileOf: take(count * 4),
    crossingGain: take(count * 8),
    tilePotential: take(tiles * 8),
    tileCrossing: take(tiles * 8),
    bytes: at,
  };
}

/** What runs every tick over all rods. Both twins must give the same bits. */
export interface HeatKernel {
  readonly name: 'reference' | 'simd';
  readonly memory: ArrayBuffer;
  /** Enthalpy to potential, and peaks, for slices [j0, j1); j0 a multiple of 4. */
  potential(j0: number, j1: number): void;
  /**
   * Joins slice `j`, an end of the fine region, to the coarse block beyond whose tiles begin at `first`: sets the potentials of slice `out`,
   * the guard beside it, that `share` of the way from the fine cell to the tile, and counts what crosses to each tile in this tick. Between
   * `potential` and `conduct`.
   */
  join(j: number, out: number, first: number, share: number): void;
  /** One explicit conduction step for slices [j0, j1); j0 a multiple of 4. */
  conduct(j0: number, j1: number): void;
  /**
   * Heat across the faying faces for slices [j0, j1), after `conduct`: gap conductance until both sides there have melted, then like
   * solid metal; never more than solid metal would carry. j0 a multiple of 4.
   */
  faying(j0: number, j1: number): void;
  /**
   * Takes `time` seconds of loss to the room off the outer faces of slices [j0, j1); j0 a multiple of 4. A part-filled cell shows as much
   * of its face as it is filled. `flux[r]` becomes the sum of the fluxes off rod r's faces, W/mm², 0 where it has none.
   */
  cool(j0: number, j1: number, time: number): void;
  /** Per rod, what `cool` counted. */
  readonly flux: Float64Array;
}
