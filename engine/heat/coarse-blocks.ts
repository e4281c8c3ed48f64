/**
 * Calm lengths of the joint in coarse cells. Far from the arc the section has levelled out: there each block of four slices is a row
 * of tiles, stepped every 50 ms, and only a window round the arc and the liquid is computed in fine cells every tick. So a second of
 * welding costs the same on a long coupon as on a short one.
 *
 *      coarse  coarse | fine fine fine (arc) fine | coarse  coarse      y ->
 *
 * Both sides of the window's ends are given the same flux, counted once, so the energy account stays closed. Fills, heights and peaks
 * stay fine everywhere; a coarse block cannot melt or pass Ac1, so peaks lose nothing.
 */

import { planTiles, type TilePair, type TilePlan } from '../grid/tiles.ts';
import { POSE_RATE_HZ } from '../input/pose.ts';
import { COEFFICIENT_WORDS, LEAST_FILL, PAD } from '../kernel/layout.ts';
import { DENSITY_GPMM3, lookup } from '../physics/steel.ts';
import { columnArea, topCell } from '../state/metal.ts';
import type { State } from '../state/state.ts';

/** Slices in a block: one SIMD vector. */
export const BLOCK = 4;
/** Poses between coarse steps. */
export const CALM_INTERVAL = 5;
/** No face may move more than this share of what would level it in one step (explicit stability, with eight faces a tile). */
const FACE_SHARE = 0.11;
/** Least specific heat of solid steel, J/gK (EN 1993-1-2 at 20 °C): what a faying face may move is limited by it. */
const LEAST_HEAT_JPGK = 0.425;

export interface CalmState {
  tiles: TilePlan;
  blocks: number;
  /** 1 where the block is coarse. Fine blocks form one run. */
  coarse: Uint8Array;
  /** 0 where a coarse block is as cold as room and plate were and heat has not come near: nothing to step. */
  awake: Uint8Array;
  /** Tiles that touch, two numbers a pair; and those across the faying face. */
  pairs: Int32Array;
  gaps: Int32Array;
  /** Per block and tile, index block * tiles.count + tile: enthalpy J/g, mass g, metal area mm², outer face mm². */
  H: Float64Array;
  mass: Float64Array;
  area: Float64Array;
  face: Float64Array;
  /** Per block and pair: conductance mm (times potential difference gives W); then faying pairs, W/K and mm. */
  conduct: Float64Array;
  gapOpen: Float64Array;
  gapMelted: Float64Array;
  /** Heat that crossed the window's ends since the last coarse step, J, and the coarse potential seen there, W/mm. */
  crossing: Float64Array;
  /** Per rod, J a tick for each W/mm across a window's end. */
  crossingGain: Float64Array;
  potential: Float64Array;
}

export function allocateCalm(s: State): CalmState {
  const tiles = planTiles(s.plan);
  const blocks = Math.ceil(s.plan.ny / BLOCK);
  const n = blocks * tiles.count;
  const calm: CalmState = {
    tiles,
    blocks,
    coarse: new Uint8Array(blocks).fill(1),
    awake: new Uint8Array(blocks).fill(s.startH === Math.fround(s.ambientH) ? 0 : 1),
    pairs: Int32Array.from(tiles.pairs.flatMap(({ p, q }) => [p, q])),
    gaps: Int32Array.from(tiles.gaps.flatMap(({ p, q }) => [p, q])),
    H: new Float64Array(n).fill(s.startH),
    mass: new Float64Array(n),
    area: new Float64Array(n),
    face: new Float64Array(n),
    conduct: new Float64Array(blocks * tiles.pairs.length),
    gapOpen: new Float64Array(blocks * tiles.gaps.length),
    gapMelted: new Float64Array(blocks * tiles.gaps.length),
    crossing: new Float64Array(n),
    crossingGain: Float64Array.from(
      s.plan.rods.area_mm2,
      (area, rod) => s.coefficients[rod * COEFFICIENT_WORDS + 4]! * area * s.plan.dy * DENSITY_GPMM3,
    ),
    potential: new Float64Array(n).fill(lookup(s.heat.table.potential, s.startH)),
  };
  for (let block = 0; block < blocks; block++) measureBlock(s, calm, block);
  return calm;
}

