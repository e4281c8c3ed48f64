import { jointHolds_mm2, metalLaid_mm2 } from '../../engine/index.ts';
import { exercises } from '../exercises/ready.ts';
import { type Exercise, sizeAsked } from '../schema/exercise.ts';
import type { Line } from '../schema/result.ts';
import { causeOf } from './cause.ts';
import { type Facts, outside, shareOf } from './facts.ts';
import type { Found } from './found.ts';

/** Metal laid by the hand that was asked for, against metal the joint holds, and what an exercise of the workshop lays in such a joint. */
export interface Metal {
  laid_mm2: number;
  holds_mm2: number;
  /** Laid over held, as a share of the same in the workshop's own exercise; null where no exercise is near. */
  ofUsual: number | null;
}

/** An exercise speaks for joints of its kind whose plates are within this of its own, mm. */
const NEAR_MM = 1;

/**
 * Settings against the joint. A flat fillet is never exactly full: demonstrations that hold lay between 1.2 and 2.4 times what the joint holds, so
 * the measure of too much is what the ready exercise nearest to this joint lays, and not the joint alone.
 */
export function metalOf(e: Exercise): Metal {
  const [laid_mm2, holds_mm2] = laidAndHeld(e);
  const usual = usualFor(e);
  if (usual === null) return { laid_mm2, holds_mm2, ofUsual: null };
  const [laid, held] = laidAndHeld(usual);
  return { laid_mm2, holds_mm2, ofUsual: laid_mm2 / holds_mm2 / (laid / held) };
}

function laidAndHeld({ process, joint, asked, demonstration }: Exercise): [number, number] {
  return [metalLaid_mm2(process, demonstration.travel_mmps), jointHolds_mm2(joint, sizeAsked(asked).leg_mm)];
}

/** The ready exercise nearest to this joint: of its kind, about its thickness, and the nearest size. */
export function usualFor(e: Exercise): Exercise | null {
  const size = sizeAsked(e.asked).leg_mm;
  const near = exercises.filter(
    (x) =>
      x.settings === 'fixed' &&
      x.joint.kind === e.joint.kind &&
      x.joint.gap_mm === 0 &&
      Math.abs(x.joint.plateA_mm - e.joint.plateA_mm) <= NEAR_MM &&
      (x.demonstration.pattern === 'straight') === (e.demonstration.pattern === 'straight'),
  );
  const far = (x: Exercise): number =>
    Math.abs(sizeAsked(x.asked).leg_mm - size) + Math.abs(x.joint.plateA_mm - e.joint.plateA_mm);
  return near.reduce<Exercise | null>((best, x) => (best === null || far(x) < far(best) ? x : best), null);
}

/** More metal than such a joint takes, by so much that it is no matter of skill; null where it is not, or not known. */
export function overfull(e: Exercise): { laid_mm2: number; holds_mm2: number } | null {
  const { laid_mm2, holds_mm2, ofUsual } = metalOf(e);
  return ofUsual !== null && ofUsual >= TOO_MUCH ? { laid_mm2, holds_mm2 } : null;
}

/** Laid over usually laid: above is too much wire for the joint, below too little. */
export const TOO_MUCH = 1.15;
export const TOO_LITTLE = 0.88;

/** Size asked for, missed either way. */
export function wrongSize(f: Facts): Found | null {
  const { asked } = f.exercise;
  const short = sizeLine(f, 'at least') ?? outside(f, 'throat short, length');
  const at = f.bead.worst;
  if (short !== null && at !== null) {
    const y = f.bead.worstAt_mm.size_mm ?? short.y_mm;
    const place = shortPlace(f, short);
    return {
      code: 'undersize',
      data: {
        size_mm: at.size_mm,
        asked_mm: sizeAsked(asked).leg_mm,
        length_mm: f.bead.undersize_mm,
        laid_mm2: f.figures.laid_mm2,
        holds_mm2: f.figures.holds_mm2,
        place,
      },
      ...causeOf(f, y, 'root'),
      side: null,
      // A short place in a run that holds is no reason to climb otherwise all the way.
      change: place === null ? { what: 'travel_mmps', by: -0.2 } : null,
    };
  }
  const over = outside(f, 'size over') ?? sizeLine(f, 'at most');
  if (over === null) return null;
  const most = asked.atMost_mm ?? asked.size_mm;
  return {
    code: 'oversize',
    data: { size_mm: largestSize(f), most_mm: most, length_mm: f.bead.oversize_mm },
    ...causeOf(f, over.y_mm, 'root'),
    side: null,
    change: { what: 'travel_mmps', by: 0.2 },
  };
}

/** Short over less than this share of the judged length is a place and not a run; a tenth is what D1.1 Table 6.1 (6) itself lets be short. */
export const PLACE_SHARE = 0.1;
/** Short by less than this many times its plus-minus is little. */
const LITTLE = 2;

/** A size that is short at a place only, mm; null where it is short over the run. */
function shortPlace(f: Facts, line: Line): { from_mm: number; to_mm: number; little: boolean } | null {
  const from = line.places.map((p) => p.from_mm);
  if (line.measure === 'throat short, length' || from.length === 0 || shareOf(f, line) >= PLACE_SHARE) return null;
  const little = Math.abs(line.reading - line.limit) < LITTLE * line.plusMinus;
  return { from_mm: Math.min(...from), to_mm: Math.max(...line.places.map((p) => p.to_mm)), little };
}

function largestSize(f: Facts): number {
  return Math.max(...f.bead.stations.map((s) => s.size_mm));
}

/** The line on leg or throat that limits the size from one side, if it is broken for sure. */
export function sizeLine(f: Facts, sense: Line['sense']): Line | null {
  const lines = f.lines.filter((l) => (l.measure === 'leg' || l.measure === 'throat') && l.sense === sense);
  return lines.find((l) => l.verdict === 'outside') ?? null;
}
