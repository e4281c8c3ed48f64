import type { PlusMinusName } from '../measures/precision.ts';

/**
 * How far readings taken by hand off an etched macro may be off (common practice, no source): legs ±0.25 mm, convexity ±0.2,
 * fusion ±0.3; a throat lies between the two, the difference of two legs is off by both.
 */
export const byHand = {
  leg: 0.25,
  throat: 0.2,
  convexity: 0.2,
  'toe angle': 10,
  undercut: 0.2,
  overlap: 0.3,
  'unequal legs': 0.35,
  fusion: 0.3,
  'root fusion': 0.3,
  gap: 0.1,
} as const satisfies Partial<Record<PlusMinusName, number>>;

/** A reading that can be taken by hand on a cut. */
export type ByHandName = keyof typeof byHand;

/** A mark is set to within so many pixels of the picture; it counts where a picture is coarse or its scale short. */
const MARK_PX = 2;

/** How large a picture shows what is on it. */
export interface PictureScale {
  mmPerPx: number;
  /** Distance between the two points the scale was set by. */
  length_px: number;
}

/**
 * Plus-minus of a reading taken off a picture, in the reading's unit (mm or degrees): by hand, and on top of it what the scale's two
 * points and the mark itself may be off, added as independent errors.
 */
export function byHandOn(name: ByHandName, reading: number, scale: PictureScale): number {
  const own = byHand[name];
  if (name === 'toe angle') return own;
  const ofScale = (reading * Math.SQRT2 * MARK_PX) / scale.length_px;
  const ofMark = MARK_PX * scale.mmPerPx;
  return Math.round(100 * Math.sqrt(own * own + ofScale * ofScale + ofMark * ofMark)) / 100;
}
