/** What happens in the calm lengths of the joint: the coarse step, and the exchange at the fine window's ends. */
import { BLOCK, CALM_INTERVAL, slicesOf } from './calm.ts';
import { PAD } from './kernel/layout.ts';
import { DENSITY_GPMM3, lookup } from './material.ts';
import { clamp } from './math.ts';
import { POSE_RATE_HZ, type State } from './state.ts';

/** No tile may lose more than this share of its heat over the room's in one step. */
const SLIVER_SHARE = 0.25;
/** Along the joint a block may move this share of what would level it in one part of a step: one part down to cells of 0.4 mm. */
const BLOCK_SHARE = 0.33;
/** Heat has come near when a neighbouring block's tile has moved by more than this (0.02 K). */
const ASLEEP_JPG = 0.01;

/** Joins the fine window to the coarse blocks at its ends, once a tick. */
export function joinEnds(s: State): void {
  const { fine } = s;
  if (fine.from > 0) joinWindow(s, fine.from / BLOCK - 1, fine.from, fine.from - 1);
  if (fine.to < s.plan.ny) joinWindow(s, fine.to / BLOCK, fine.to - 1, fine.to);
}

/** Ghost potentials at one end of the fine window and the heat that crosses there this tick. `j` fine slice, `out` its outer guard. */
function joinWindow(s: State, block: number, j: number, out: number): void {
  const { calm, heat } = s;
  const { potential, fill, layout } = heat;
  const slices = slicesOf(s, block);
  // Centre of the fine slice to centre of the block, in slices: half a slice and half the block.
  const share = 2 / (1 + slices.to - slices.from);
  const { of, count } = calm.tiles;
  const { stride } = layout;
  const { busy, busyCount, notFull } = heat;
  const { crossing, crossingGain, potential: coarse } = calm;
  for (let k = 0; k < busyCount; k++) {
    const rod = busy[k]!;
    const cell = rod * stride + PAD;
    const at = block * count + of[rod]!;
    const here = potential[cell + j]!;
    const ghost = Math.fround(here + share * (coarse[at]! - here));
    potential[cell + out] = ghost;
    const through = notFull[rod] === 0 ? 1 : Math.min(fill[cell + j]!, fill[cell + out]!);
    crossing[at]! -= crossingGain[rod]! * through * (ghost - here);
  }
}

/** Wakes sleeping blocks that heat has reached. */
function wakeCalm(s: State): void {
  const { calm } = s;
  const { awake, coarse, blocks, H, tiles } = calm;
  const reached = (block: number): boolean => {
    if (block < 0 || block >= blocks) return false;
    if (!coarse[block]) return true;
    if (!awake[block]) return false;
    for (let at = block * tiles.count; at < (block + 1) * tiles.count; at++)
      if (Math.abs(H[at]! - s.startH) > ASLEEP_JPG) return true;
    return false;
  };
  for (let block = 0; block < blocks; block++)
    if (coarse[block] && !awake[block] && (reached(block - 1) || reached(block + 1))) awake[block] = 1;
}

/** One coarse step of 50 ms, in as many parts as blocks this short need to stay stable. */
export function stepCalm(s: State): void {
  const time = CALM_INTERVAL / POSE_RATE_HZ;
  const length = BLOCK * s.plan.dy;
  const parts = Math.ceil((time * s.heat.table.steepest) / (DENSITY_GPMM3 * BLOCK_SHARE * length * length));
  wakeCalm(s);
  for (let part = 0; part < parts; part++) stepPart(s, time / parts);
}

/** Conduction between tiles and blocks, losses, and what crossed the window's ends. */
function stepPart(s: State, time: number): void {
  const { calm, heat, plan } = s;
  const { tiles, H, mass, area, potential, awake, coarse, pairs, gaps, conduct } = calm;
  const { table } = heat;
  const n = tiles.count;
  for (let block = 0; block < calm.blocks; block++) {
    if (!coarse[block] || !awake[block]) continue;
    for (let at = block * n; at < block * n + n; at++) potential[at] = lookup(table.potential, H[at]!);
  }
  const joint = s.options.joint;
  let lost = 0;
  let sunk = 0;
  for (let block = 0; block < calm.blocks; block++) {
    if (!coarse[block] || !awake[block]) continue;
    const base = block * n;
    const { from, to } = slicesOf(s, block);
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
    const faying = gaps.length / 2;
    for (let k = 0; k < faying; k++) {
      const open = calm.gapOpen[block * faying + k]!;
      const melted = calm.gapMelted[block * faying + k]!;
      if (open === 0 && melted === 0) continue;
      const p = base + gaps[2 * k]!;
      const q = base + gaps[2 * k + 1]!;
      const across = open === 0 ? 0 : open * (temperature(s, H[q]!) - temperature(s, H[p]!));
      const joules = time * (across + melted * (potential[q]! - potential[p]!));
      H[p]! += joules / mass[p]!;
      H[q]! -= joules / mass[q]!;
    }
    if (block + 1 < calm.blocks && coarse[block + 1] && awake[block + 1]) {
      const next = slicesOf(s, block + 1);
      const perArea = time / (((to - from + next.to - next.from) / 2) * plan.dy);
      for (let at = base; at < base + n; at++) {
        const through = Math.min(area[at]!, area[at + n]!);
        if (through === 0) continue;
        const joules = through * perArea * (potential[at + n]! - potential[at]!);
        H[at]! += joules / mass[at]!;
        H[at + n]! -= joules / mass[at + n]!;
      }
    }
    for (let at = base; at < base + n; at++) {
      const held = mass[at]!;
      if (held === 0) continue;
      H[at]! += calm.crossing[at]! / held;
      calm.crossing[at] = 0;
      if (calm.face[at] === 0) continue;
      // A sliver cannot lose more than it holds: what is left of a coarse tile may be next to nothing under a whole face.
      const most = SLIVER_SHARE * held * Math.abs(H[at]! - s.ambientH);
      const joules = clamp(time * calm.face[at]! * lookup(s.lossTable, H[at]!), -most, most);
      H[at]! -= joules / held;
      lost += joules;
    }
    for (const { tile, share } of tiles.sinks) {
      const joules =
        time * share * joint.sink_WpmmK * (to - from) * plan.dy * (temperature(s, H[base + tile]!) - joint.ambient_C);
      if (joules === 0) continue;
      H[base + tile]! -= joules / mass[base + tile]!;
      sunk += joules;
    }
  }
  s.ledger.lost_J += lost;
  s.ledger.sink_J += sunk;
}

function temperature(s: State, h: number): number {
  return lookup(s.heat.table.temperature, h);
}
