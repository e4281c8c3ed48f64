import type { Coupon, Exercise } from '../../../scoring/index.ts';

/** The result of breaking the rest, as far as it has been typed. */
interface Broken {
  tiedIn_mm: number | null;
  of_mm: number | null;
  where: string;
}

/** What is typed beside the marks of a coupon, finished or not. */
export interface Typed {
  length_mm: number | null;
  y_mm: number;
  profile: string;
  /** Length of the scale the other way; null: not set. */
  across_mm: number | null;
  reader: string;
  broken: Broken;
}

/** What the coupon was welded for. */
export type About = Pick<Exercise, 'joint' | 'asked' | 'limits'>;

export function aboutOf({ joint, asked, limits }: Pick<Coupon, 'joint' | 'asked' | 'limits'>): About {
  // Limits of a school's own go with the coupon; nothing where it is judged by a ready profile.
  return { joint, asked, ...(limits === undefined ? {} : { limits }) };
}

export function typedOf(coupon: Coupon): Typed {
  return {
    length_mm: coupon.scale.length_mm,
    y_mm: coupon.y_mm,
    profile: coupon.profile,
    across_mm: coupon.across?.length_mm ?? null,
    reader: coupon.reader ?? '',
    broken: coupon.broken ?? NOT_BROKEN,
  };
}

/** Nothing typed yet, for a cut of the exercise on the bench. */
export function nothingTyped(y_mm: number, profile: string): Typed {
  return { length_mm: null, y_mm, profile, across_mm: null, reader: '', broken: NOT_BROKEN };
}

const NOT_BROKEN: Broken = { tiedIn_mm: null, of_mm: null, where: '' };

/** The break test as a coupon keeps it; null until both lengths are there. */
export function brokenOf({ tiedIn_mm, of_mm, where }: Broken): NonNullable<Coupon['broken']> | null {
  if (tiedIn_mm === null || of_mm === null || of_mm <= 0) return null;
  return { tiedIn_mm: Math.min(tiedIn_mm, of_mm), of_mm, where };
}
