import type { HandCurve, Reading } from '../measures/hand/curve.ts';
import type { Mishap } from '../measures/hand/mishaps.ts';
import { shownCurve } from '../measures/hand/shown.ts';
import { mean, median, quantile, slope } from '../measures/statistics.ts';
import type { Exercise } from '../schema/exercise.ts';
import type { Band } from '../schema/leeway.ts';
import type { HandCode } from './found.ts';

type Side = 'A' | 'B';

/** One way in which the hand was not as asked. */
export interface Off {
  code: HandCode;
  side: Side | null;
  /** As it was and as it was asked, in the unit of the sentence. */
  is: number;
  asked: number;
  /** How far off: 1 is what a hand has to do before it is spoken of, three to six times what a decent hand does. */
  strength: number;
  /** Stretch of the joint it goes over; null: all of it. */
  stretch: { from_mm: number; to_mm: number } | null;
  y_mm: number | null;
  t_s: number | null;
}

/** A hand and what it is held against. */
export interface OffQuestion {
  hand: HandCurve;
  shown: HandCurve;
  /** The same done by a hand that shakes as this one does. */
  shaken: HandCurve;
  exercise: Exercise;
}

/** A hand beside the demonstration of its exercise. */
export function besideShown(hand: HandCurve, exercise: Exercise): OffQuestion {
  return { hand, shown: shownCurve(exercise), shaken: shownCurve(exercise, hand.shake_mm), exercise };
}

/**
 * What counts as 1 where the exercise's band is narrower, in the quantity's own unit (`share`: of what was asked). Three times or more what a
 * decent hand (`--hand seed:0.25`) is off; `tests/scoring/advice/decent.test.ts` holds them to that.
 */
const LEAST = {
  travel: { share: 0.15 },
  period: { share: 0.22 },
  width_mm: 0.8,
  pause_s: 0.1,
  ahead_mm: 1.2,
  centre_mm: 0.8,
  drift_mm: 1.5,
  tip_mm: 3,
  work_deg: 9,
  push_deg: 7,
  shake_mm: 0.45,
  unevenness: 0.16,
  uneven_s: 0.1,
  standing: 0.12,
  stall_s: 1.2,
  jump_mm: 2.5,
  slip_mm: 1.4,
  skips: 1.5,
} as const;

/** A third of the length counts for this much of the whole. */
const OF_A_THIRD = 0.85;
/** Readings a stretch needs to speak for itself. */
const ENOUGH = 3;
/** A shaking or uneven hand is read with that much less trust in everything else of its weave. */
const WHILE_SHAKING = 0.5;
const WHILE_UNEVEN = 0.6;

/** Every way in which a hand was off what was asked by enough to speak of, the farthest off first. */
export function offFromAsked(q: OffQuestion): Off[] {
  const happened = mishaps(q);
  // A stretch that a mishap made is the mishap's, not a habit.
  const habits = [...strokes(q, happened.length === 0), ...torch(q, happened.length === 0)];
  const all = joined([...happened, ...habits].filter((o) => o.strength >= 1));
  return all.filter((o) => !all.some((x) => madeBy(o, x))).sort((a, b) => b.strength - a.strength);
}

/** What follows from something else and is no fault beside it: an uneven beat of a hand that slipped, a narrow weave of one that skips a toe. */
const MAKES: Partial<Record<HandCode, readonly HandCode[]>> = {
  slipped: ['uneven-rhythm'],
  jumped: ['uneven-rhythm'],
  stalled: ['uneven-rhythm'],
  'toe-skipped': [
    'uneven-rhythm',
    'uneven-waits',
    'too-narrow',
    'to-one-side',
    'waited-long',
    'arc-back-on-puddle',
    'slipped',
  ],
  'fits-and-starts': ['stalled', 'jumped', 'climbed-slowly', 'climbed-fast', 'arc-back-on-puddle'],
};

function madeBy(o: Off, by: Off): boolean {
  return by.strength >= 0.5 * o.strength && (MAKES[by.code]?.includes(o.code) ?? false);
}

/** Off by this share of what is spoken of: not a fault, and not as asked either. */
const NEARLY = 0.65;

/** Habits that were a little off, the farthest first; empty for a hand as asked. */
export function nearlyOff(q: OffQuestion): Off[] {
  const habits = [...strokes(q, true), ...torch(q, true)].filter((o) => o.strength >= NEARLY);
  return habits.sort((a, b) => b.strength - a.strength);
}

