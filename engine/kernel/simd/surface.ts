// SIMD twin of ../surface-reference.ts in AssemblyScript: height and response, or the u and the y face, in one register.

let capacity: i32 = 0;
let pair: usize = 0;
let link: usize = 0;
let distance: usize = 0;
let face: usize = 0;
let bottom: usize = 0;
let load_: usize = 0;
let slope: usize = 0;
let order: usize = 0;
let channel: usize = 0;
let stiff_: usize = 0;
let source: usize = 0;
let potential: usize = 0;
let omega: f64 = 0;
let every: i32 = 0;
let largest: f64 = 0;
let tiny: f64 = 0;
let flowOmega: f64 = 0;

export function setup(
  capacity_: i32, pair_: usize, link_: usize, distance_: usize, face_: usize, bottom_: usize, loads: usize, slope_: usize,
  order_: usize, channel_: usize, stiffs: usize, source_: usize, potential_: usize,
  omega_: f64, every_: i32, largest_: f64, tiny_: f64, flowOmega_: f64,
): void {
  capacity = capacity_;
  pair = pair_;
  link = link_;
  distance = distance_;
  face = face_;
  bottom = bottom_;
  load_ = loads;
  slope = slope_;
  order = order_;
  channel = channel_;
  stiff_ = stiffs;
  source = source_;
  potential = potential_;
  omega = omega_;
  every = every_;
  largest = largest_;
  tiny = tiny_;
  flowOmega = flowOmega_;
}

export function relax(
  count: i32, red: i32, du: f64, dy: f64, tension: f64, volume: f64, lambda: f64, sweeps: i32,
): f64 {
  const area = du * dy;
  let pressure = lambda;
  for (let pass = 0; pass < sweeps; pass++) {
    if (pass % every == 0) updateFaces(count, tension * dy, tension * du);
    sweep(area, pressure, 0, red);
    sweep(area, pressure, red, count);
    if (pass % every == every - 1) pressure = correct(count, volume, pressure);
  }
  for (let pass = 0; pass < every; pass++) pressure = correct(count, volume, pressure);
  let sum: f64 = 0;
  let depth: f64 = 0;
  for (let i = 0; i < count; i++) {
    const w = load<f64>(pair + (<usize>i << 4));
    sum += w;
    depth += w - load<f64>(bottom + (<usize>i << 3));
  }
  if (depth > tiny) {
    const scale = max<f64>(-1, (volume - sum) / depth);
    for (let i = 0; i < count; i++) {
      const at = pair + (<usize>i << 4);
      const w = load<f64>(at);
      store<f64>(at, w + scale * (w - load<f64>(bottom + (<usize>i << 3))));
    }
  }
  return pressure;
}

// AssemblyScript decorator.
@inline
function heightOf(f: usize): f64 {
  return load<f64>(pair + (<usize>load<i32>(link + (f << 2)) << 4));
}

