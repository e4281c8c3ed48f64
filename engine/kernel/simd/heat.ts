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
  const zero = i32x4.splat(0);
  const last = i32x4.splat(TABLE_LAST);
  for (let r = 0; r < count; r++) {
    if (load<i32>(program + (<usize>r << ROD_SHIFT)) == ROD_SKIP) continue;
    const base = <usize>(r * stride + PAD) << 2;
    const end = base + (<usize>j1 << 2);
    for (let c = base + (<usize>j0 << 2); c < end; c += 16) {
      const h = v128.load(H + c);
      v128.store(T + c, read(table, h, inv, zero, last));
      v128.store(K + c, f32x4.pmax(v128.load(K + c), h));
    }
    store<f32>(T + base - 4, load<f32>(T + base));
    store<f32>(T + base + (<usize>ny << 2), load<f32>(T + base + (<usize>(ny - 1) << 2)));
  }
}

// A table of [value, slope] pairs at four enthalpies.
@inline
function read(pairs: usize, h: v128, inv: v128, zero: v128, last: v128): v128 {
  const x = f32x4.mul(h, inv);
  const i = i32x4.min_s(i32x4.max_s(i32x4.trunc_sat_f32x4_s(x), zero), last);
  // Two lanes at a time out of the register: half the extractions.
  const ij = i64x2.extract_lane(i, 0);
  const kl = i64x2.extract_lane(i, 1);
  const a = v128.load64_zero(pairs + (<usize>(<u32>ij) << 3));
  const b = v128.load64_zero(pairs + (<usize>(<u32>(<u64>ij >> 32)) << 3));
  const d = v128.load64_zero(pairs + (<usize>(<u32>kl) << 3));
  const e = v128.load64_zero(pairs + (<usize>(<u32>(<u64>kl >> 32)) << 3));
  const ab = v128.shuffle<i32>(a, b, 0, 4, 1, 5);
  const de = v128.shuffle<i32>(d, e, 0, 4, 1, 5);
  const value = v128.shuffle<i64>(ab, de, 0, 2);
  const slope = v128.shuffle<i64>(ab, de, 1, 3);
  return f32x4.add(value, f32x4.mul(f32x4.sub(x, f32x4.convert_i32x4_s(i)), slope));
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
  const zero = i32x4.splat(0);
  const last = i32x4.splat(TABLE_LAST);
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
        open, f32x4.sub(read(temperatures, hq, inv, zero, last), read(temperatures, hp, inv, zero, last)),
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
  const zero = i32x4.splat(0);
  const last = i32x4.splat(TABLE_LAST);
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
      const off = v128.and(read(lossTable, h, inv, zero, last), there);
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
  for (let r = 0; r < count; r++) {
    const w = program + (<usize>r << ROD_SHIFT);
    const flag = load<i32>(w);
    if (flag == ROD_SKIP) continue;
    const from = <usize>j0 << 2;
    const base = <usize>(r * stride + PAD) << 2;
    // Addresses of the four neighbours' fields less this rod's own: one index runs through all.
    const n0 = (<usize>load<i32>(w, NEIGHBOUR) << 2) - base;
    const n1 = (<usize>load<i32>(w, NEIGHBOUR + 4) << 2) - base;
    const n2 = (<usize>load<i32>(w, NEIGHBOUR + 8) << 2) - base;
    const n3 = (<usize>load<i32>(w, NEIGHBOUR + 12) << 2) - base;
    const t0 = T + n0;
    const t1 = T + n1;
    const t2 = T + n2;
    const t3 = T + n3;
    const q = coefficient + (<usize>r << ROD_SHIFT);
    const c0 = v128.load32_splat(q);
    const c1 = v128.load32_splat(q, 4);
    const c2 = v128.load32_splat(q, 8);
    const c3 = v128.load32_splat(q, 12);
    const cy = v128.load32_splat(q, ALONG);
    const end = base + (<usize>j1 << 2);
    if (flag == ROD_PARTIAL) {
      const p0 = P + n0;
      const p1 = P + n1;
      const p2 = P + n2;
      const p3 = P + n3;
      for (let c = base + from; c < end; c += 16) {
        const t = v128.load(T + c);
        const p = v128.load(P + c);
        const f0 = f32x4.mul(f32x4.mul(c0, f32x4.pmin(p, v128.load(p0 + c))), f32x4.sub(v128.load(t0 + c), t));
        const f1 = f32x4.mul(f32x4.mul(c1, f32x4.pmin(p, v128.load(p1 + c))), f32x4.sub(v128.load(t1 + c), t));
        const f2 = f32x4.mul(f32x4.mul(c2, f32x4.pmin(p, v128.load(p2 + c))), f32x4.sub(v128.load(t2 + c), t));
        const f3 = f32x4.mul(f32x4.mul(c3, f32x4.pmin(p, v128.load(p3 + c))), f32x4.sub(v128.load(t3 + c), t));
        const below = f32x4.mul(f32x4.pmin(p, v128.load(P + c - 4)), f32x4.sub(v128.load(T + c - 4), t));
        const above = f32x4.mul(f32x4.pmin(p, v128.load(P + c, 4)), f32x4.sub(v128.load(T + c, 4), t));
        const lateral = f32x4.add(f32x4.add(f0, f1), f32x4.add(f2, f3));
        const sum = f32x4.div(f32x4.add(lateral, f32x4.mul(cy, f32x4.add(below, above))), f32x4.pmax(floor, p));
        advance(c, sum);
      }
    } else {
      if (flag == ROD_FULL) {
        for (let c = base + from; c < end; c += 16) {
          const t = v128.load(T + c);
          const f0 = f32x4.mul(c0, f32x4.sub(v128.load(t0 + c), t));
          const f1 = f32x4.mul(c1, f32x4.sub(v128.load(t1 + c), t));
          const f2 = f32x4.mul(c2, f32x4.sub(v128.load(t2 + c), t));
          const f3 = f32x4.mul(c3, f32x4.sub(v128.load(t3 + c), t));
          const along = f32x4.add(f32x4.sub(v128.load(T + c - 4), t), f32x4.sub(v128.load(T + c, 4), t));
          advance(c, f32x4.add(f32x4.add(f32x4.add(f0, f1), f32x4.add(f2, f3)), f32x4.mul(cy, along)));
        }
        continue;
      }
      const listStart = <usize>load<i32>(w, LIST_START) << 2;
      const listEnd = listStart + (<usize>load<i32>(w, LIST_LENGTH) << 2);
      for (let c = base + from; c < end; c += 16) {
        const t = v128.load(T + c);
        const f0 = f32x4.mul(c0, f32x4.sub(v128.load(t0 + c), t));
        const f1 = f32x4.mul(c1, f32x4.sub(v128.load(t1 + c), t));
        const f2 = f32x4.mul(c2, f32x4.sub(v128.load(t2 + c), t));
        const f3 = f32x4.mul(c3, f32x4.sub(v128.load(t3 + c), t));
        const along = f32x4.add(f32x4.sub(v128.load(T + c - 4), t), f32x4.sub(v128.load(T + c, 4), t));
        let sum = f32x4.add(f32x4.add(f32x4.add(f0, f1), f32x4.add(f2, f3)), f32x4.mul(cy, along));
        for (let l = listStart; l < listEnd; l += 4) {
          const n = (<usize>load<i32>(listRod + l) << 2) - base;
          sum = f32x4.add(sum, f32x4.mul(v128.load32_splat(listC + l), f32x4.sub(v128.load(T + n + c), t)));
        }
        advance(c, sum);
      }
    }
  }
}

// AssemblyScript decorator.
@inline
function advance(c: usize, sum: v128): void {
  const y = f32x4.add(sum, v128.load(R + c));
  const h = v128.load(H + c);
  const next = f32x4.add(h, y);
  v128.store(R + c, f32x4.sub(y, f32x4.sub(next, h)));
  v128.store(H + c, next);
}
