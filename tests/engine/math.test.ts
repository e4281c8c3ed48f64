import { describe, expect, it } from 'vitest';
import { createRandom } from '../../engine/index.ts';
import { clamp, cos, exp, sin } from '../../engine/numerics/math.ts';

/**
 * Our functions against the platform's (V8's fdlibm, itself below 1 ulp), over their whole domain: an even sweep, a random one with the seed
 * below, and the places where something changes over.
 */
const SEED = 20261126;
const POINTS = 200_000;
/** 2^-53: half the distance between 1 and the next number. */
const UNIT = 2 ** -53;

const bits = new DataView(new ArrayBuffer(8));
/** Distance from |x| to the next number up. */
function ulp(x: number): number {
  bits.setFloat64(0, Math.abs(x));
  bits.setBigInt64(0, bits.getBigInt64(0) + 1n);
  return bits.getFloat64(0) - Math.abs(x);
}

function* places(low: number, high: number, more: readonly number[] = []): Generator<number> {
  const random = createRandom(SEED);
  yield* more;
  for (let i = 0; i <= POINTS; i++) yield low + ((high - low) * i) / POINTS;
  for (let i = 0; i < POINTS; i++) yield low + (high - low) * random.next();
}

/** Largest error, each divided by `unit` there, and where. */
function worst(
  ours: (x: number) => number,
  theirs: (x: number) => number,
  at: Iterable<number>,
  unit: (x: number) => number,
) {
  let error = 0;
  let place = 0;
  for (const x of at) {
    const off = Math.abs(ours(x) - theirs(x)) / unit(x);
    // Written so that a NaN shows.
    if (!(off <= error)) {
      error = off;
      place = x;
    }
  }
  return { error, place };
}

describe(`exp (seed ${SEED})`, () => {
  /** Where the power of two changes: odd halves of ln 2. */
  const seams = Array.from({ length: 2000 }, (_, n) => (n - 1000 + 0.5) * Math.LN2 * 0.99999999).filter(
    (x) => Math.abs(x) < 700,
  );

  it.each([
    ['its whole domain', -700, 700],
    ['arcs and footprints', -20, 1],
    ['near nothing', -1e-8, 1e-8],
  ])('is at most 2 ulp off over %s', (_name, low, high) => {
    expect(
      worst(exp, Math.exp, places(low, high, low === -700 ? seams : []), (x) => ulp(Math.exp(x))).error,
    ).toBeLessThanOrEqual(2);
  });

  it('ends where it says', () => {
    expect(exp(0)).toBe(1);
    expect(exp(-700.0001)).toBe(0);
    expect(exp(700.0001)).toBe(Number.POSITIVE_INFINITY);
    expect(exp(Number.NEGATIVE_INFINITY)).toBe(0);
    expect(exp(Number.NaN)).toBeNaN();
  });
});

describe(`sin and cos (seed ${SEED})`, () => {
  const turns = Array.from({ length: 41 }, (_, n) => ((n - 20) * Math.PI) / 2).filter((x) => Math.abs(x) <= 7);

  it.each([
    ['sin', sin, Math.sin],
    ['cos', cos, Math.cos],
  ] as const)('%s is at most 4 units of 2^-53 off within a turn either way', (_name, ours, theirs) => {
    expect(worst(ours, theirs, places(-7, 7, turns), () => UNIT).error).toBeLessThanOrEqual(4);
  });

  it.each([
    ['sin', 1.5, sin, Math.sin],
    ['cos', 2.5, cos, Math.cos],
  ] as const)('%s loses at most %f units a radian farther out', (_name, growth, ours, theirs) => {
    const found = worst(ours, theirs, places(-1000, 1000), (x) => UNIT * (4 + growth * Math.abs(x)));
    expect(found.error).toBeLessThanOrEqual(1);
    expect(found.error).toBeGreaterThan(0.5);
  });

  it('keep a NaN a NaN', () => {
    expect(sin(Number.NaN)).toBeNaN();
    expect(cos(Number.POSITIVE_INFINITY)).toBeNaN();
  });
});

it('clamp keeps what lies inside', () => {
  expect([clamp(1, 2, 3), clamp(4, 2, 3), clamp(2.5, 2, 3), clamp(Number.NaN, 2, 3)]).toEqual([2, 3, 2.5, Number.NaN]);
});