function mishaps({ hand, shown }: OffQuestion): Off[] {
  const shake = hand.shake_mm / LEAST.shake_mm;
  const trust = shake >= 1 ? WHILE_SHAKING : 1;
  const worst = (code: HandCode, list: readonly Mishap[], unit: number): Off[] =>
    list.map((m) => ({
      code,
      side: m.side,
      is: m.much,
      asked: 0,
      strength: (trust * m.much) / unit,
      stretch: { from_mm: m.from_mm, to_mm: m.to_mm },
      y_mm: m.y_mm,
      t_s: m.t_s,
    }));
  const all = hand.mishaps;
  const list = [
    ...worst('stalled', all.stalls, LEAST.stall_s),
    ...worst('jumped', all.jumps, LEAST.jump_mm),
    ...worst('slipped', all.slips, LEAST.slip_mm),
    ...(shown.width_mm.length < ENOUGH
      ? []
      : worst(
          'toe-skipped',
          all.skips.filter((s) => s.much >= 2),
          LEAST.skips,
        )),
    whole('fits-and-starts', all.standing, 0, (trust * all.standing) / LEAST.standing),
  ];
  return list.filter((o) => o.strength >= 1).sort((a, b) => b.strength - a.strength);
}

/** A quantity of the weave that has a wanted value. */
type Quantity = 'travel_mmps' | 'period_s' | 'width_mm' | 'pauseA_s' | 'pauseB_s' | 'ahead_mm' | 'centre_mm';

type Knob = (
  codes: readonly [HandCode | null, HandCode | null],
  what: Quantity,
  band: Band | null,
  least: Least,
  side?: Side,
) => Off[];

/** Beat, width, pauses, reach, climb and place of the weave. */
function strokes(q: OffQuestion, thirds: boolean): Off[] {
  const { hand, shown, shaken, exercise } = q;
  const { target, judged } = exercise;
  const weaves = hand.width_mm.length >= ENOUGH;
  const asksWeave = shown.width_mm.length >= ENOUGH;
  const shake = hand.shake_mm / LEAST.shake_mm;
  const uneven = Math.max(0, (hand.periodCv ?? 0) - (shaken.periodCv ?? 0)) / LEAST.unevenness;
  const shaking = shake >= 1 ? WHILE_SHAKING : 1;
  const steady = shaking * (uneven >= 1 ? WHILE_UNEVEN : 1);
  const held = (o: Off[]): Off[] => o.map((x) => ({ ...x, strength: steady * x.strength }));
  const period = target.cyclesPerSecond;
  const beats = period === null ? null : { from: 1 / period.to, to: 1 / period.from };
  const knob: Knob = ([less, more], what, band, least, side) => {
    // What shaking alone does to a reading is no fault of the stroke.
    const made = (medianOf(shaken[what]) ?? 0) - (medianOf(shown[what]) ?? 0);
    const readings = hand[what].map((r) => ({ ...r, value: r.value - made }));
    return offOf({ less, more, readings, of: shown[what], band, least, side: side ?? null, judged, thirds });
  };
  const out = [
    whole('shaky', hand.shake_mm, shown.shake_mm, shake),
    ...knob(['climbed-slowly', 'climbed-fast'], 'travel_mmps', target.travel_mmps, LEAST.travel),
  ];
  if (weaves && asksWeave) {
    out.push(
      whole('uneven-rhythm', hand.periodCv ?? 0, 0, shaking * uneven),
      ...held([
        ...unevenWaits(q, 'A'),
        ...unevenWaits(q, 'B'),
        ...knob(['beat-fast', 'beat-slow'], 'period_s', beats, LEAST.period),
        ...knob(['too-narrow', 'too-wide'], 'width_mm', target.width_mm, LEAST.width_mm),
        ...atBothToes([
          ...knob(['toe-left-early', 'waited-long'], 'pauseA_s', target.pauseA_s, LEAST.pause_s, 'A'),
          ...knob(['toe-left-early', 'waited-long'], 'pauseB_s', target.pauseB_s, LEAST.pause_s, 'B'),
        ]),
        ...knob(['arc-back-on-puddle', null], 'ahead_mm', null, LEAST.ahead_mm),
        ...neverGoneTo(q),
      ]),
    );
  } else if (asksWeave) {
    const asked = medianOf(shown.width_mm) ?? 0;
    out.push(whole('too-narrow', 0, asked, asked / LEAST.width_mm));
  } else if (weaves) {
    const is = medianOf(hand.width_mm) ?? 0;
    out.push(...held([whole('too-wide', is, 0, is / (2 * LEAST.width_mm))]));
  }
  return [...out, ...held(place(q, knob))];
}

