import type { Coupon } from '../macro/coupon.ts';
import { couponReport } from '../macro/coupon-report.ts';
import { InputError } from '../schema/problem.ts';
import type { ReadingRow } from './readings-table.ts';

/**
 * Readings of one macro as its marks give them, for a study of agreement. The macro is known by its picture's name and its height.
 * @throws InputError when nobody is named as its reader, or the marks make no fillet
 */
export function readingRow(coupon: Coupon, file: string): ReadingRow {
  if (coupon.reader === undefined) {
    throw new InputError(file, [
      { path: 'reader', found: 'nothing', allowed: 'the initials of whoever set the marks' },
    ]);
  }
  const { readings: r } = couponReport(coupon);
  return {
    macro: `${coupon.picture.name}, ${coupon.y_mm} mm`,
    reader: coupon.reader,
    values: {
      'leg, right or back': r.legA_mm,
      'leg, left or edge': r.legB_mm,
      throat: r.throat_mm,
      convexity: r.convexity_mm,
      'past the corner at the root': r.rootFusion_mm,
      'fused, right or back': r.fusionDepthA_mm,
      'fused, left or edge': r.fusionDepthB_mm,
    },
  };
}
