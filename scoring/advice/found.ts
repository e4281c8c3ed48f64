import type { JointOptions } from '../../engine/index.ts';
import type { LineMeasure } from '../schema/profile.ts';
import type { DROPPED } from '../schema/proved.ts';
import type { Advice, AdviceCode, Line, Verdict } from '../schema/result.ts';

/** Ways in which a hand was not as asked. */
export const handCodes = [
  'arc-back-on-puddle',
  'tip-too-far',
  'tip-too-close',
  'pushed-far',
  'dragged',
  'work-angle-off',
  'too-narrow',
  'too-wide',
  'to-one-side',
  'drifted',
  'toe-skipped',
  'toe-left-early',
  'toes-left-early',
  'waited-long',
  'beat-slow',
  'beat-fast',
  'climbed-fast',
  'climbed-slowly',
  'stalled',
  'jumped',
  'slipped',
  'fits-and-starts',
  'uneven-rhythm',
  'uneven-waits',
  'shaky',
] as const satisfies readonly AdviceCode[];
export type HandCode = (typeof handCodes)[number];

/** Ways in which the machine does not fit the joint. */
export const settingsCodes = [
  'cold-root',
  'cold-toe',
  'too-much-metal',
  'too-hot',
  'too-little-wire',
  'gap-takes-metal',
] as const satisfies readonly AdviceCode[];
export type SettingsCode = (typeof settingsCodes)[number];

/** What was seen of the bead beside a cause: its worst line, metal gone, or a stretch left bare. */
export type Seen =
  | ({ what: 'line'; kind: JointOptions['kind'] } & Pick<
      Line,
      'side' | 'reading' | 'unit' | 'sense' | 'limit' | 'y_mm' | 'verdict'
    > & {
        measure: LineMeasure | typeof DROPPED;
      })
  | { what: 'dropped'; dripped_g: number }
  | { what: 'bare'; bare_mm: number; from_mm: number };

/** A hand against what was asked of it; `is` and `asked` in the unit of the sentence. */
interface OffData {
  joint: JointOptions['kind'];
  side: 'A' | 'B' | null;
  is: number;
  asked: number;
  /** Stretch it goes over; null: all of the judged length. */
  stretch: { from_mm: number; to_mm: number } | null;
  weave: boolean;
  seen: Seen | null;
  verdict: Verdict;
}

/** Settings against what a joint like this takes; the hand was as asked. */
interface MachineData {
  joint: JointOptions['kind'];
  side: 'A' | 'B' | null;
  seen: Seen | null;
  verdict: Verdict;
  laid_mm2: number;
  holds_mm2: number;
  gap_mm: number;
  set: Settings;
  /** What the workshop's own exercise welds such a joint with; null: there is none. */
  usual: Settings | null;
}

interface Settings {
  volts_V: number;
  feed_mpmin: number;
}

/** A cause that is offered beside another. */
export type Suspect = HandCode | SettingsCode;

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
  out_s: number;
  seen: Seen | null;
}

interface OtherData extends Record<Exclude<AdviceCode, HandCode | SettingsCode>, object> {
  'weld-the-judged-length': { bare_mm: number; from_mm: number; to_mm: number };
  climb: Record<never, never>;
  'no-climb': Record<never, never>;
  'one-pass': { twice_mm: number };
  'metal-dropped': Metal & { dripped_g: number };
  'let-go-early': { at_mm: number; to_mm: number };
  'arc-lost': AtStop;
  either: { seen: Seen; one: Suspect; other: Suspect };
  'root-just-short': { root_mm: number; plusMinus_mm: number; y_mm: number };
  'toe-melted-open': AtToe & { depth_mm: number; y_mm: number };
  'crowned-straight': { convexity_mm: number; limit_mm: number };
  undersize: Metal & {
    size_mm: number;
    asked_mm: number;
    length_mm: number;
    /** Where it is short, if that is a place and not the run; `little`: hardly past its plus-minus. */
    place: { from_mm: number; to_mm: number; little: boolean } | null;
  };
  oversize: { size_mm: number; most_mm: number; length_mm: number };
  'one-sided': AtToe & { legLong_mm: number; legShort_mm: number; shift_mm: number };
  'crater-open': { depth_mm: number; y_mm: number; reStrikes: number };
  'restart-on-crater': AtStop;
  'restart-not-back': AtStop;
  'restart-overfilled': { stop_mm: number; crown_mm: number | null; lap_mm: number | null; inCrater_s: number };
  'edge-melted-back': { back_mm: number; y_mm: number };
  'hot-top': { low_mm: number; high_mm: number };
  'measure-a-real-one': { measure: LineMeasure; limit: number; reading: number; plusMinus: number; unit: Line['unit'] };
  'keep-it': { root_mm: number; convexity_mm: number };
  'see-the-cut': { measure: LineMeasure; y_mm: number };
}

/** What each piece of advice knows: the numbers its sentence is said with. */
export type AdviceData = OtherData & Record<HandCode, OffData> & Record<SettingsCode, MachineData>;

/** A place on the bead and the change that would mend it. */
type Placed = Pick<Advice, 'y_mm' | 't_s' | 'cycle' | 'side' | 'change'>;

/** A piece of advice before it is said: what it is about, with its numbers, its place and its change. */
export type Found = { [C in AdviceCode]: { code: C; data: AdviceData[C] } & Placed }[AdviceCode];

/** Advice that belongs to no place and has no change of its own. */
export const NOWHERE: Placed = { y_mm: null, t_s: null, cycle: null, side: null, change: null };