function medianOf(readings: readonly Reading[]): number | null {
  return median(readings.map((r) => r.value));
}

/** Waits at one toe that wander, by half the middle two thirds of them. */
function unevenWaits({ hand, shaken }: OffQuestion, side: Side): Off[] {
  const of = (c: HandCurve): number[] => (side === 'A' ? c.pauseA_s : c.pauseB_s).map((r) => r.value);
  const waits = of(hand);
  if (waits.length < 2 * ENOUGH) return [];
  const spread = wander(waits);
  const own = Math.max(0, spread - wander(of(shaken)));
  return [{ ...whole('uneven-waits', spread, median(waits) ?? 0, own / LEAST.uneven_s), side }];
}

function wander(values: readonly number[]): number {
  return values.length < 2 ? 0 : (quantile(values, 0.84) - quantile(values, 0.16)) / 2;
}

/** One toe hardly gone to over the whole length while the other is: share of what was shown for the one, and for the other. */
const NOT_GONE_TO = 0.4;
const GONE_TO = 0.7;
const NARROWED = 0.8;

function neverGoneTo({ hand, shown }: OffQuestion): Off[] {
  const reach = (c: HandCurve, side: Side): number =>
    median((side === 'A' ? c.reachA_mm : c.reachB_mm).map((r) => r.value)) ?? 0;
  const narrowed = reach(hand, 'A') + reach(hand, 'B') < NARROWED * (reach(shown, 'A') + reach(shown, 'B'));
  return (['A', 'B'] as const).flatMap((side): Off[] => {
    const other = side === 'A' ? 'B' : 'A';
    const missing = reach(shown, side) - reach(hand, side);
    const one = reach(hand, side) < NOT_GONE_TO * reach(shown, side);
    if (!narrowed || !one || reach(hand, other) < GONE_TO * reach(shown, other)) return [];
    const times = (side === 'A' ? hand.reachA_mm : hand.reachB_mm).length;
    return [{ ...whole('toe-skipped', times, 0, (2 * missing) / LEAST.width_mm), side }];
  });
}

/** To one side on the whole, or more and more so on the way up. */
function place({ hand, exercise }: OffQuestion, knob: Knob): Off[] {
  const at = hand.centre_mm;
  const rise = slope(
    at.map((r) => r.y_mm),
    at.map((r) => r.value),
  );
  const middle = mean(at.map((r) => r.value));
  if (rise === null || middle === null || at.length < 2 * ENOUGH) return [];
  const { from_mm, to_mm } = exercise.judged;
  const drift = rise * (to_mm - from_mm);
  const aside = knob(['to-one-side', 'to-one-side'], 'centre_mm', null, LEAST.centre_mm).map(
    (o): Off => ({ ...o, side: o.is > 0 ? 'A' : 'B' }),
  );
  const strength = Math.max(Math.abs(drift) / LEAST.drift_mm, ...aside.map((o) => o.strength));
  if (Math.abs(drift) < LEAST.drift_mm || Math.abs(drift) < 0.7 * Math.abs(middle)) return aside;
  return [{ ...whole('drifted', drift, 0, strength), side: drift > 0 ? 'A' : 'B' }];
}

/** How the torch was held, where the device tells. */
function torch({ hand, shown, exercise }: OffQuestion, thirds: boolean): Off[] {
  const { target, judged, free } = exercise;
  const knob = (
    less: HandCode,
    more: HandCode,
    what: 'tipToWork_mm' | 'workAngle_deg' | 'travelAngle_deg',
    least: Least,
  ) =>
    offOf({
      ...{ less, more, readings: hand[what], of: shown[what], band: target[what], least, side: null, judged, thirds },
      left: free?.[what] ?? null,
    });
  return [
    ...knob('tip-too-close', 'tip-too-far', 'tipToWork_mm', LEAST.tip_mm),
    ...knob('work-angle-off', 'work-angle-off', 'workAngle_deg', LEAST.work_deg),
    ...knob('dragged', 'pushed-far', 'travelAngle_deg', LEAST.push_deg),
  ];
}

type Least = number | { share: number };

interface Held {
  less: HandCode | null;
  more: HandCode | null;
  readings: readonly Reading[];
  of: readonly Reading[];
  band: Band | null;
  /** Where it is left to the trainee; left out: nowhere. */
  left?: Band | null;
  least: Least;
  side: Side | null;
  judged: Exercise['judged'];
  thirds: boolean;
}

