/**
 * How metal gets from where the surface sinks to where it rises, and the heat it takes along: a potential flow between the surface as it
 * stands and as it is going to stand. Neighbouring columns are joined by channels as deep as their liquid,
 *
 *     flow from n to q = k (φn - φq),      k = face length / distance x depth,      Σq k (φn - φq) = A (w - w_next)
 *
 * Metal runs from higher to lower potential only. So taking the columns in falling order of φ meets every source before what it feeds, and
 * one pass carries enthalpy upwind and implicitly: however much runs through a column, it stays between what was there and what came.
 * The heights move by what the channels carried, so mass is exact even where the potentials have not quite converged; what is left of
 * the way is in the next settling's source. In each column the liquid is mixed down to a depth that does not depend on the cell.
 */
import type { Nodes, SurfaceKernel } from '../kernel/surface-layout.ts';
import type { Arrays } from '../state/fields.ts';
import { addMetal, type Move, removeMetal } from '../state/metal.ts';
import type { State } from '../state/state.ts';

type FlowWork = Arrays<'pool'>;

/**
 * Moves the puddle's surface `part` of the way to its equilibrium. `move.moved` becomes the volume that went over the cap, mm³, and
 * `move.heat` its enthalpy x volume.
 */
export function carryMetal(s: State, flow: FlowWork, surface: SurfaceKernel, part: number, move: Move): void {
  const { nodes } = surface;
  layChannels(s, flow, nodes, part);
  surface.flow(s.cal.flowSweeps);
  const { column } = flow;
  const { potential } = nodes;
  for (let n = 0; n < nodes.count; n++) s.flowPotential[column[n]!] = potential[n]!;
  const order = sortFalling(flow, potential, nodes.count);
  let spilled = 0;
  let heat = 0;
  for (let at = 0; at < nodes.count; at++) {
    passOn(s, flow, nodes, order[at]!, move);
    spilled += move.moved;
    if (move.moved > 0) heat += move.heat;
  }
  move.moved = spilled;
  move.heat = heat;
}

function layChannels(s: State, flow: FlowWork, nodes: Nodes, part: number): void {
  const { link, capacity, channel, stiff, source, potential } = nodes;
  const { column, inflow, inheat } = flow;
  const { du, dy } = s.plan;
  const area = s.plan.area_mm2;
  for (let n = 0; n < nodes.count; n++) {
    const i = column[n]!;
    const deep = s.w[i]! - s.bottom[i]!;
    for (let face = 0; face < 4; face++) {
      const f = 4 * n + face;
      const q = link[f]!;
      channel[f] = 0;
      // Contact lines and the ends of the joint let nothing through.
      if (q >= capacity || q === n) continue;
      const other = column[q]!;
      const depth = 0.5 * (deep + (s.w[other]! - s.bottom[other]!));
      channel[f] = (face < 2 ? dy / du : du / dy) * Math.max(depth, s.cal.leastChannel);
    }
    const f = 4 * n;
    stiff[n] = channel[f]! + channel[f + 1]! + (channel[f + 2]! + channel[f + 3]!);
    source[n] = part * (s.w[i]! - s.wEq[i]!) * area;
    potential[n] = s.flowPotential[i]!;
    inflow[n] = 0;
    inheat[n] = 0;
  }
}

/** Mixes what ran into column `n` with its own liquid and passes on what runs out; what went over the cap is in `move`, with its heat. */
function passOn(s: State, flow: FlowWork, nodes: Nodes, n: number, move: Move): void {
  const { channel, potential, link } = nodes;
  const { inflow, inheat, column } = flow;
  const i = column[n]!;
  const c = s.columnOf[i]!;
  const j = i - c * s.plan.ny;
  const area = s.plan.area_mm2;
  // What is to run out into each lower neighbour, in all.
  let wanted = 0;
  for (let f = 4 * n; f < 4 * n + 4; f++) {
    if (channel[f] === 0) continue;
    const fall = potential[n]! - potential[link[f]!]!;
    if (fall > 0) wanted += channel[f]! * fall;
  }
  const free = Math.max(0, s.w[i]! - s.bottom[i]!) * area;
  move.volume = Math.min(free, Math.max(s.cal.mixingDepth * area, wanted - inflow[n]!));
  move.heat = 0;
  move.moved = 0;
  if (move.volume > 0) removeMetal(s, c, j, move);
  const total = move.moved + inflow[n]!;
  if (total <= 0) {
    move.moved = 0;
    return;
  }
  const h = Math.fround((move.heat + inheat[n]!) / total);
  // Nothing solid runs: a column gives no more than it holds liquid and gets.
  const out = Math.min(wanted, total);
  if (out > 0) {
    const scale = out / wanted;
    for (let f = 4 * n; f < 4 * n + 4; f++) {
      if (channel[f] === 0) continue;
      const q = link[f]!;
      const fall = potential[n]! - potential[q]!;
      if (fall <= 0) continue;
      const volume = scale * channel[f]! * fall;
      inflow[q]! += volume;
      inheat[q]! += volume * h;
    }
  }
  move.volume = total - out;
  move.h = h;
  move.moved = 0;
  if (total > out) addMetal(s, c, j, move);
  move.heat = move.moved * h;
}

/**
 * Node numbers 0 to count - 1 by falling potential, equal ones by rising number; in `order` or in `spare`, whichever is returned. The nodes
 * come in scan order, in which the potential rises and falls smoothly: stretches that are in order already are found, then merged.
 */
function sortFalling(flow: FlowWork, potential: Float64Array, count: number): Int32Array {
  const { order, spare, runs } = flow;
  let found = findRuns(order, runs, potential, count);
  let from = order;
  let to = spare;
  while (found > 1) {
    let merged = 0;
    for (let r = 0; r < found; r += 2) {
      const low = runs[r]!;
      const middle = r + 1 < found ? runs[r + 1]! : count;
      const high = r + 2 < found ? runs[r + 2]! : count;
      mergeRuns(from, to, potential, low, middle, high);
      runs[merged++] = low;
    }
    found = merged;
    [from, to] = [to, from];
  }
  return from;
}

/** Lays the numbers out so that each run from runs[k] on falls, rising stretches turned round; returns how many runs there are. */
function findRuns(order: Int32Array, runs: Int32Array, potential: Float64Array, count: number): number {
  let found = 0;
  let start = 0;
  while (start < count) {
    let end = start + 1;
    const rises = end < count && potential[end]! > potential[start]!;
    if (rises) while (end < count && potential[end]! > potential[end - 1]!) end++;
    else while (end < count && !(potential[end]! > potential[end - 1]!)) end++;
    for (let k = start; k < end; k++) order[k] = rises ? end - 1 - (k - start) : k;
    runs[found++] = start;
    start = end;
  }
  return found;
}

/** Everything in [low, middle) has a lower number than what equals it in [middle, high): it goes first. */
function mergeRuns(
  from: Int32Array,
  to: Int32Array,
  potential: Float64Array,
  low: number,
  middle: number,
  high: number,
): void {
  let left = low;
  let right = middle;
  for (let at = low; at < high; at++) {
    const takeLeft = right >= high || (left < middle && potential[from[left]!]! >= potential[from[right]!]!);
    to[at] = takeLeft ? from[left++]! : from[right++]!;
  }
}
