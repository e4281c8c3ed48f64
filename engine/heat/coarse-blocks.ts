/**
 * Lengths of the joint in coarse cells. Far from the arc the section has levelled out: there each block of four slices is a row
 * of tiles, stepped every 50 ms, and only a region round the arc and the liquid is computed in fine cells every tick. So a second of
 * welding costs the same on a long coupon as on a short one.
 *
 *      coarse  coarse | fine fine fine (arc) fine | coarse  coarse      y ->
 *
 * Both sides of the fine region's ends are given the same flux, counted once, so the energy account stays closed. Fills, heights and peaks
 * stay fine everywhere; a coarse block cannot melt or pass Ac1, so peaks lose nothing.
 */
import { slopeAcross, slopeAlong, stackRod, topCell } from '../grid/columns.ts';
import type { JointPlan } from '../grid/joint.ts';
import { blockEnd, blockStart, blocksOf, type TilePair, tilesOf } from '../grid/tiles.ts';
import { POSE_RATE_HZ } from '../input/pose.ts';
import { COEFFICIENT, COEFFICIENT_WORDS, firstCell, LEAST_FILL } from '../kernel/layout.ts';
import { DENSITY_GPMM3, lookup } from '../physics/steel.ts';
import { dimsOf, makeArrays } from '../state/allocate.ts';
import type { CoarseState, HeatState, State } from '../state/state.ts';

/** Poses between coarse steps. */
export const COARSE_INTERVAL = 5;
/** No face may move more than this share of what would level it in one step (explicit stability, with eight faces a tile). */
const FACE_SHARE = 0.11;
/** Least specific heat of solid steel, J/gK (EN 1993-1-2 at 20 °C): what a faying face may move is limited by it. */
const LEAST_HEAT_JPGK = 0.425;

/** Every block coarse and at the start temperature; masses and faces are measured once the columns are laid (`measureAll`). */
export function layCoarse(plan: JointPlan, heat: HeatState, startH: number, ambientH: number): CoarseState {
  const tiles = tilesOf(plan);
  const blocks = blocksOf(plan.ny);
  const coefficient = new Float32Array(
    heat.kernel.memory,
    heat.layout.coefficient,
    heat.layout.count * COEFFICIENT_WORDS,
  );
  const { kernel, layout } = heat;
  const arrays = makeArrays(
    'coarse',
    {
      ...dimsOf(plan, layout),
      blocks,
      tiles: blocks * tiles.count,
      pairs: blocks * tiles.pairs.length,
      gaps: blocks * tiles.gaps.length,
    },
    { memory: kernel.memory, layout },
  );
  new Int32Array(kernel.memory, layout.tileOf, layout.count).set(tiles.of);
  const { H, mass, area, face, conduct, gapOpen, gapMelted, crossing, potential, crossingGain } = arrays;
  const { isCoarse, isActive } = arrays;
  const coarse: CoarseState = {
    H,
    mass,
    area,
    face,
    conduct,
    gapOpen,
    gapMelted,
    crossing,
    potential,
    crossingGain,
    isCoarse,
    isActive,
    tiles,
    blocks,
    pairs: Int32Array.from(tiles.pairs.flatMap(({ p, q }) => [p, q])),
    gaps: Int32Array.from(tiles.gaps.flatMap(({ p, q }) => [p, q])),
    lost_J: 0,
    sunk_J: 0,
  };
  coarse.isActive.fill(startH === Math.fround(ambientH) ? 0 : 1);
  coarse.H.fill(startH);
  coarse.potential.fill(lookup(heat.table.potential, startH));
  plan.rods.area_mm2.forEach((area, rod) => {
    coarse.crossingGain[rod] =
      coefficient[rod * COEFFICIENT_WORDS + COEFFICIENT.ALONG]! * area * plan.dy * DENSITY_GPMM3;
  });
  return coarse;
}