/** One quantity against what was shown: over the whole length, or over the third of it where it is farthest off. */
function offOf(h: Held): Off[] {
  const over = median(h.readings.map((r) => r.value));
  const asked = askedOf(h);
  if (over === null || asked === null || h.readings.length < ENOUGH) return [];
  const strengthOf = (x: number): number => {
    if ((x > asked ? h.more : h.less) === null) return 0;
    const way = h.band === null ? 0 : x > asked ? h.band.to - asked : asked - h.band.from;
    const least = typeof h.least === 'number' ? h.least : h.least.share * Math.abs(asked);
    return Math.abs(x - asked) / Math.max(least, way);
  };
  let is = over;
  let strength = strengthOf(over);
  for (const x of h.thirds ? thirdsOf(h) : []) {
    const here = OF_A_THIRD * strengthOf(x);
    if (here > strength && here >= 1) [is, strength] = [x, here];
  }
  const code = is > asked ? h.more : h.less;
  if (code === null) return [];
  return [{ ...whole(code, is, asked, strength), side: h.side, stretch: stretchOf(h, asked, is) }];
}

function thirdsOf({ readings, judged: { from_mm, to_mm } }: Held): number[] {
  const third = (to_mm - from_mm) / 3;
  return [0, 1, 2].flatMap((k) => {
    const within = readings.filter((r) => r.y_mm >= from_mm + k * third && r.y_mm <= from_mm + (k + 1) * third);
    const is = within.length < ENOUGH ? null : median(within.map((r) => r.value));
    return is === null ? [] : [is];
  });
}

/** Readings more than this share of the way from what was asked to what is said are part of it. */
const HALFWAY = 0.5;
/** Over this share of the length read it is said of all of it. */
const ALL = 0.8;

/** Where along the joint a quantity was off; null: all along. */
function stretchOf({ readings }: Held, asked: number, is: number): Off['stretch'] {
  const at = readings.filter((r) => (r.value - asked) / (is - asked) > HALFWAY).map((r) => r.y_mm);
  const all = readings.map((r) => r.y_mm);
  if (is === asked || at.length < ENOUGH) return null;
  const [from_mm, to_mm] = [quantile(at, 0.05), quantile(at, 0.95)];
  return to_mm - from_mm >= ALL * (quantile(all, 0.95) - quantile(all, 0.05)) ? null : { from_mm, to_mm };
}

/**
 * What was shown, where that lies in the band; else the band's middle: a weave of one's own choice is still held to what is taught. What is left to
 * the trainee is asked as it was done, or as near to it as may be.
 */
function askedOf({ of, band, left, readings }: Held): number | null {
  const done = left ? median(readings.map((r) => r.value)) : null;
  if (left && done !== null) return Math.min(left.to, Math.max(left.from, done));
  const shown = median(of.map((r) => r.value));
  if (band === null || (shown !== null && shown >= band.from && shown <= band.to)) return shown;
  return (band.from + band.to) / 2;
}

function whole(code: HandCode, is: number, asked: number, strength: number): Off {
  return { code, side: null, is, asked, strength, stretch: null, y_mm: null, t_s: null };
}

/** Waited this share of what was asked or less at one toe, where the other was left early for sure: it was left early at both. */
const BARELY = 0.4;

/** Where one toe was left early for sure, the other counts from less on: a wait of a tenth of a second has no room to be far too short. */
function atBothToes(pauses: readonly Off[]): Off[] {
  const early = pauses.filter((o) => o.code === 'toe-left-early');
  const sure = early.find((o) => o.strength >= 1);
  if (sure === undefined) return [...pauses];
  return pauses.map((o) =>
    o.code === 'toe-left-early' && o.is <= BARELY * o.asked ? { ...o, strength: Math.max(1, o.strength) } : o,
  );
}

/** Neither toe waited at is one fault and not two. */
function joined(list: readonly Off[]): Off[] {
  const one = (code: HandCode, both: HandCode, out: readonly Off[]): Off[] => {
    const own = out.filter((o) => o.code === code);
    if (own.length < 2) return [...out];
    const [a, b] = [own[0]!, own[1]!];
    const strength = Math.max(a.strength, b.strength);
    const mid = (x: number, y: number): number => (x + y) / 2;
    const joint: Off = {
      ...whole(both, mid(a.is, b.is), mid(a.asked, b.asked), strength),
      stretch: a.stretch ?? b.stretch,
    };
    return [...out.filter((o) => o.code !== code), joint];
  };
  return one('waited-long', 'waited-long', one('toe-left-early', 'toes-left-early', list));
}