export function slicesOf(s: State, block: number): { from: number; to: number } {
  return { from: block * BLOCK, to: Math.min(s.plan.ny, (block + 1) * BLOCK) };
}

/** Masses, areas and conductances of a block's tiles from the fine fills. */
function measureBlock(s: State, calm: CalmState, block: number): void {
  const { plan, heat } = s;
  const { tiles } = calm;
  const { from, to } = slicesOf(s, block);
  const base = block * tiles.count;
  const first = (rod: number): number => rod * heat.layout.stride + PAD;
  for (let tile = 0; tile < tiles.count; tile++) {
    let volume = 0;
    for (const rod of tiles.rods[tile]!)
      for (let j = from; j < to; j++) volume += heat.fill[first(rod) + j]! * plan.rods.area_mm2[rod]!;
    calm.area[base + tile] = volume / (to - from);
    calm.mass[base + tile] = volume * plan.dy * DENSITY_GPMM3;
    calm.face[base + tile] = tiles.exposed_mm[tile]! * (to - from) * plan.dy;
  }
  const touching = (pair: TilePair, melted: number): number => {
    let width = 0;
    for (const f of pair.faces) {
      for (let j = from; j < to; j++) {
        const p = first(f.rodP) + j;
        const q = first(f.rodQ) + j;
        if (melted >= 0) {
          const both = heat.peak[p]! > heat.table.solidus_JPG && heat.peak[q]! > heat.table.solidus_JPG;
          if (both !== (melted === 1)) continue;
        }
        width += f.width_mm * Math.min(heat.fill[p]!, heat.fill[q]!);
      }
    }
    return width * plan.dy;
  };
  const limit = FACE_SHARE / (heat.table.steepest * (CALM_INTERVAL / POSE_RATE_HZ));
  const stable = (wanted: number, p: number, q: number): number =>
    Math.min(wanted, limit * Math.min(calm.mass[base + p]!, calm.mass[base + q]!));
  tiles.pairs.forEach((pair, n) => {
    calm.conduct[block * tiles.pairs.length + n] = stable(touching(pair, -1) / pair.distance_mm, pair.p, pair.q);
  });
  tiles.gaps.forEach((pair, n) => {
    const at = block * tiles.gaps.length + n;
    const lighter = Math.min(calm.mass[base + pair.p]!, calm.mass[base + pair.q]!);
    calm.gapOpen[at] = Math.min(
      touching(pair, 0) * s.cal.gapConductance,
      (FACE_SHARE * lighter * LEAST_HEAT_JPGK * POSE_RATE_HZ) / CALM_INTERVAL,
    );
    calm.gapMelted[at] = stable(touching(pair, 1) / pair.distance_mm, pair.p, pair.q);
  });
  measureFace(s, calm, block, from, to);
}

/** The welded face belongs to the tiles that hold the surface. */
function measureFace(s: State, calm: CalmState, block: number, from: number, to: number): void {
  const { plan, w } = s;
  const { nu, ny, du, dy } = plan;
  const area = columnArea(s);
  for (let c = 0; c < nu; c++) {
    const left = c > 0 ? c - 1 : c;
    const right = c < nu - 1 ? c + 1 : c;
    for (let j = from; j < to; j++) {
      const i = c * ny + j;
      const rod = plan.stack[plan.stackStart[c]! + topCell(s, c, w[i]!)]!;
      const wu = (w[right * ny + j]! - w[left * ny + j]!) / ((right - left) * du);
      const up = j < ny - 1 ? i + 1 : i;
      const down = j > 0 ? i - 1 : i;
      const wy = (w[up]! - w[down]!) / ((up - down) * dy);
      calm.face[block * calm.tiles.count + calm.tiles.of[rod]!]! += area * Math.sqrt(1 + wu * wu + wy * wy);
    }
  }
}