/** Masses, areas, faces and conductances of every block's tiles in the cold piece: all but the last, which may be shorter, are alike. */
export function measureAll(s: State): void {
  const { blocks, tiles, mass, area, face, conduct, gapOpen, gapMelted } = s.coarse;
  measureBlock(s, 0);
  measureBlock(s, blocks - 1);
  const repeat = (values: Float64Array, each: number): void => {
    for (let block = 1; block < blocks - 1; block++) values.copyWithin(block * each, 0, each);
  };
  for (const values of [mass, area, face]) repeat(values, tiles.count);
  repeat(conduct, tiles.pairs.length);
  for (const values of [gapOpen, gapMelted]) repeat(values, tiles.gaps.length);
}

/** Masses, areas and conductances of a block's tiles from the fine fills. */
function measureBlock(s: State, block: number): void {
  const { plan, heat, coarse } = s;
  const { tiles } = coarse;
  const from = blockStart(block);
  const to = blockEnd(block, s.plan.ny);
  const base = block * tiles.count;
  for (let tile = 0; tile < tiles.count; tile++) {
    let volume = 0;
    for (const rod of tiles.rods[tile]!)
      for (let j = from; j < to; j++) volume += heat.fill[firstCell(heat.layout, rod) + j]! * plan.rods.area_mm2[rod]!;
    coarse.area[base + tile] = volume / (to - from);
    coarse.mass[base + tile] = volume * plan.dy * DENSITY_GPMM3;
    coarse.face[base + tile] = tiles.exposed_mm[tile]! * (to - from) * plan.dy;
  }
  const touching = (pair: TilePair, melted: number): number => {
    let width = 0;
    for (const f of pair.faces) {
      for (let j = from; j < to; j++) {
        const p = firstCell(heat.layout, f.rodP) + j;
        const q = firstCell(heat.layout, f.rodQ) + j;
        if (melted >= 0) {
          const both = heat.peak[p]! > heat.table.solidus_JPG && heat.peak[q]! > heat.table.solidus_JPG;
          if (both !== (melted === 1)) continue;
        }
        width += f.width_mm * Math.min(heat.fill[p]!, heat.fill[q]!);
      }
    }
    return width * plan.dy;
  };
  const limit = FACE_SHARE / (heat.table.steepest * (COARSE_INTERVAL / POSE_RATE_HZ));
  const stable = (wanted: number, p: number, q: number): number =>
    Math.min(wanted, limit * Math.min(coarse.mass[base + p]!, coarse.mass[base + q]!));
  tiles.pairs.forEach((pair, n) => {
    coarse.conduct[block * tiles.pairs.length + n] = stable(touching(pair, -1) / pair.distance_mm, pair.p, pair.q);
  });
  tiles.gaps.forEach((pair, n) => {
    const at = block * tiles.gaps.length + n;
    const lighter = Math.min(coarse.mass[base + pair.p]!, coarse.mass[base + pair.q]!);
    coarse.gapOpen[at] = Math.min(
      touching(pair, 0) * s.cal.gapConductance,
      (FACE_SHARE * lighter * LEAST_HEAT_JPGK * POSE_RATE_HZ) / COARSE_INTERVAL,
    );
    coarse.gapMelted[at] = stable(touching(pair, 1) / pair.distance_mm, pair.p, pair.q);
  });
  measureFace(s, block, from, to);
}

/** The welded face belongs to the tiles that hold the surface. */
function measureFace(s: State, block: number, from: number, to: number): void {
  const { plan, w, coarse } = s;
  const { nu, ny } = plan;
  const area = s.plan.area_mm2;
  for (let c = 0; c < nu; c++) {
    for (let j = from; j < to; j++) {
      const i = c * ny + j;
      const rod = stackRod(s, c, topCell(s, c, w[i]!));
      const wu = slopeAcross(s, w, c, j);
      const wy = slopeAlong(s, w, i, j);
      coarse.face[block * coarse.tiles.count + coarse.tiles.of[rod]!]! += area * Math.sqrt(1 + wu * wu + wy * wy);
    }
  }
}

