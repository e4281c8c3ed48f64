import { type Coupon, type Exercise, InputError, type PictureSpot } from '../../../scoring/index.ts';
import { problemOf } from '../../core/session/problem.ts';
import { words } from '../../locale/index.ts';
import { type MarkSet, pointsOf } from './marks.ts';

/** What is set on the sheet besides the marks. */
export interface CouponEntry {
  picture: Coupon['picture'];
  length_mm: number;
  y_mm: number;
  profile: string;
  /** Check number of the attempt on the bench. */
  attempt: string | null;
  exercise: Pick<Exercise, 'joint' | 'asked' | 'limits'>;
  /** Length the other way, mm; null: not set. */
  across_mm: number | null;
  reader: string;
  broken: NonNullable<Coupon['broken']> | null;
}

/** The coupon as a file has it. Every mark that has to be there must be set. */
export function couponFrom(marks: MarkSet, entry: CouponEntry): Coupon {
  const all = (id: string): PictureSpot[] => pointsOf(marks, id).map(({ x, y }) => ({ x, y }));
  const first = (id: string): PictureSpot => all(id)[0];
  const [from, to] = all('scale');
  const [acrossFrom, acrossTo] = all('across');
  const { limits } = entry.exercise;
  return {
    format: 'toehold-coupon',
    version: 1,
    picture: entry.picture,
    attempt: entry.attempt,
    y_mm: entry.y_mm,
    joint: entry.exercise.joint,
    asked: entry.exercise.asked,
    profile: entry.profile,
    scale: { from, to, length_mm: entry.length_mm },
    ...(acrossTo === undefined || entry.across_mm === null
      ? {}
      : { across: { from: acrossFrom, to: acrossTo, length_mm: entry.across_mm } }),
    ...(limits === undefined || limits.name !== entry.profile ? {} : { limits }),
    ...(entry.reader.trim() === '' ? {} : { reader: entry.reader.trim() }),
    ...(entry.broken === null ? {} : { broken: entry.broken }),
    marks: {
      root: first('root'),
      plateA: first('plateA'),
      plateB: first('plateB'),
      toeA: first('toeA'),
      toeB: first('toeB'),
      face: all('face'),
      fusionA: all('fusionA'),
      fusionB: all('fusionB'),
      undercutA: first('undercutA') ?? null,
      undercutB: first('undercutB') ?? null,
    },
  };
}

export function marksFrom({ marks, scale, across }: Coupon): MarkSet {
  const maybe = (spot: PictureSpot | null): PictureSpot[] => (spot ? [spot] : []);
  return {
    scale: [scale.from, scale.to],
    across: across === undefined ? [] : [across.from, across.to],
    root: [marks.root],
    plateB: [marks.plateB],
    plateA: [marks.plateA],
    toeB: [marks.toeB],
    toeA: [marks.toeA],
    face: marks.face,
    fusionB: marks.fusionB,
    fusionA: marks.fusionA,
    undercutB: maybe(marks.undercutB),
    undercutA: maybe(marks.undercutA),
  };
}

/** Why something could not be used, without the name of a file nobody chose. */
export function whyNot(error: unknown): string {
  if (error instanceof InputError) return error.problems.map(words.problems.found).join('; ');
  return words.problems.say(problemOf(error));
}
