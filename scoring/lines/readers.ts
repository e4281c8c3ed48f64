import type { JointOptions } from '../../engine/index.ts';
import type { PlusMinusName, RunKind } from '../measures/precision.ts';
import { OVERLAP_SEEN_MM } from '../measures/section/toe.ts';
import type { BeadStop } from '../schema/ends.ts';
import type { Asked, SizeAsked } from '../schema/exercise.ts';
import type { LineMeasure, RuleMeasure, RunMeasure } from '../schema/profile.ts';
import type { Station } from '../schema/station.ts';

/** How a rule's measure is read off a station. */
export interface MeasureReader {
  /** Name of its line. */
  line: LineMeasure;
  sided: boolean;
  /** Length in mm, or an angle. */
  unit: 'mm' | 'deg';
  plusMinus: PlusMinusName;
  read(s: Station, side: 'A' | 'B', size: SizeAsked, joint: JointOptions): number;
  /** Read as the mean over so many neighbouring stations, where the scallop of a single ripple is not what is meant. */
  over?: number;
  /**
   * Shown as the size itself, leg or throat as the line is named, and whether the rule limits what is short of it. The rule is judged on
   * the difference and the line reads "leg 5.6, at least 5".
   */
  shown?: { short: boolean };
}

/**
 * ISO 5817 takes the throat as the height of the largest isosceles triangle in the weld (ISO 2553), hence size/√2 and not the throat
 * of unequal legs.
 */
export const readers: Record<RunMeasure, MeasureReader> = {
  undercut: {
    line: 'undercut',
    sided: true,
    unit: 'mm',
    plusMinus: 'undercut',
    read: (s, side) => (side === 'A' ? s.undercutA_mm : s.undercutB_mm),
  },
  convexity: { line: 'convexity', sided: false, unit: 'mm', plusMinus: 'convexity', read: (s) => s.convexity_mm },
  'toe angle': {
    line: 'toe angle',
    sided: true,
    unit: 'deg',
    plusMinus: 'toe angle',
    read: (s, side) => (side === 'A' ? s.toeAngleA_deg : s.toeAngleB_deg),
  },
  overlap: {
    line: 'overlap',
    sided: true,
    unit: 'mm',
    plusMinus: 'overlap',
    read: (s, side) => (side === 'A' ? s.overlapA_mm : s.overlapB_mm),
    over: 3,
  },
  'unequal legs': {
    line: 'unequal legs',
    sided: false,
    unit: 'mm',
    plusMinus: 'unequal legs',
    read: (s) => Math.abs(s.legA_mm - s.legB_mm),
  },
  'leg short': {
    line: 'leg',
    sided: false,
    unit: 'mm',
    plusMinus: 'leg',
    read: (s, _side, size) => size.leg_mm - s.size_mm,
    shown: { short: true },
  },
  'throat short': {
    line: 'throat',
    sided: false,
    unit: 'mm',
    plusMinus: 'throat',
    read: (s, _side, size) => size.throat_mm - s.size_mm / Math.SQRT2,
    shown: { short: true },
  },
  'throat over': {
    line: 'throat',
    sided: false,
    unit: 'mm',
    plusMinus: 'throat',
    read: (s, _side, size) => s.size_mm / Math.SQRT2 - size.throat_mm,
    shown: { short: false },
  },
  'fusion to plate': {
    line: 'fusion to plate',
    sided: true,
    unit: 'mm',
    plusMinus: 'fusion',
    read: (s, side) => (side === 'A' ? s.leastFusionA_mm : s.leastFusionB_mm),
  },
  'root fusion': {
    line: 'root fusion',
    sided: false,
    unit: 'mm',
    plusMinus: 'root fusion',
    read: (s) => s.rootFusion_mm,
  },
  gap: { line: 'gap', sided: false, unit: 'mm', plusMinus: 'gap', read: (_s, _side, _size, joint) => joint.gap_mm },
};

/** Where a rule permits nothing, an imperfection counts from the least that can be told from none. */
export const COUNTS_FROM_MM: Partial<Record<RuleMeasure, number>> = { overlap: OVERLAP_SEEN_MM };

/** What lines are drawn from. */
export interface LineQuestion {
  stations: readonly Station[];
  /** Stops whose craters lie in the judged length; left out where none were read, as off a real coupon. */
  stops?: readonly BeadStop[];
  joint: JointOptions;
  cell_mm: number;
  /** Woven or straight: how closely legs and face are read. */
  run: RunKind;
  asked: Asked;
  /** Distance between stations, mm. */
  step_mm: number;
}
