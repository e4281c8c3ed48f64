// SIMD twin of ../reference.ts in AssemblyScript: same operations, same order, four cells at a time.
// Addresses are bytes; layout comes in through setup() so that both twins share one memory plan.

import {
  ALONG, GAP_OPEN, GAP_RISE_P, GAP_RISE_Q, GAP_SECOND, GAP_SHAPE, GAP_SHIFT, GAP_SOLIDUS, LIST_LENGTH, LIST_START, LOSS, NEIGHBOUR, PAD, ROD_FULL, ROD_PARTIAL,
  ROD_SHIFT, ROD_SKIP, TABLE_LAST,
} from './constants';

let count: i32 = 0;
let ny: i32 = 0;
let stride: i32 = 0;
let H: usize = 0;
let R: usize = 0;
let T: usize = 0;
let P: usize = 0;
let K: usize = 0;
let table: usize = 0;
let lossTable: usize = 0;
let program: usize = 0;
let coefficient: usize = 0;
let listRod: usize = 0;
let listC: usize = 0;
let flux: usize = 0;
let temperatures: usize = 0;
let gaps: usize = 0;
let gapCount: i32 = 0;
let tileOf: usize = 0;
let gain: usize = 0;
let beyond: usize = 0;
let crossing: usize = 0;
let invStep: f32 = 0;
let least: f32 = 0;

// 2^20: there floats lie an eighth apart.
const EIGHTHS: f32 = 1048576;
const EIGHTHS_BITS: i32 = 0x49800000;

export function setup(
  count_: i32, ny_: i32, stride_: i32,
  h: usize, r: usize, t: usize, p: usize, k: usize,
  table_: usize, lossTable_: usize, program_: usize, coefficient_: usize, listRod_: usize, listC_: usize, flux_: usize,
  temperatures_: usize, gaps_: usize, gapCount_: i32, tileOf_: usize, gain_: usize, beyond_: usize, crossing_: usize,
  invStep_: f32, least_: f32,
): void {
  count = count_;
  ny = ny_;
  stride = stride_;
  H = h;
  R = r;
  T = t;
  P = p;
  K = k;
  table = table_;
  lossTable = lossTable_;
  program = program_;
  coefficient = coefficient_;
  listRod = listRod_;
  listC = listC_;
  flux = flux_;
  temperatures = temperatures_;
  gaps = gaps_;
  gapCount = gapCount_;
  tileOf = tileOf_;
  gain = gain_;
  beyond = beyond_;
  crossing = crossing_;
  invStep = invStep_;
  least = least_;
}

export function potential(j0: i32, j1: i32): void {
  const inv = f32x4.splat(invStep);
  const zero = f32x4.splat(0);
  const last = f32x4.splat(<f32>TABLE_LAST);
  const scale = f32x4.splat(EIGHTHS);
  const pairs = i32x4.splat(<i32>table - EIGHTHS_BITS);
  const toT = T - H;
  const toK = K - H;
  const past = <usize>(ny - 1) << 2;
  for (let r = 0; r < count; r++) {
    if (load<i32>(program + (<usize>r << ROD_SHIFT)) == ROD_SKIP) continue;
    const first = H + (<usize>(r * stride + PAD) << 2);
    const end = first + (<usize>j1 << 2);
    let c = first + (<usize>j0 << 2);
    for (const pairsEnd = end - 16; c < pairsEnd; c += 32) {
      const h = v128.load(c);
      const g = v128.load(c, 16);
      const t = c + toT;
      const k = c + toK;
      v128.store(t, read(h, inv, zero, last, scale, pairs));
      v128.store(k, f32x4.pmax(v128.load(k), h));
      v128.store(t, read(g, inv, zero, last, scale, pairs), 16);
      v128.store(k, f32x4.pmax(v128.load(k, 16), g), 16);
    }
    for (; c < end; c += 16) {
      const h = v128.load(c);
      v128.store(c + toT, read(h, inv, zero, last, scale, pairs));
      v128.store(c + toK, f32x4.pmax(v128.load(c + toK), h));
    }
    const t = first + toT;
    store<f32>(t - 4, load<f32>(t));
    store<f32>(t + past, load<f32>(t + past), 4);
  }
}

