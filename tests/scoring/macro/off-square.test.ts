/** A saw cut off square, taken out by a scale each way; and what else a coupon's file may say. */
import { describe, expect, it } from 'vitest';
import { type Coupon, couponReport, type PictureSpot, readCoupon } from '../../../scoring/index.ts';
import { couponOf, plain } from './marked.ts';

/** Stretches a picture one way, as a cut off square does: up and down, by 1/cos. */
function sawn(coupon: Coupon, deg: number): Coupon {
  const by = 1 / Math.cos((deg * Math.PI) / 180);
  const at = ({ x, y }: PictureSpot): PictureSpot => ({ x, y: 1100 + (y - 1100) * by });
  const { marks } = coupon;
  const maybe = (spot: PictureSpot | null): PictureSpot | null => (spot === null ? null : at(spot));
  return {
    ...coupon,
    marks: {
      ...marks,
      root: at(marks.root),
      plateA: at(marks.plateA),
      plateB: at(marks.plateB),
      toeA: at(marks.toeA),
      toeB: at(marks.toeB),
      face: marks.face.map(at),
      fusionA: marks.fusionA.map(at),
      fusionB: marks.fusionB.map(at),
      undercutA: maybe(marks.undercutA),
      undercutB: maybe(marks.undercutB),
    },
    // Thickness of the through plate, 6 mm up and down in the picture.
    across: { from: at({ x: 1300, y: 1100 }), to: at({ x: 1300, y: 1100 + 6 * plain.pxPerMm }), length_mm: 6 },
  };
}

describe('a cut off square', () => {
  it.each([0, 5, 10, 18, 24])('of %d degrees reads as the square one, and says by how much it was off', (deg) => {
    const square = couponReport(couponOf(plain));
    const report = couponReport(sawn(couponOf(plain), deg));
    for (const name of ['legA_mm', 'legB_mm', 'throat_mm', 'convexity_mm', 'fusionDepthA_mm', 'rootFusion_mm'] as const)
      expect(report.readings[name], name).toBeCloseTo(square.readings[name]!, 2);
    expect(report.offSquare_deg).toBeCloseTo(deg, 0);
    expect(square.offSquare_deg).toBeNull();
  });

  it('reads too long by its stretch where only one scale was set', () => {
    const { across: _across, ...once } = sawn(couponOf(plain), 24);
    expect(couponReport(once).readings.legB_mm).toBeCloseTo(plain.legB_mm / Math.cos((24 * Math.PI) / 180), 2);
  });

  it('is refused where it is too far off, or both lengths run one way', () => {
    expect(() => couponReport(sawn(couponOf(plain), 30))).toThrow(/across: found a cut 30° off square/);
    const coupon = couponOf(plain);
    expect(() => couponReport({ ...coupon, across: coupon.scale })).toThrow(
      /across: found two lengths that run the same way/,
    );
  });
});

describe('a coupon’s file', () => {
  const read = (change: object) => readCoupon(JSON.stringify({ ...couponOf(plain), ...change }), 'c.coupon.json');

  it('may name its reader and how the rest broke', () => {
    const broken = { tiedIn_mm: 41, of_mm: 44, where: '12 to 15' };
    expect(read({ reader: 'IC', broken })).toMatchObject({ reader: 'IC', broken });
    expect(() => read({ broken: { ...broken, tiedIn_mm: 50 } })).toThrow(
      /broken: .*no more tied in than was broken open/,
    );
    expect(() => read({ reader: '' })).toThrow(/reader/);
  });
});