/** Fine to coarse: every tile takes the mean enthalpy of its metal. */
export function coarsen(s: State, block: number): void {
  const { coarse, heat, plan } = s;
  const { tiles } = coarse;
  const from = blockStart(block);
  const to = blockEnd(block, s.plan.ny);
  measureBlock(s, block);
  for (let tile = 0; tile < tiles.count; tile++) {
    const at = block * tiles.count + tile;
    let sum = 0;
    for (const rod of tiles.rods[tile]!) {
      const cell = firstCell(heat.layout, rod);
      for (let j = from; j < to; j++) sum += heat.H[cell + j]! * heat.fill[cell + j]! * plan.rods.area_mm2[rod]!;
    }
    coarse.H[at] = coarse.mass[at]! > 0 ? (sum * plan.dy * DENSITY_GPMM3) / coarse.mass[at]! : s.startH;
    coarse.crossing[at] = 0;
    coarse.potential[at] = lookup(heat.table.potential, coarse.H[at]!);
  }
  coarse.isCoarse[block] = 1;
  coarse.isActive[block] = 1;
}

/** Coarse to fine: every cell takes its tile's enthalpy, and what has crossed the fine region's end since the last coarse step. */
export function refine(s: State, block: number): void {
  const { coarse, heat } = s;
  const { tiles } = coarse;
  const from = blockStart(block);
  const to = blockEnd(block, s.plan.ny);
  for (let tile = 0; tile < tiles.count; tile++) {
    const at = block * tiles.count + tile;
    if (coarse.mass[at]! > 0) coarse.H[at]! += coarse.crossing[at]! / coarse.mass[at]!;
    coarse.crossing[at] = 0;
    for (const rod of tiles.rods[tile]!) {
      const cell = firstCell(heat.layout, rod);
      for (let j = from; j < to; j++) {
        heat.H[cell + j] = coarse.H[at]!;
        heat.residual[cell + j] = 0;
      }
    }
  }
  // f32 rounding of the copies is not lost: what they hold differs from the tile by less than one part in 10^7.
  coarse.isCoarse[block] = 0;
}

/** Whether no tile of the block spreads by as much as `most` and no cell is as hot as `hot`, J/g. */
export function isLevel(s: State, block: number, most: number, hot: number): boolean {
  const { coarse, heat } = s;
  const from = blockStart(block);
  const to = blockEnd(block, s.plan.ny);
  for (const list of coarse.tiles.rods) {
    let low = Number.POSITIVE_INFINITY;
    let high = Number.NEGATIVE_INFINITY;
    for (const rod of list) {
      if (heat.holding[rod] === 0) continue;
      const cell = firstCell(heat.layout, rod);
      for (let j = from; j < to; j++) {
        if (heat.fill[cell + j]! < LEAST_FILL) continue;
        const h = heat.H[cell + j]!;
        if (h < low) low = h;
        if (h > high) high = h;
      }
    }
    if (high - low >= most || high >= hot) return false;
  }
  return true;
}

/** Enthalpy of the hottest tile of a coarse block, J/g. */
export function hottestTile(s: State, block: number): number {
  const { count } = s.coarse.tiles;
  let hottest = Number.NEGATIVE_INFINITY;
  for (let at = block * count; at < (block + 1) * count; at++)
    if (s.coarse.mass[at]! > 0 && s.coarse.H[at]! > hottest) hottest = s.coarse.H[at]!;
  return hottest;
}

/** Heat above 20 °C in the coarse blocks, J. */
export function coarseEnergy(s: State): number {
  const { coarse } = s;
  let sum = 0;
  for (let block = 0; block < coarse.blocks; block++) {
    if (!coarse.isCoarse[block]) continue;
    for (let at = block * coarse.tiles.count; at < (block + 1) * coarse.tiles.count; at++)
      sum += coarse.H[at]! * coarse.mass[at]! + coarse.crossing[at]!;
  }
  return sum;
}
