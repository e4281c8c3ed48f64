/**
 * Tiles: the coarse cross-section used where nothing happens. A tile gathers the rods of one plate (or of the weld) inside a square of
 * about 3 mm; a fin rod is a tile of its own. Which tiles touch, and through which fine faces, is fixed by the joint.
 */
import type { JointPlan } from './joint.ts';

const TILE_MM = 3;
/** Slices in a block: one SIMD vector. */
export const BLOCK = 4;

/** Blocks a joint of so many slices comes to. */
export function blocksOf(ny: number): number {
  return Math.ceil(ny / BLOCK);
}

/** First slice of a block, and the slice after its last. */
export function blockStart(block: number): number {
  return block * BLOCK;
}

export function blockEnd(block: number, ny: number): number {
  return Math.min(ny, (block + 1) * BLOCK);
}

interface TileFace {
  rodP: number;
  rodQ: number;
  /** Width of the face with both rods full. */
  width_mm: number;
}

export interface TilePair {
  p: number;
  q: number;
  /** Between the tiles' centres, square to the faces. */
  distance_mm: number;
  faces: TileFace[];
}

export interface TilePlan {
  count: number;
  /** Tile of each rod. */
  of: Int32Array;
  rods: number[][];
  pairs: TilePair[];
  /** Faying faces between tiles (gap conductance until melted). */
  gaps: TilePair[];
  /** Outline losing heat to the room, mm. */
  exposed_mm: Float64Array;
  /** Clamped tiles and their share of the edge's conductance. */
  sinks: { tile: number; share: number }[];
}

const TILED = new WeakMap<JointPlan, TilePlan>();

/** The tiles of a joint; read only, worked out once a plan. */
export function tilesOf(plan: JointPlan): TilePlan {
  let tiles = TILED.get(plan);
  if (!tiles) {
    tiles = planTiles(plan);
    TILED.set(plan, tiles);
  }
  return tiles;
}

function planTiles(plan: JointPlan): TilePlan {
  const { rods, h } = plan;
  const cells = Math.max(2, Math.round(TILE_MM / h));
  const of = new Int32Array(rods.count).fill(-1);
  const members: number[][] = [];
  const byKey = new Map<string, number>();
  for (let g = 0; g < plan.rodAt.length; g++) {
    const rod = plan.rodAt[g]!;
    if (rod < 0) continue;
    const i = (g % plan.na) + plan.iMin;
    const j = Math.floor(g / plan.na) + plan.jMin;
    const key = `${rods.part[rod]} ${Math.floor(i / cells)} ${Math.floor(j / cells)}`;
    let tile = byKey.get(key);
    if (tile === undefined) {
      tile = members.length;
      byKey.set(key, tile);
      members.push([]);
    }
    of[rod] = tile;
    members[tile]!.push(rod);
  }
  for (let rod = 0; rod < rods.count; rod++) {
    if (of[rod]! >= 0) continue;
    of[rod] = members.length;
    members.push([rod]);
  }
  const a = members.map((list) => mean(list, rods.a_mm));
  const b = members.map((list) => mean(list, rods.b_mm));
  const exposed = new Float64Array(members.length);
  for (let rod = 0; rod < rods.count; rod++) exposed[of[rod]!]! += rods.exposed_mm[rod]!;
  return {
    count: members.length,
    of,
    rods: members,
    pairs: pairTiles(plan, of, a, b),
    gaps: gapTiles(plan, of, b),
    exposed_mm: exposed,
    sinks: rods.sinks.map(({ rod, share }) => ({ tile: of[rod]!, share })),
  };
}

function mean(list: number[], values: Float64Array): number {
  let sum = 0;
  for (const rod of list) sum += values[rod]!;
  return sum / list.length;
}

function pairTiles(plan: JointPlan, of: Int32Array, a: number[], b: number[]): TilePair[] {
  const { rods, h } = plan;
  const found = new Map<string, TilePair>();
  const meet = (p: number, q: number, along: 'a' | 'b', face: TileFace): void => {
    const key = `${Math.min(p, q)} ${Math.max(p, q)} ${along}`;
    let pair = found.get(key);
    if (!pair) {
      const centre = along === 'a' ? a : b;
      pair = { p, q, distance_mm: Math.max(h, Math.abs(centre[p]! - centre[q]!)), faces: [] };
      found.set(key, pair);
    }
    pair.faces.push(face);
  };
  for (let rod = 0; rod < rods.count; rod++) {
    for (let slot = 0; slot < 4; slot++) {
      const other = rods.slot[4 * rod + slot]!;
      if (other < 0 || of[other] === of[rod]) continue;
      // Joined cells are listed from both sides: take the upper slots, and every slot that leads to a fin from a fine rod.
      const mutual = rods.slot[4 * other + (slot ^ 1)] === rod;
      if (mutual && (slot === 0 || slot === 2)) continue;
      // Fins follow one another along either plate but always through the a slots: the larger step says which way they run.
      const da = Math.abs(rods.a_mm[rod]! - rods.a_mm[other]!);
      const db = Math.abs(rods.b_mm[rod]! - rods.b_mm[other]!);
      const along = slot < 2 && da > 0 ? 'a' : 'b';
      const gap = along === 'a' ? da : db;
      meet(of[rod]!, of[other]!, along, { rodP: rod, rodQ: other, width_mm: rods.shape[4 * rod + slot]! * gap });
    }
  }
  return [...found.values()];
}

function gapTiles(plan: JointPlan, of: Int32Array, b: number[]): TilePair[] {
  const found = new Map<string, TilePair>();
  for (const gap of plan.rods.gaps) {
    const p = of[gap.p]!;
    const q = of[gap.q]!;
    const key = `${p} ${q}`;
    let pair = found.get(key);
    if (!pair) {
      pair = { p, q, distance_mm: Math.max(plan.h, Math.abs(b[p]! - b[q]!)), faces: [] };
      found.set(key, pair);
    }
    pair.faces.push({ rodP: gap.p, rodQ: gap.q, width_mm: gap.width_mm });
  }
  return [...found.values()];
}
