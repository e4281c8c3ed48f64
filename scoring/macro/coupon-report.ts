import { compare, MM_PER_INCH, worse } from '../lines/limit.ts';
import { allLines } from '../lines/lines.ts';
import { profileOf } from '../profiles/of-exercise.ts';
import type { Gap } from '../schema/gap.ts';
import { describeFound, InputError } from '../schema/problem.ts';
import type { Profile } from '../schema/profile.ts';
import type { Line, Verdict } from '../schema/result.ts';
import type { Station } from '../schema/station.ts';
import { gapSaid } from '../words/gaps.ts';
import { type ByHandName, byHandOn, type PictureScale } from './by-hand.ts';
import type { Coupon } from './coupon.ts';
import { placeMarks, scalesOf } from './joint-frame.ts';
import { type MarkedReadings, readMarks } from './read-marks.ts';

/** What the marks on a real cut come to, judged by a profile. */
export interface CouponReport {
  readings: MarkedReadings;
  /** Same lines as an attempt has, at one height and with the plus-minus of a reading by hand. */
  lines: Line[];
  /** Of this one cut; the worst line decides. No verdict while the root is not marked. */
  verdict: Verdict;
  notMeasured: { what: string; why: string }[];
  /** By how much the saw was off square, taken out of every reading; null where only one scale was set. degrees */
  offSquare_deg: number | null;
  profile: Pick<Profile, 'name' | 'title' | 'edition'>;
}

/** Plus-minus of each line a cut by hand can give; a line not named here is not read off a picture. */
const OFF_BY: Record<string, ByHandName> = {
  undercut: 'undercut',
  convexity: 'convexity',
  'toe angle': 'toe angle',
  'unequal legs': 'unequal legs',
  leg: 'leg',
  throat: 'throat',
  'size over': 'leg',
  'fusion to plate': 'fusion',
  'root fusion': 'root fusion',
  gap: 'gap',
};

/** The field of the readings a line rests on, where that may be missing. */
const NEEDS: Record<string, (r: MarkedReadings, side: Line['side']) => number | null> = {
  undercut: (r, side) => (side === 'A' ? r.undercutA_mm : r.undercutB_mm),
  'fusion to plate': (r, side) => (side === 'A' ? r.leastFusionA_mm : r.leastFusionB_mm),
  'root fusion': (r) => r.rootFusion_mm,
};

/**
 * Judges a marked coupon by its acceptance profile.
 * @throws InputError when the profile is unknown or the marks make no fillet
 */
export function couponReport(coupon: Coupon): CouponReport {
  const profile = profileOf(coupon);
  if (profile === undefined)
    throw new InputError('coupon', [
      {
        path: 'profile',
        found: describeFound(coupon.profile),
        allowed: 'the name of an acceptance profile that comes with Toehold',
      },
    ]);
  const scales = scalesOf(coupon);
  // What a hand may be off is reckoned with the coarser of the two.
  const scale = scales.alongA.mmPerPx > scales.alongB.mmPerPx ? scales.alongA : scales.alongB;
  const readings = readMarks(placeMarks(coupon.marks, scales), coupon.joint);
  const all = allLines(profile, {
    stations: [stationOf(readings, coupon.y_mm)],
    joint: coupon.joint,
    cell_mm: 0.75,
    run: 'woven',
    asked: coupon.asked,
    step_mm: 1,
  });
  const lines = all
    .filter((line) => OFF_BY[line.measure] !== undefined && NEEDS[line.measure]?.(readings, line.side) !== null)
    .map((line) => byHandLine(line, scale));
  const worst = lines.map((line) => line.verdict).reduce(worse, 'within');
  const rootSeen = readings.rootFusion_mm !== null;
  return {
    readings,
    lines,
    verdict: worst === 'outside' || rootSeen ? worst : 'no verdict',
    notMeasured: gapsOf(readings, coupon).map(gapSaid),
    offSquare_deg: scales.offSquare_deg,
    profile: { name: profile.name, title: profile.title, edition: profile.edition },
  };
}

/** The line with what a hand may be off in place of what a mesh may. */
function byHandLine(line: Line, scale: PictureScale): Line {
  const inch = line.unit === 'in' ? MM_PER_INCH : 1;
  const name = OFF_BY[line.measure]!;
  const plusMinus = Math.round((1e4 * byHandOn(name, Math.abs(line.reading * inch), scale)) / inch) / 1e4;
  const nothing = line.limit === 0 && line.sense === 'at most' && line.reading <= 0;
  const verdict = nothing ? 'within' : compare(line.reading, plusMinus, line.limit, line.sense);
  return {
    ...line,
    plusMinus,
    verdict,
    places: verdict === 'within' ? [] : [{ from_mm: line.y_mm, to_mm: line.y_mm }],
  };
}

/** What is missing is left at nothing here and its lines are left out above. */
function stationOf(r: MarkedReadings, y_mm: number): Station {
  const or0 = (x: number | null): number => x ?? 0;
  return {
    ...r,
    y_mm,
    undercutA_mm: or0(r.undercutA_mm),
    undercutB_mm: or0(r.undercutB_mm),
    fusionDepthA_mm: or0(r.fusionDepthA_mm),
    fusionDepthB_mm: or0(r.fusionDepthB_mm),
    leastFusionA_mm: or0(r.leastFusionA_mm),
    leastFusionB_mm: or0(r.leastFusionB_mm),
    rootFusionA_mm: or0(r.rootFusionA_mm),
    rootFusionB_mm: or0(r.rootFusionB_mm),
    rootFusion_mm: or0(r.rootFusion_mm),
    rootFused: or0(r.rootFusion_mm) > 0,
    overlapA_mm: 0,
    overlapB_mm: 0,
    toeRiskA_mm: 0,
    toeRiskB_mm: 0,
    edgeMeltedBack_mm: null,
    hazA_mm: 0,
    hazB_mm: 0,
  };
}

function gapsOf(r: MarkedReadings, coupon: Coupon): Gap[] {
  const gaps: Gap[] = [];
  if (r.rootFusion_mm === null) gaps.push({ what: 'root fusion', why: 'root not marked' });
  if (r.leastFusionA_mm === null || r.leastFusionB_mm === null)
    gaps.push({ what: 'plate fusion', why: 'fusion line not marked' });
  if (r.undercutA_mm === null && r.undercutB_mm === null) gaps.push({ what: 'undercut', why: 'none marked' });
  gaps.push({ what: 'overlap', why: 'cold plate not seen' });
  if (coupon.joint.kind === 'lap') gaps.push({ what: 'melted edge', why: 'not read off marks' });
  return gaps;
}