function updateFaces(count: i32, stiffU: f64, stiffY: f64): void {
  const zero = f64x2.splat(0);
  const one = f64x2.splat(1);
  const half = f64x2.splat(0.5);
  const stiff = f64x2.replace_lane(f64x2.splat(stiffU), 1, stiffY);
  for (let i = 0; i < count; i++) {
    const f = <usize>i << 2;
    const here = v128.load64_splat(pair + (<usize>i << 4));
    const low = f64x2.replace_lane(f64x2.splat(heightOf(f)), 1, heightOf(f + 2));
    const high = f64x2.replace_lane(f64x2.splat(heightOf(f + 1)), 1, heightOf(f + 3));
    const d = distance + (f << 3);
    const u = v128.load(d);
    const y = v128.load(d, 16);
    const run = f64x2.add(v128.shuffle<i64>(u, y, 0, 2), v128.shuffle<i64>(u, y, 1, 3));
    const rise = f64x2.add(f64x2.sub(here, low), f64x2.sub(high, here));
    v128.store(slope + (<usize>i << 4), v128.and(f64x2.div(rise, run), f64x2.gt(run, zero)));
  }
  for (let i = 0; i < count; i++) {
    const f = <usize>i << 2;
    const here = v128.load64_splat(pair + (<usize>i << 4));
    const d = distance + (f << 3);
    const u = v128.load(d);
    const y = v128.load(d, 16);
    const own = v128.load(slope + (<usize>i << 4));
    // The far faces, u+ and y+.
    const qu = load<i32>(link + ((f + 1) << 2));
    const qy = load<i32>(link + ((f + 3) << 2));
    const far = v128.shuffle<i64>(u, y, 1, 3);
    const overU = qu < capacity;
    const overY = qy < capacity;
    const a = coefficient(
      here, f64x2.replace_lane(f64x2.splat(load<f64>(pair + (<usize>qu << 4))), 1, load<f64>(pair + (<usize>qy << 4))), far, own,
      f64x2.replace_lane(
        f64x2.splat(load<f64>(slope + (<usize>(overU ? qu : i) << 4), 8)), 1, load<f64>(slope + (<usize>(overY ? qy : i) << 4)),
      ), stiff, zero, one, half,
    );
    const au = f64x2.extract_lane(a, 0);
    const ay = f64x2.extract_lane(a, 1);
    store<f64>(face + ((f + 1) << 3), au);
    store<f64>(face + ((f + 3) << 3), ay);
    if (overU && qu != i) store<f64>(face + (<usize>qu << 5), au);
    if (overY && qy != i) store<f64>(face + (<usize>qy << 5), ay, 16);
    // The near faces only where no other node has them: contact lines and walls.
    const pu = load<i32>(link + (f << 2));
    const py = load<i32>(link + ((f + 2) << 2));
    const edgeU = pu >= capacity || pu == i;
    const edgeY = py >= capacity || py == i;
    if (edgeU || edgeY) {
      const b = coefficient(
        here, f64x2.replace_lane(f64x2.splat(load<f64>(pair + (<usize>pu << 4))), 1, load<f64>(pair + (<usize>py << 4))),
        v128.shuffle<i64>(u, y, 0, 2), own, v128.shuffle<i64>(own, own, 1, 0), stiff, zero, one, half,
      );
      if (edgeU) store<f64>(face + (f << 3), f64x2.extract_lane(b, 0));
      if (edgeY) store<f64>(face + ((f + 2) << 3), f64x2.extract_lane(b, 1));
    }
  }
}

// Lanes: u face (tangent along y), y face (tangent along u). `own` is (slope u, slope y), `other` already crossed over.
@inline
function coefficient(
  here: v128, there: v128, d: v128, own: v128, other: v128, stiff: v128, zero: v128, one: v128, half: v128,
): v128 {
  const gn = f64x2.div(f64x2.sub(there, here), d);
  const gt = f64x2.mul(half, f64x2.add(v128.shuffle<i64>(own, own, 1, 0), other));
  const stretch = f64x2.sqrt(f64x2.add(f64x2.add(one, f64x2.mul(gn, gn)), f64x2.mul(gt, gt)));
  return v128.and(f64x2.div(stiff, f64x2.mul(d, stretch)), f64x2.gt(d, zero));
}

