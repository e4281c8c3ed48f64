import { z } from 'zod';
import { jointSchema } from '../schema/bench.ts';
import { askedSchema } from '../schema/exercise.ts';
import { describeFound, InputError, parseWith } from '../schema/problem.ts';
import { profileSchema } from '../schema/profile.ts';
import { parseJson } from '../schema/read.ts';
import { upToCurrent, type Versions } from '../schema/version.ts';
import { jointFrame, scalesOf } from './joint-frame.ts';
import { pictureMarksSchema } from './marks.ts';

/** Largest marks file taken in, characters. */
const MOST_TEXT = 200_000;

/** Marks of a coupon: version 1 is the first that was ever written. */
const couponVersions: Versions = { current: 1, steps: new Map() };

const px = z.number().min(-100_000).max(100_000);

/**
 * A real coupon, sawn, ground, etched and photographed, as marked by hand. The picture itself stays with whoever took it; the file holds
 * what was marked on it, so that the same readings come out again.
 */
const couponSchema = z.strictObject({
  format: z.literal('toehold-coupon'),
  version: z.literal(1),
  picture: z.strictObject({
    name: z.string().max(200),
    width_px: z.int().min(1).max(100_000),
    height_px: z.int().min(1).max(100_000),
  }),
  /** Check number of the attempt it is laid beside; null where it stands alone. */
  attempt: z.string().max(64).nullable(),
  /** Height of the cut above the bottom of the joint, mm. */
  y_mm: z.number().min(0).max(2000),
  /** Joint and size the coupon was welded to. */
  joint: jointSchema,
  asked: askedSchema,
  /** Acceptance profile it is judged by. */
  profile: z.string().min(1).max(60),
  /** Two points of the picture and the length between them. */
  scale: z.strictObject({
    from: z.strictObject({ x: px, y: px }),
    to: z.strictObject({ x: px, y: px }),
    length_mm: z.number().positive().max(1000),
  }),
  /**
   * A second length, along the other plate's way. Where both are thicknesses of the plates, each in its own direction, a saw cut that was not
   * square is taken out with them.
   */
  across: z
    .strictObject({
      from: z.strictObject({ x: px, y: px }),
      to: z.strictObject({ x: px, y: px }),
      length_mm: z.number().positive().max(1000),
    })
    .exactOptional(),
  marks: pictureMarksSchema,
  /** The profile itself, where it is the school's own. */
  limits: profileSchema.exactOptional(),
  /** Initials of whoever set the marks. */
  reader: z.string().min(1).max(20).exactOptional(),
  /** The rest of the coupon, broken open: length found tied in at the root, of how much, and where not. */
  broken: z
    .strictObject({
      tiedIn_mm: z.number().min(0).max(2000),
      of_mm: z.number().positive().max(2000),
      where: z.string().max(200),
    })
    .refine((b) => b.tiedIn_mm <= b.of_mm, 'no more tied in than was broken open')
    .exactOptional(),
});

/** A real coupon: its picture by name and size, and the marks set on it. */
export type Coupon = z.infer<typeof couponSchema>;

/**
 * Checks a coupon's marks.
 * @throws InputError naming `file` and the field: shape, version, a scale or directions too short, a picture too far askew
 */
export function checkCoupon(input: unknown, file = 'coupon'): Coupon {
  const head = input as { format?: unknown } | null;
  if (typeof head !== 'object' || head === null || head.format !== 'toehold-coupon')
    throw new InputError(file, [
      {
        path: 'format',
        found: describeFound(typeof head === 'object' && head !== null ? head.format : head),
        allowed: '"toehold-coupon"; this file does not hold the marks of a coupon',
      },
    ]);
  const coupon = parseWith(couponSchema, upToCurrent({ ...head }, file, couponVersions), file);
  try {
    jointFrame(coupon.marks, scalesOf(coupon));
  } catch (error) {
    throw error instanceof InputError ? new InputError(file, error.problems) : error;
  }
  return coupon;
}

/** Reads the marks of a coupon from the text of their file (`*.coupon.json`). @throws InputError */
export function readCoupon(text: string, file = 'coupon'): Coupon {
  return checkCoupon(parseJson(text, file, MOST_TEXT), file);
}
