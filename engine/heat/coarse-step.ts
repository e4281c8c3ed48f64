/** What happens in the coarse lengths of the joint: the coarse step, and the exchange at the fine region's ends. */

import { BLOCK, blockEnd, blockStart } from '../grid/tiles.ts';
import { POSE_RATE_HZ } from '../input/pose.ts';
import { clamp } from '../numerics/math.ts';
import { DENSITY_GPMM3, lookup } from '../physics/steel.ts';
import type { State } from '../state/state.ts';
import { COARSE_INTERVAL } from './coarse-blocks.ts';

/** Time from one coarse step to the next. */
const STEP_S = COARSE_INTERVAL / POSE_RATE_HZ;
/** Along the joint a block may move this share of what would level it in one part of a step: one part down to cells of 0.4 mm. */
const BLOCK_SHARE = 0.33;
/** No tile may lose more than this share of its heat over the room's in one step. */
const SLIVER_SHARE = 0.25;
/** Heat has come near when a neighbouring block's tile has moved by more than this (0.02 K). */
const INACTIVE_JPG = 0.01;

/** Joins the fine region to the coarse blocks at its ends, once a tick. */
export function joinEnds(s: State): void {
  const { fine } = s;
  if (fine.from > 0) joinEnd(s, fine.from / BLOCK - 1, fine.from, fine.from - 1);
  if (fine.to < s.plan.ny) joinEnd(s, fine.to / BLOCK, fine.to - 1, fine.to);
}

/** Ghost potentials at one end of the fine region and the heat that crosses there this tick. `j` fine slice, `out` its outer guard. */
function joinEnd(s: State, block: number, j: number, out: number): void {
  // Centre of the fine slice to centre of the block, in slices: half a slice and half the block.
  const share = 2 / (1 + blockEnd(block, s.plan.ny) - blockStart(block));
  s.heat.kernel.join(j, out, block * s.coarse.tiles.count, share);
}

/** Blocks that heat has reached take part from now on. */
function activateWarmed(s: State): void {
  const { isActive, isCoarse, blocks } = s.coarse;
  for (let block = 0; block < blocks; block++)
    if (isCoarse[block] && !isActive[block] && (hasWarmed(s, block - 1) || hasWarmed(s, block + 1)))
      isActive[block] = 1;
}

function hasWarmed(s: State, block: number): boolean {
  const { isActive, isCoarse, blocks, H, tiles } = s.coarse;
  if (block < 0 || block >= blocks) return false;
  if (!isCoarse[block]) return true;
  if (!isActive[block]) return false;
  for (let at = block * tiles.count; at < (block + 1) * tiles.count; at++)
    if (Math.abs(H[at]! - s.startH) > INACTIVE_JPG) return true;
  return false;
}

/** One coarse step of 50 ms, in as many parts as blocks this short need to stay stable. */
export function stepCoarse(s: State): void {
  const length = BLOCK * s.plan.dy;
  const parts = Math.ceil((STEP_S * s.heat.table.steepest) / (DENSITY_GPMM3 * BLOCK_SHARE * length * length));
  s.coarse.lost_J = 0;
  s.coarse.sunk_J = 0;
  activateWarmed(s);
  for (let part = 0; part < parts; part++) stepPart(s, STEP_S / parts);
  s.ledger.lost_J += s.coarse.lost_J;
  s.ledger.sink_J += s.coarse.sunk_J;
}

/** Conduction between tiles and blocks, losses, and what crossed the fine region's ends. */
function stepPart(s: State, time: number): void {
  const { isCoarse, isActive, blocks } = s.coarse;
  for (let block = 0; block < blocks; block++) if (isCoarse[block] && isActive[block]) readPotentials(s, block);
  for (let block = 0; block < blocks; block++) {
    if (!isCoarse[block] || !isActive[block]) continue;
    joinTiles(s, block, time);
    joinFaying(s, block, time);
    if (block + 1 < blocks && isCoarse[block + 1] && isActive[block + 1]) joinBlocks(s, block, time);
    applyTileLosses(s, block, time);
    drainSinks(s, block, time);
  }
}

