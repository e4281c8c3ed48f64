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
import type { Nodes } from '../kernel/surface-layout.ts';
import type { Arrays } from '../state/fields.ts';
import { addMetal, removeMetal } from '../state/metal.ts';
import type { State } from '../state/state.ts';

/** Over-relaxation and red-black sweeps a settling; the potentials start where the last settling left them. */
const OMEGA = 1.7;
const SWEEPS = 16;
/** A fresh film is fed through a channel at least this deep. */
const LEAST_CHANNEL_MM = 0.1;

type FlowWork = Arrays<'pool'>;

/**
 * Moves the puddle's surface `part` of the way to its equilibrium. Returns the volume that went over the cap, mm³, with its enthalpy x
 * volume in `moved.heat`.
 */
export function carryMetal(s: State, flow: FlowWork, nodes: Nodes, part: number, moved: { heat: number }): number {
  layChannels(s, flow, nodes, part);
  for (let pass = 0; pass < SWEEPS; pass++) {
    sweep(flow, nodes, 0, nodes.red);
    sweep(flow, nodes, nodes.red, nodes.count);
  }
  const { potential, order, column } = flow;
  for (let n = 0; n < nodes.count; n++) {
    s.flowPotential[column[n]!] = potential[n]!;
    order[n] = n;
  }
  sortFalling(order, potential, nodes.count);
  let spilled = 0;
  let heat = 0;
  for (let at = 0; at < nodes.count; at++) {
    const over = passOn(s, flow, nodes, order[at]!, moved);
    spilled += over;
    if (over > 0) heat += moved.heat;
  }
  moved.heat = heat;
  return spilled;
}

function layChannels(s: State, flow: FlowWork, nodes: Nodes, part: number): void {
  const { link, capacity } = nodes;
  const { channel, column } = flow;
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
      channel[f] = (face < 2 ? dy / du : du / dy) * Math.max(depth, LEAST_CHANNEL_MM);
    }
    const f = 4 * n;
    flow.stiff[n] = channel[f]! + channel[f + 1]! + (channel[f + 2]! + channel[f + 3]!);
    flow.source[n] = part * (s.w[i]! - s.wEq[i]!) * area;
    flow.potential[n] = s.flowPotential[i]!;
    flow.inflow[n] = 0;
    flow.inheat[n] = 0;
  }
}

function sweep(flow: FlowWork, nodes: Nodes, from: number, to: number): void {
  const { channel, potential, stiff, source } = flow;
  const { link, order } = nodes;
  for (let k = from; k < to; k++) {
    const n = order[k]!;
    if (stiff[n] === 0) continue;
    const f = 4 * n;
    let sum = 0;
    for (let g = f; g < f + 4; g++) if (channel[g]! > 0) sum += channel[g]! * potential[link[g]!]!;
    potential[n]! += OMEGA * ((sum + source[n]!) / stiff[n]! - potential[n]!);
  }
}

/** What is to run out of node n into each lower neighbour, in all, mm³. */
function outflow(flow: FlowWork, nodes: Nodes, n: number): number {
  const { channel, potential } = flow;
  let out = 0;
  for (let f = 4 * n; f < 4 * n + 4; f++) {
    if (channel[f] === 0) continue;
    const fall = potential[n]! - potential[nodes.link[f]!]!;
    if (fall > 0) out += channel[f]! * fall;
  }
  return out;
}

/** Mixes what ran into column `n` with its own liquid and passes on what runs out; returns what went over the cap, its heat in `moved`. */
function passOn(s: State, flow: FlowWork, nodes: Nodes, n: number, moved: { heat: number }): number {
  const { channel, potential, inflow, inheat, column } = flow;
  const i = column[n]!;
  const c = s.columnOf[i]!;
  const j = i - c * s.plan.ny;
  const area = s.plan.area_mm2;
  const wanted = outflow(flow, nodes, n);
  const free = Math.max(0, s.w[i]! - s.bottom[i]!) * area;
  const layer = Math.min(free, Math.max(s.cal.mixingDepth * area, wanted - inflow[n]!));
  moved.heat = 0;
  const taken = layer > 0 ? removeMetal(s, c, j, layer, moved) : 0;
  const total = taken + inflow[n]!;
  if (total <= 0) return 0;
  const h = Math.fround((moved.heat + inheat[n]!) / total);
  // Nothing solid runs: a column gives no more than it holds liquid and gets.
  const out = Math.min(wanted, total);
  if (out > 0) {
    const scale = out / wanted;
    for (let f = 4 * n; f < 4 * n + 4; f++) {
      if (channel[f] === 0) continue;
      const q = nodes.link[f]!;
      const fall = potential[n]! - potential[q]!;
      if (fall <= 0) continue;
      const volume = scale * channel[f]! * fall;
      inflow[q]! += volume;
      inheat[q]! += volume * h;
    }
  }
  const over = total > out ? addMetal(s, c, j, total - out, h) : 0;
  moved.heat = over * h;
  return over;
}

/** Heap sort of node numbers by falling potential; equal ones by rising number. */
function sortFalling(order: Int32Array, potential: Float64Array, count: number): void {
  for (let start = (count >> 1) - 1; start >= 0; start--) sift(order, potential, start, count);
  for (let end = count - 1; end > 0; end--) {
    const last = order[0]!;
    order[0] = order[end]!;
    order[end] = last;
    sift(order, potential, 0, end);
  }
}

function sift(order: Int32Array, potential: Float64Array, start: number, end: number): void {
  const held = order[start]!;
  let at = start;
  for (let child = 2 * at + 1; child < end; child = 2 * at + 1) {
    if (child + 1 < end && comesAfter(potential, order[child + 1]!, order[child]!)) child++;
    if (!comesAfter(potential, order[child]!, held)) break;
    order[at] = order[child]!;
    at = child;
  }
  order[at] = held;
}

function comesAfter(potential: Float64Array, a: number, b: number): boolean {
  return potential[a]! < potential[b]! || (potential[a] === potential[b] && a > b);
}
