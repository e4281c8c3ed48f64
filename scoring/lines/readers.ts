import type { JointOptions } from '../../engine/index.ts';
import type { PlusMinusName } from '../measures/precision.ts';
import type { SizeAsked } from '../schema/exercise.ts';
import type { CraterMeasure, RuleMeasure } from '../schema/profile.ts';
import type { Station } from '../schema/station.ts';

/** How a rule's measure is read off a station. */
export interface MeasureReader {
  sided: boolean;
  /** Length in mm, or an angle. */
  unit: 'mm' | 'deg';
  plusMinus: PlusMinusName;
  read(s: Station, side: 'A' | 'B', size: SizeAsked, joint: JointOptions): number;
  /** Read as the mean over so many neighbouring stations, where the scallop of a single ripple is not what is meant. */
  over?: number;
  /**
   * Shown as the size itself: how it is called, the size asked it is taken from, and whether the rule limits what is short of it. The rule
   * is judged on the difference and the line reads "leg 5.6, at least 5".
   */
  shown?: { as: 'leg' | 'throat'; short: boolean };
}

/** Measures read along the run; craters are read where it stopped (crater-lines.ts). */
export type RunMeasure = Exclude<RuleMeasure, CraterMeasure>;

/**
 * ISO 5817 takes the throat as the height of the largest isosceles triangle in the weld (ISO 2553), hence size/√2 and not the throat
 * of unequal legs.
 */
export const readers: Record<RunMeasure, MeasureReader> = {
  undercut: {
    sided: true,
    unit: 'mm',
    plusMinus: 'undercut',
    read: (s, side) => (side === 'A' ? s.undercutA_mm : s.undercutB_mm),
  },
  convexity: { sided: false, unit: 'mm', plusMinus: 'convexity', read: (s) => s.convexity_mm },
  'toe angle': {
    sided: true,
    unit: 'deg',
    plusMinus: 'toe angle',
    read: (s, side) => (side === 'A' ? s.toeAngleA_deg : s.toeAngleB_deg),
  },
  overlap: {
    sided: true,
    unit: 'mm',
    plusMinus: 'overlap',
    read: (s, side) => (side === 'A' ? s.overlapA_mm : s.overlapB_mm),
    over: 3,
  },
  'unequal legs': { sided: false, unit: 'mm', plusMinus: 'unequal legs', read: (s) => Math.abs(s.legA_mm - s.legB_mm) },
  'leg short': {
    sided: false,
    unit: 'mm',
    plusMinus: 'leg',
    read: (s, _side, size) => size.leg_mm - s.size_mm,
    shown: { as: 'leg', short: true },
  },
  'throat short': {
    sided: false,
    unit: 'mm',
    plusMinus: 'throat',
    read: (s, _side, size) => size.throat_mm - s.size_mm / Math.SQRT2,
    shown: { as: 'throat', short: true },
  },
  'throat over': {
    sided: false,
    unit: 'mm',
    plusMinus: 'throat',
    read: (s, _side, size) => s.size_mm / Math.SQRT2 - size.throat_mm,
    shown: { as: 'throat', short: false },
  },
  'fusion to plate': {
    sided: true,
    unit: 'mm',
    plusMinus: 'fusion',
    read: (s, side) => (side === 'A' ? s.leastFusionA_mm : s.leastFusionB_mm),
  },
  'root fusion': { sided: false, unit: 'mm', plusMinus: 'root fusion', read: (s) => s.rootFusion_mm },
  gap: { sided: false, unit: 'mm', plusMinus: 'gap', read: (_s, _side, _size, joint) => joint.gap_mm },
};

/**
 * Where a rule permits nothing, an imperfection counts from the least that is told from none by eye at the bench (common practice, no
 * source): a toe that rests 0.7 mm on cold plate is seen, less is a ripple's scallop.
 */
export const COUNTS_FROM_MM: Partial<Record<RuleMeasure, number>> = { overlap: 0.7 };