// A table of [value, slope] pairs at four enthalpies. Added to EIGHTHS a whole number n leaves 8 n in the low bits of the sum: n pairs as bytes.
@inline
function read(h: v128, inv: v128, zero: v128, last: v128, scale: v128, pairs: v128): v128 {
  const x = f32x4.mul(h, inv);
  const n = f32x4.floor(f32x4.pmin(f32x4.pmax(zero, x), last));
  const at = i32x4.add(f32x4.add(n, scale), pairs);
  // Two lanes at a time out of the register: half the extractions.
  const ij = i64x2.extract_lane(at, 0);
  const kl = i64x2.extract_lane(at, 1);
  const ab = v128.load64_lane(<usize>(<u32>(<u64>ij >> 32)), v128.load64_zero(<usize>(<u32>ij)), 1);
  const de = v128.load64_lane(<usize>(<u32>(<u64>kl >> 32)), v128.load64_zero(<usize>(<u32>kl)), 1);
  const value = v128.shuffle<i32>(ab, de, 0, 2, 4, 6);
  const slope = v128.shuffle<i32>(ab, de, 1, 3, 5, 7);
  return f32x4.add(value, f32x4.mul(f32x4.sub(x, n), slope));
}

export function join(j: i32, out: i32, first: i32, share: f64): void {
  for (let r = 0; r < count; r++) {
    const flag = load<i32>(program + (<usize>r << ROD_SHIFT));
    if (flag == ROD_SKIP) continue;
    const inside = <usize>(r * stride + PAD + j) << 2;
    const outside = <usize>(r * stride + PAD + out) << 2;
    const at = <usize>(first + load<i32>(tileOf + (<usize>r << 2))) << 3;
    const here = <f64>load<f32>(T + inside);
    const ghost = <f32>(here + share * (load<f64>(beyond + at) - here));
    store<f32>(T + outside, ghost);
    const through = flag == ROD_FULL ? 1 : <f64>min(load<f32>(P + inside), load<f32>(P + outside));
    store<f64>(
      crossing + at, load<f64>(crossing + at) - load<f64>(gain + (<usize>r << 3)) * through * (<f64>ghost - here),
    );
  }
}

export function faying(j0: i32, j1: i32): void {
  const inv = f32x4.splat(invStep);
  const zero = f32x4.splat(0);
  const last = f32x4.splat(<f32>TABLE_LAST);
  const scale = f32x4.splat(EIGHTHS);
  const pairs = i32x4.splat(<i32>temperatures - EIGHTHS_BITS);
  const floor = f32x4.splat(least);
  for (let g = 0; g < gapCount; g++) {
    const w = gaps + (<usize>g << GAP_SHIFT);
    const first = <usize>load<i32>(w) << 2;
    const across = (<usize>load<i32>(w, GAP_SECOND) << 2) - first;
    const shape = v128.load32_splat(w, GAP_SHAPE);
    const open = v128.load32_splat(w, GAP_OPEN);
    const riseP = v128.load32_splat(w, GAP_RISE_P);
    const riseQ = v128.load32_splat(w, GAP_RISE_Q);
    const solidus = v128.load32_splat(w, GAP_SOLIDUS);
    const end = first + (<usize>j1 << 2);
    for (let p = first + (<usize>j0 << 2); p < end; p += 16) {
      const q = p + across;
      const fillP = v128.load(P + p);
      const fillQ = v128.load(P + q);
      const through = f32x4.pmin(fillP, fillQ);
      const hp = v128.load(H + p);
      const hq = v128.load(H + q);
      const solid = f32x4.mul(shape, f32x4.sub(v128.load(T + q), v128.load(T + p)));
      const gapped = f32x4.mul(
        open, f32x4.sub(read(hq, inv, zero, last, scale, pairs), read(hp, inv, zero, last, scale, pairs)),
      );
      const joined = v128.and(f32x4.gt(v128.load(K + p), solidus), f32x4.gt(v128.load(K + q), solidus));
      const whole = v128.or(joined, f32x4.ge(f32x4.abs(gapped), f32x4.abs(solid)));
      const flow = v128.and(v128.bitselect(solid, gapped, whole), f32x4.ge(through, floor));
      const toP = f32x4.mul(f32x4.mul(riseP, flow), f32x4.div(through, f32x4.pmax(floor, fillP)));
      const toQ = f32x4.mul(f32x4.mul(riseQ, flow), f32x4.div(through, f32x4.pmax(floor, fillQ)));
      v128.store(H + p, f32x4.add(hp, toP));
      v128.store(H + q, f32x4.sub(hq, toQ));
    }
  }
}

