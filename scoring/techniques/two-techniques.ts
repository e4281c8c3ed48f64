import { sectionSvg } from '../draw/section-svg.ts';
import type { Svg } from '../draw/svg.ts';
import { twoFacesSvg } from '../draw/two-faces-svg.ts';
import type { AttemptRecording } from '../schema/recording.ts';
import { said } from '../words/names.ts';
import { halvesOf, sidesOf, type TechniquePart } from './part.ts';
import { type TechniqueRow, techniqueRows } from './rows.ts';

/** Two techniques on one coupon, sawn through both: cuts, one laid over the other, and the difference in numbers. */
export interface TwoTechniques {
  names: [string, string];
  /** From and to of each part. */
  lengths: [string, string];
  cuts: { name: string; y_mm: number; svg: Svg }[];
  over: Svg;
  rows: TechniqueRow[];
  /** What differs by more than its plus-minus, in a sentence. */
  says: string;
  /** What of it the model does not carry. */
  note: string;
}

/** Which coupon: one attempt with a half in each technique, or two attempts, one for each side. */
export type OnOneCoupon =
  | { how: 'halves'; recording: AttemptRecording; at_mm?: number }
  | { how: 'sides'; first: AttemptRecording; second: AttemptRecording };

/** Welds again and compares. @throws InputError where the coupon cannot be compared */
export function twoTechniques(coupon: OnOneCoupon): TwoTechniques {
  const [first, second] =
    coupon.how === 'halves' ? halvesOf(coupon.recording, coupon.at_mm) : sidesOf(coupon.first, coupon.second);
  const rows = techniqueRows(first, second);
  const [a, b] = [cutOf(first, 'first'), cutOf(second, 'second')];
  return {
    names: [first.name, second.name],
    lengths: [lengthOf(first), lengthOf(second)],
    cuts: [a.drawn, b.drawn],
    over: twoFacesSvg(a.face, b.face),
    rows,
    says: sentence(rows, second.name, first.name),
    note:
      coupon.how === 'halves'
        ? 'The upper half was welded on plates that the lower had warmed, as on a real coupon: part of a difference is that. Weld it the other way round as well.'
        : 'Each side is welded on cold plates of its own: the warmth that the first side leaves in a real coupon is not carried over.',
  };
}

function cutOf(part: TechniquePart, id: string) {
  const y_mm = Math.round((part.from_mm + part.to_mm) / 2);
  const section = part.attempt.section(y_mm);
  const station = part.survey.at(y_mm)?.station ?? null;
  const { name } = part;
  return {
    face: { section, station, name },
    drawn: { name, y_mm, svg: sectionSvg(section, station, { id: `${id}-technique`, scale: 22 }) },
  };
}

function lengthOf({ from_mm, to_mm }: TechniquePart): string {
  return `${said(from_mm)} to ${said(to_mm)} mm`;
}

function sentence(rows: readonly TechniqueRow[], second: string, first: string): string {
  const differing = rows.filter((r) => r.differs === true);
  if (differing.length === 0) return 'No reading of the bead differs by more than its plus-minus.';
  const told = differing.map(
    (r) => `${r.what} ${said(Math.abs(r.difference!), 2)} ${r.unit} ${r.difference! > 0 ? 'more' : 'less'}`,
  );
  return `The ${second} against the ${first}: ${told.join('; ')}.`;
}