/** Fine to coarse: every tile takes the mean enthalpy of its metal. */
export function coarsen(s: State, block: number): void {
  const { calm, heat, plan } = s;
  const { tiles } = calm;
  const { from, to } = slicesOf(s, block);
  measureBlock(s, calm, block);
  for (let tile = 0; tile < tiles.count; tile++) {
    const at = block * tiles.count + tile;
    let sum = 0;
    for (const rod of tiles.rods[tile]!) {
      const cell = rod * heat.layout.stride + PAD;
      for (let j = from; j < to; j++) sum += heat.H[cell + j]! * heat.fill[cell + j]! * plan.rods.area_mm2[rod]!;
    }
    calm.H[at] = calm.mass[at]! > 0 ? (sum * plan.dy * DENSITY_GPMM3) / calm.mass[at]! : s.startH;
    calm.crossing[at] = 0;
    calm.potential[at] = lookup(heat.table.potential, calm.H[at]!);
  }
  calm.coarse[block] = 1;
  calm.awake[block] = 1;
}

/** Coarse to fine: every cell takes its tile's enthalpy, and what has crossed the window's end since the last coarse step. */
export function refine(s: State, block: number): void {
  const { calm, heat } = s;
  const { tiles } = calm;
  const { from, to } = slicesOf(s, block);
  for (let tile = 0; tile < tiles.count; tile++) {
    const at = block * tiles.count + tile;
    if (calm.mass[at]! > 0) calm.H[at]! += calm.crossing[at]! / calm.mass[at]!;
    calm.crossing[at] = 0;
    for (const rod of tiles.rods[tile]!) {
      const cell = rod * heat.layout.stride + PAD;
      for (let j = from; j < to; j++) {
        heat.H[cell + j] = calm.H[at]!;
        heat.residual[cell + j] = 0;
      }
    }
  }
  // f32 rounding of the copies is not lost: what they hold differs from the tile by less than one part in 10^7.
  calm.coarse[block] = 0;
}

/** Largest spread of enthalpy inside any tile of the block, and the hottest cell, J/g. */
export function unrest(s: State, block: number): { spread: number; hottest: number } {
  const { calm, heat } = s;
  const { from, to } = slicesOf(s, block);
  let spread = 0;
  let hottest = Number.NEGATIVE_INFINITY;
  for (const list of calm.tiles.rods) {
    let low = Number.POSITIVE_INFINITY;
    let high = Number.NEGATIVE_INFINITY;
    for (const rod of list) {
      if (heat.holding[rod] === 0) continue;
      const cell = rod * heat.layout.stride + PAD;
      for (let j = from; j < to; j++) {
        if (heat.fill[cell + j]! < LEAST_FILL) continue;
        const h = heat.H[cell + j]!;
        if (h < low) low = h;
        if (h > high) high = h;
      }
    }
    if (high - low > spread) spread = high - low;
    if (high > hottest) hottest = high;
  }
  return { spread, hottest };
}

/** Enthalpy of the hottest tile of a coarse block, J/g. */
export function hottestTile(s: State, block: number): number {
  const { count } = s.calm.tiles;
  let hottest = Number.NEGATIVE_INFINITY;
  for (let at = block * count; at < (block + 1) * count; at++)
    if (s.calm.mass[at]! > 0 && s.calm.H[at]! > hottest) hottest = s.calm.H[at]!;
  return hottest;
}

/** Heat above 20 °C in the coarse blocks, J. */
export function calmEnergy(s: State): number {
  const { calm } = s;
  let sum = 0;
  for (let block = 0; block < calm.blocks; block++) {
    if (!calm.coarse[block]) continue;
    for (let at = block * calm.tiles.count; at < (block + 1) * calm.tiles.count; at++)
      sum += calm.H[at]! * calm.mass[at]! + calm.crossing[at]!;
  }
  return sum;
}