export function cool(j0: i32, j1: i32, time: f32): void {
  const inv = f32x4.splat(invStep);
  const zero = f32x4.splat(0);
  const last = f32x4.splat(<f32>TABLE_LAST);
  const scale = f32x4.splat(EIGHTHS);
  const pairs = i32x4.splat(<i32>lossTable - EIGHTHS_BITS);
  const lanes = f32x4(0, 1, 2, 3);
  for (let r = 0; r < count; r++) {
    const sum = flux + (<usize>r << 3);
    store<f64>(sum, 0);
    const share = load<f32>(coefficient + (<usize>r << ROD_SHIFT), LOSS);
    if (share == 0 || load<i32>(program + (<usize>r << ROD_SHIFT)) == ROD_SKIP) continue;
    const k = f32x4.splat(time * share);
    const base = <usize>(r * stride + PAD) << 2;
    let low = f64x2.splat(0);
    let high = f64x2.splat(0);
    for (let j = j0; j < j1; j += 4) {
      const c = base + (<usize>j << 2);
      const p = v128.load(P + c);
      // The last vector may run past the piece: only cells of the piece that hold metal count.
      const there = v128.and(f32x4.gt(p, f32x4.splat(0)), f32x4.lt(lanes, f32x4.splat(<f32>(j1 - j))));
      const h = v128.load(H + c);
      const off = v128.and(read(h, inv, zero, last, scale, pairs), there);
      v128.store(H + c, f32x4.sub(h, f32x4.mul(k, off)));
      const shown = f32x4.mul(off, p);
      low = f64x2.add(low, f64x2.promote_low_f32x4(shown));
      high = f64x2.add(high, f64x2.promote_low_f32x4(v128.shuffle<i64>(shown, shown, 1, 0)));
    }
    store<f64>(
      sum,
      f64x2.extract_lane(low, 0) + f64x2.extract_lane(low, 1) + (f64x2.extract_lane(high, 0) + f64x2.extract_lane(high, 1)),
    );
  }
}

