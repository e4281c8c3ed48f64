import type { JointOptions } from '../../engine/index.ts';
import type { LineMeasure } from '../schema/profile.ts';
import type { Advice, AdviceCode, Line } from '../schema/result.ts';

/** Metal laid against metal the joint holds, mm²; null where one is not known. */
interface Metal {
  laid_mm2: number | null;
  holds_mm2: number | null;
}

interface AtToe {
  joint: JointOptions['kind'];
  side: 'A' | 'B';
}

interface AtStop {
  stop_mm: number;
  above_mm: number;
  root_mm: number;
  flaw_mm: number;
}

/** What each piece of advice knows: the numbers its sentence is said with. */
export interface AdviceData extends Record<AdviceCode, object> {
  'weld-the-judged-length': { bare_mm: number; from_mm: number; to_mm: number };
  climb: Record<never, never>;
  'no-climb': Record<never, never>;
  'one-pass': { twice_mm: number };
  'metal-dropped': Metal & { dripped_g: number };
  'too-much-metal': { laid_mm2: number; holds_mm2: number; handFine: boolean };
  'arc-back-on-puddle': { from_mm: number; to_mm: number; back_mm: number; root_mm: number; weave: boolean };
  'tip-too-far': { tip_mm: number; asked_mm: number; root_mm: number };
  'cold-root': { root_mm: number; convexity_mm: number; flat: boolean };
  'root-just-short': { root_mm: number; plusMinus_mm: number; y_mm: number };
  'toe-left-early': AtToe & { pause_s: number; asked_s: number; filledShare: number | null };
  'toe-not-reached': AtToe & { short_mm: number };
  'toe-melted-open': AtToe & { depth_mm: number; y_mm: number };
  'cold-toe': AtToe & { overlap_mm: number; y_mm: number; weave: boolean };
  'crowned-cold': { convexity_mm: number; root_mm: number };
  'crowned-narrow': { convexity_mm: number; run: { weave: true; y_mm: number } | { weave: false; limit_mm: number } };
  'crowned-slow': { convexity_mm: number; travel_mmps: number; asked_mmps: number };
  undersize: Metal & { size_mm: number; asked_mm: number; length_mm: number; metalIsThere: boolean };
  oversize: { size_mm: number; most_mm: number; length_mm: number };
  'one-sided': AtToe & { legLong_mm: number; legShort_mm: number; shift_mm: number };
  'crater-open': { depth_mm: number; y_mm: number; reStrikes: number };
  'restart-on-crater': AtStop;
  'restart-not-back': AtStop;
  'restart-overfilled': { stop_mm: number; crown_mm: number | null; lap_mm: number | null; inCrater_s: number };
  'edge-melted-back': { back_mm: number; y_mm: number };
  'hot-top': { low_mm: number; high_mm: number };
  'uneven-rhythm': { spread: number; period_s: number };
  'measure-a-real-one': { measure: LineMeasure; limit: number; reading: number; plusMinus: number; unit: Line['unit'] };
  'keep-it': { root_mm: number; convexity_mm: number };
  'see-the-cut': { measure: LineMeasure; y_mm: number };
}

/** A place on the bead and the change that would mend it. */
type Placed = Pick<Advice, 'y_mm' | 't_s' | 'cycle' | 'side' | 'change'>;

/** A piece of advice before it is said: what it is about, with its numbers, its place and its change. */
export type Found = { [C in AdviceCode]: { code: C; data: AdviceData[C] } & Placed }[AdviceCode];

/** Advice that belongs to no place and has no change of its own. */
export const NOWHERE: Placed = { y_mm: null, t_s: null, cycle: null, side: null, change: null };