function readPotentials(s: State, block: number): void {
  const { potential, H, tiles } = s.coarse;
  const { table } = s.heat;
  for (let at = block * tiles.count; at < (block + 1) * tiles.count; at++)
    potential[at] = lookup(table.potential, H[at]!);
}

/** Between tiles that touch. */
function joinTiles(s: State, block: number, time: number): void {
  const { H, mass, potential, pairs, conduct, tiles } = s.coarse;
  const base = block * tiles.count;
  const count = pairs.length / 2;
  for (let k = 0; k < count; k++) {
    const c = conduct[block * count + k]!;
    if (c === 0) continue;
    const p = base + pairs[2 * k]!;
    const q = base + pairs[2 * k + 1]!;
    const joules = time * c * (potential[q]! - potential[p]!);
    H[p]! += joules / mass[p]!;
    H[q]! -= joules / mass[q]!;
  }
}

/** Across the faying faces, open and melted. */
function joinFaying(s: State, block: number, time: number): void {
  const { H, mass, potential, gaps, gapOpen, gapMelted, tiles } = s.coarse;
  const base = block * tiles.count;
  const count = gaps.length / 2;
  for (let k = 0; k < count; k++) {
    const open = gapOpen[block * count + k]!;
    const melted = gapMelted[block * count + k]!;
    if (open === 0 && melted === 0) continue;
    const p = base + gaps[2 * k]!;
    const q = base + gaps[2 * k + 1]!;
    const across = open === 0 ? 0 : open * (temperature(s, H[q]!) - temperature(s, H[p]!));
    const joules = time * (across + melted * (potential[q]! - potential[p]!));
    H[p]! += joules / mass[p]!;
    H[q]! -= joules / mass[q]!;
  }
}

/** From a block to the next one up. */
function joinBlocks(s: State, block: number, time: number): void {
  const { H, mass, area, potential, tiles } = s.coarse;
  const { ny, dy } = s.plan;
  const n = tiles.count;
  const perArea = time / (((blockEnd(block + 1, ny) - blockStart(block)) / 2) * dy);
  for (let at = block * n; at < (block + 1) * n; at++) {
    const through = Math.min(area[at]!, area[at + n]!);
    if (through === 0) continue;
    const joules = through * perArea * (potential[at + n]! - potential[at]!);
    H[at]! += joules / mass[at]!;
    H[at + n]! -= joules / mass[at + n]!;
  }
}

/** What crossed the fine region's ends, and losses to the room. */
function applyTileLosses(s: State, block: number, time: number): void {
  const { H, mass, face, crossing, tiles } = s.coarse;
  for (let at = block * tiles.count; at < (block + 1) * tiles.count; at++) {
    const held = mass[at]!;
    if (held === 0) continue;
    H[at]! += crossing[at]! / held;
    crossing[at] = 0;
    if (face[at] === 0) continue;
    // A sliver cannot lose more than it holds: what is left of a coarse tile may be next to nothing under a whole face.
    const most = SLIVER_SHARE * held * Math.abs(H[at]! - s.ambientH);
    const joules = clamp(time * face[at]! * lookup(s.lossTable, H[at]!), -most, most);
    H[at]! -= joules / held;
    s.coarse.lost_J += joules;
  }
}

/** Into clamps and bench. */
function drainSinks(s: State, block: number, time: number): void {
  const { H, mass, tiles } = s.coarse;
  const { joint } = s.options;
  const base = block * tiles.count;
  const slices = blockEnd(block, s.plan.ny) - blockStart(block);
  for (const { tile, share } of tiles.sinks) {
    const joules =
      time * share * joint.sink_WpmmK * slices * s.plan.dy * (temperature(s, H[base + tile]!) - joint.ambient_C);
    if (joules === 0) continue;
    H[base + tile]! -= joules / mass[base + tile]!;
    s.coarse.sunk_J += joules;
  }
}

function temperature(s: State, h: number): number {
  return lookup(s.heat.table.temperature, h);
}