function sweep(area: f64, lambda: f64, from: i32, to: i32): void {
  const over = f64x2.splat(omega);
  for (let k = from; k < to; k++) {
    const i = <usize>load<i32>(order + (<usize>k << 2));
    const f = face + (i << 5);
    const l = link + (i << 4);
    const a0 = load<f64>(f);
    const a1 = load<f64>(f, 8);
    const a2 = load<f64>(f, 16);
    const a3 = load<f64>(f, 24);
    const sum = tiny + a0 + a1 + a2 + a3;
    let both = f64x2.add(f64x2.splat(0), f64x2.mul(f64x2.splat(a0), v128.load(pair + (<usize>load<i32>(l) << 4))));
    both = f64x2.add(both, f64x2.mul(f64x2.splat(a1), v128.load(pair + (<usize>load<i32>(l, 4) << 4))));
    both = f64x2.add(both, f64x2.mul(f64x2.splat(a2), v128.load(pair + (<usize>load<i32>(l, 8) << 4))));
    both = f64x2.add(both, f64x2.mul(f64x2.splat(a3), v128.load(pair + (<usize>load<i32>(l, 12) << 4))));
    const push = f64x2.replace_lane(f64x2.splat(area), 0, area * (lambda - load<f64>(load_ + (i << 3))));
    const at = pair + (i << 4);
    const now = v128.load(at);
    const next = f64x2.add(now, f64x2.mul(over, f64x2.sub(f64x2.div(f64x2.add(both, push), f64x2.splat(sum)), now)));
    const floor = load<f64>(bottom + (i << 3));
    if (f64x2.extract_lane(next, 0) <= floor) v128.store(at, f64x2.replace_lane(f64x2.splat(0), 0, floor));
    else v128.store(at, next);
  }
}

function correct(count: i32, volume: f64, lambda: f64): f64 {
  let sums = f64x2.splat(0);
  const end = pair + (<usize>count << 4);
  for (let at = pair; at < end; at += 16) sums = f64x2.add(sums, v128.load(at));
  const height = f64x2.extract_lane(sums, 0);
  const response = f64x2.extract_lane(sums, 1);
  let d = response > 1e-12 ? (volume - height) / response : volume > height ? largest : 0;
  d = d > largest ? largest : max<f64>(d, -largest);
  let low = bottom;
  for (let at = pair; at < end; at += 16) {
    store<f64>(at, max<f64>(load<f64>(at) + d * load<f64>(at, 8), load<f64>(low)));
    low += 8;
  }
  return lambda + d;
}

export function flow(count: i32, red: i32, sweeps: i32): void {
  for (let pass = 0; pass < sweeps; pass++) {
    sweepFlow(0, red);
    sweepFlow(red, count);
  }
}

// Two nodes of a colour at a time: neither looks at the other. The last one of an odd number goes with itself.
function sweepFlow(from: i32, to: i32): void {
  const over = f64x2.splat(flowOmega);
  const zero = f64x2.splat(0);
  for (let k = from; k < to; k += 2) {
    const i = <usize>load<i32>(order + (<usize>k << 2));
    const j = <usize>load<i32>(order + (<usize>min(k + 1, to - 1) << 2));
    const ci = channel + (i << 5);
    const cj = channel + (j << 5);
    const li = link + (i << 4);
    const lj = link + (j << 4);
    let sum = f64x2.add(zero, f64x2.mul(both(ci, cj), reached(li, lj)));
    sum = f64x2.add(sum, f64x2.mul(both(ci + 8, cj + 8), reached(li + 4, lj + 4)));
    sum = f64x2.add(sum, f64x2.mul(both(ci + 16, cj + 16), reached(li + 8, lj + 8)));
    sum = f64x2.add(sum, f64x2.mul(both(ci + 24, cj + 24), reached(li + 12, lj + 12)));
    const stiff = both(stiff_ + (i << 3), stiff_ + (j << 3));
    const pi = potential + (i << 3);
    const pj = potential + (j << 3);
    const now = both(pi, pj);
    const level = f64x2.div(f64x2.add(sum, both(source + (i << 3), source + (j << 3))), stiff);
    const next = f64x2.add(now, f64x2.mul(over, f64x2.sub(level, now)));
    // A column on its own has nowhere to give to.
    const kept = v128.bitselect(now, next, f64x2.eq(stiff, zero));
    v128.store64_lane(pi, kept, 0);
    v128.store64_lane(pj, kept, 1);
  }
}

// AssemblyScript decorator.
@inline
function both(i: usize, j: usize): v128 {
  return v128.load64_lane(j, v128.load64_zero(i), 1);
}

// Potentials of the nodes two faces look at.
@inline
function reached(i: usize, j: usize): v128 {
  return both(potential + (<usize>load<i32>(i) << 3), potential + (<usize>load<i32>(j) << 3));
}