// pmin(p, q) = q < p ? q : p, as Math.min for the numbers that occur (fills, never NaN or -0).
export function conduct(j0: i32, j1: i32): void {
  const floor = f32x4.splat(least);
  const toR = R - H;
  const toP = P - H;
  // Of the cell before: one address for it, the cell and the next.
  const toT = T - H - 4;
  for (let r = 0; r < count; r++) {
    const w = program + (<usize>r << ROD_SHIFT);
    const flag = load<i32>(w);
    if (flag == ROD_SKIP) continue;
    const first = H + (<usize>(r * stride + PAD) << 2);
    // From this rod's enthalpy to the potentials of its four neighbours: one index runs through all.
    const toField = T - first;
    const n0 = toField + (<usize>load<i32>(w, NEIGHBOUR) << 2);
    const n1 = toField + (<usize>load<i32>(w, NEIGHBOUR + 4) << 2);
    const n2 = toField + (<usize>load<i32>(w, NEIGHBOUR + 8) << 2);
    const n3 = toField + (<usize>load<i32>(w, NEIGHBOUR + 12) << 2);
    const q = coefficient + (<usize>r << ROD_SHIFT);
    const c0 = v128.load32_splat(q);
    const c1 = v128.load32_splat(q, 4);
    const c2 = v128.load32_splat(q, 8);
    const c3 = v128.load32_splat(q, 12);
    const cy = v128.load32_splat(q, ALONG);
    let c = first + (<usize>j0 << 2);
    const end = first + (<usize>j1 << 2);
    if (flag == ROD_PARTIAL) {
      const toFill = P - T;
      for (; c < end; c += 16) {
        const at = c + toT;
        const fill = c + toP;
        const a0 = c + n0;
        const a1 = c + n1;
        const a2 = c + n2;
        const a3 = c + n3;
        const t = v128.load(at, 4);
        const p = v128.load(fill);
        const f0 = f32x4.mul(f32x4.mul(c0, f32x4.pmin(p, v128.load(a0 + toFill))), f32x4.sub(v128.load(a0), t));
        const f1 = f32x4.mul(f32x4.mul(c1, f32x4.pmin(p, v128.load(a1 + toFill))), f32x4.sub(v128.load(a1), t));
        const f2 = f32x4.mul(f32x4.mul(c2, f32x4.pmin(p, v128.load(a2 + toFill))), f32x4.sub(v128.load(a2), t));
        const f3 = f32x4.mul(f32x4.mul(c3, f32x4.pmin(p, v128.load(a3 + toFill))), f32x4.sub(v128.load(a3), t));
        const below = f32x4.mul(f32x4.pmin(p, v128.load(fill - 4)), f32x4.sub(v128.load(at), t));
        const above = f32x4.mul(f32x4.pmin(p, v128.load(fill, 4)), f32x4.sub(v128.load(at, 8), t));
        const lateral = f32x4.add(f32x4.add(f0, f1), f32x4.add(f2, f3));
        const sum = f32x4.div(f32x4.add(lateral, f32x4.mul(cy, f32x4.add(below, above))), f32x4.pmax(floor, p));
        advance(c, c + toR, sum);
      }
      continue;
    }
    if (flag == ROD_FULL) {
      for (; c < end; c += 16) {
        const at = c + toT;
        const t = v128.load(at, 4);
        const f0 = f32x4.mul(c0, f32x4.sub(v128.load(c + n0), t));
        const f1 = f32x4.mul(c1, f32x4.sub(v128.load(c + n1), t));
        const f2 = f32x4.mul(c2, f32x4.sub(v128.load(c + n2), t));
        const f3 = f32x4.mul(c3, f32x4.sub(v128.load(c + n3), t));
        const along = f32x4.add(f32x4.sub(v128.load(at), t), f32x4.sub(v128.load(at, 8), t));
        advance(c, c + toR, f32x4.add(f32x4.add(f32x4.add(f0, f1), f32x4.add(f2, f3)), f32x4.mul(cy, along)));
      }
      continue;
    }
    const listStart = <usize>load<i32>(w, LIST_START) << 2;
    const listEnd = listStart + (<usize>load<i32>(w, LIST_LENGTH) << 2);
    for (; c < end; c += 16) {
      const at = c + toT;
      const t = v128.load(at, 4);
      const f0 = f32x4.mul(c0, f32x4.sub(v128.load(c + n0), t));
      const f1 = f32x4.mul(c1, f32x4.sub(v128.load(c + n1), t));
      const f2 = f32x4.mul(c2, f32x4.sub(v128.load(c + n2), t));
      const f3 = f32x4.mul(c3, f32x4.sub(v128.load(c + n3), t));
      const along = f32x4.add(f32x4.sub(v128.load(at), t), f32x4.sub(v128.load(at, 8), t));
      let sum = f32x4.add(f32x4.add(f32x4.add(f0, f1), f32x4.add(f2, f3)), f32x4.mul(cy, along));
      for (let l = listStart; l < listEnd; l += 4) {
        const n = toField + (<usize>load<i32>(listRod + l) << 2);
        sum = f32x4.add(sum, f32x4.mul(v128.load32_splat(listC + l), f32x4.sub(v128.load(c + n), t)));
      }
      advance(c, c + toR, sum);
    }
  }
}

// AssemblyScript decorator.
@inline
function advance(c: usize, residual: usize, sum: v128): void {
  const y = f32x4.add(sum, v128.load(residual));
  const h = v128.load(c);
  const next = f32x4.add(h, y);
  v128.store(residual, f32x4.sub(y, f32x4.sub(next, h)));
  v128.store(c, next);
}
