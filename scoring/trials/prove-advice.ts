import type { JointOptions, Section } from '../../engine/index.ts';
import { type Attempt, attemptOf } from '../attempt/attempt.ts';
import { milli } from '../measures/precision.ts';
import { readSection } from '../measures/section/station.ts';
import type { Exercise } from '../schema/exercise.ts';
import type { Profile } from '../schema/profile.ts';
import type { Cut, ProvedAdvice, ProvedResult } from '../schema/proved.ts';
import type { AttemptRecording } from '../schema/recording.ts';
import type { Advice, Result } from '../schema/result.ts';
import { proofSentences } from '../words/trials.ts';
import { candidates, drillFor, metalFirst } from './candidates.ts';
import { type Fault, faultOf } from './fault.ts';
import { mend, nearest, type Rerun, Reruns, readingOf } from './reruns.ts';

/** How advice is proved: by which exercise and profile, and how many re-runs it may cost. */
export interface ProveOptions {
  /** As given to the scoring of the result: judged by the same exercise and profile again. */
  exercise?: Exercise;
  profile?: Profile;
  /** The attempt as welded, where it is at hand; else it is welded once more when its cut is needed. */
  attempt?: Attempt;
  /** Most re-runs in all. */
  reruns?: number;
  /** Enough proved pieces of advice. */
  enough?: number;
  /** Called with the two cuts of each proved piece, at the fault's height. */
  onCuts?: (advice: ProvedAdvice, before: Section, after: Section) => void;
  /** Called after each re-run: how many so far, of at most how many. */
  onRerun?: (done: number, most: number) => void;
}

/** Most re-runs of one attempt, unless asked otherwise. */
export const RERUNS = 8;
/** Proved pieces of advice after which no further ones are tried, unless asked otherwise. */
const ENOUGH = 2;
/** Re-runs kept for what comes after the first fault. */
const KEPT_FOR_LATER = 2;
/** Nothing a change of one thing could mend: the attempt itself has to be another one. */
export const OTHER_ATTEMPT: readonly Advice['code'][] = [
  'weld-the-judged-length',
  'climb',
  'no-climb',
  'one-pass',
  'crater-open',
  'restart-on-crater',
  'restart-not-back',
  'restart-overfilled',
  'let-go-early',
  'arc-lost',
  'toe-skipped',
  'stalled',
  'jumped',
  'slipped',
  'fits-and-starts',
  'uneven-rhythm',
  'uneven-waits',
  'shaky',
];

/**
 * Tries what the advice says, and what the trade would try instead, on the trainee's own recorded hand: one thing at a time, welded again.
 * A change is proved when the line of that very fault comes within and no other line goes outside, for this hand and for the same hand
 * going a little differently. What cannot be mended by one change
 * says so and names a drill. Same recording and result, same digits.
 * @param result as `scoreAttempt` gave it for this recording
 * @throws InputError and EngineError as `scoreAttempt` does
 */
export function proveAdvice(recording: AttemptRecording, result: Result, options: ProveOptions = {}): ProvedResult {
  const exercise = options.exercise ?? recording.exercise;
  if (exercise === null) {
    const advice = result.advice.map((a) => ({ ...untouched(a), untried: 'not a matter of one change' as const }));
    return { ...result, advice, reruns: 0 };
  }
  // Where the settings are the trainee's own, they are not the exercise's.
  const asSet = { ...exercise, process: recording.simulation.process };
  const most = options.reruns ?? RERUNS;
  const reruns = new Reruns({
    recording,
    result,
    exercise,
    profile: options.profile,
    most,
    onRerun: options.onRerun ?? (() => undefined),
  });
  let proved = 0;
  let original = options.attempt ?? null;
  const looked = new Set<string>();
  const advice = result.advice.map((a, index): ProvedAdvice => {
    const fault = faultOf(a, result);
    if (OTHER_ATTEMPT.includes(a.code)) return { ...untouched(a), untried: 'not a matter of one change' };
    if (fault === null) return { ...untouched(a), untried: 'no line is outside' };
    const told = new Told(a, fault, result, asSet, recording.simulation.joint.kind);
    const key = `${fault.measure} ${fault.side} ${fault.rule}`;
    if (looked.has(key) || proved >= (options.enough ?? ENOUGH) || reruns.over) return told.leftFor();
    looked.add(key);
    const room = index === 0 ? Math.max(1, most - KEPT_FOR_LATER) : most - reruns.spent;
    const runs = mend(fault, candidates(fault, a, result, asSet), room, reruns.tryOut);
    const good = runs.find((r) => r.trial.mends);
    if (good === undefined || good.line === null) return told.notMended(runs);
    proved++;
    original ??= attemptOf(recording);
    const before = original.section(fault.y_mm);
    const after = good.attempt.section(fault.y_mm);
    const entry = told.proved(runs, good, good.line, { before: cutOf(before), after: cutOf(after) });
    options.onCuts?.(entry, before, after);
    return entry;
  });
  return { ...result, advice, reruns: reruns.spent };
}

/** A piece of advice before anything is tried. */
function untouched(a: Advice): ProvedAdvice {
  return {
    ...a,
    proved: false,
    fault: null,
    before: null,
    after: null,
    cuts: null,
    tried: [],
    drill: null,
    unproved: a.text,
    untried: null,
  };
}

/** What can be said of one piece of advice about one fault, whatever came of it. */
class Told {
  private readonly about: ProvedAdvice;
  private readonly opening: string[];

  constructor(
    private readonly a: Advice,
    private readonly fault: Fault,
    private readonly result: Result,
    private readonly exercise: Exercise,
    private readonly kind: JointOptions['kind'],
  ) {
    this.about = { ...untouched(a), fault: shown(fault), before: readingOf(fault) };
    const first = metalFirst(fault, exercise);
    this.opening = first === null ? [] : [proofSentences.metalFirst(first)];
  }

  /** Not tried: the budget went on what comes first. */
  leftFor(): ProvedAdvice {
    const text = proofSentences.fault(this.fault, this.kind);
    return { ...this.about, untried: 'after the first things first', text };
  }

  /** No single change mends it. */
  notMended(runs: readonly Rerun[]): ProvedAdvice {
    const { fault, kind } = this;
    const drill = drillFor(fault, this.exercise, this.result.motion);
    const text = [
      ...this.opening,
      proofSentences.fault(fault, kind),
      proofSentences.notMended(runs.length, nearest(runs), drill.title, kind),
    ];
    return { ...this.about, change: null, text: text.join(' '), tried: runs.map((r) => r.trial), drill };
  }

  /** A change mends it. */
  proved(runs: readonly Rerun[], good: Rerun, line: Fault, cuts: { before: Cut; after: Cut }): ProvedAdvice {
    const { a, fault, kind, opening } = this;
    const ownAdvice = a.change !== null && a.change.what === good.change.what && a.change.by * good.change.by > 0;
    // Advice on too much metal says so itself.
    const own = a.code === 'too-much-metal' ? [a.text] : [...opening, a.text];
    const lead = ownAdvice ? own : [...opening, proofSentences.fault(fault, kind)];
    return {
      ...this.about,
      proved: true,
      change: good.change,
      text: [...lead, proofSentences.proved(good.change, fault, line, kind)].join(' '),
      after: readingOf(line),
      cuts,
      tried: runs.map((r) => r.trial),
    };
  }
}

/** The outline of a cut and its main readings, light enough for a file. */
function cutOf(section: Section): Cut {
  const station = readSection(section)?.station ?? null;
  return {
    y_mm: milli(section.y_mm),
    u_mm: Array.from(section.u_mm, milli),
    w_mm: Array.from(section.w_mm, milli),
    plate_mm: Array.from(section.plate_mm, milli),
    rootFusion_mm: station?.rootFusion_mm ?? null,
    convexity_mm: station?.convexity_mm ?? null,
    legA_mm: station?.legA_mm ?? null,
    legB_mm: station?.legB_mm ?? null,
  };
}

function shown({ measure, side, unit, sense, limit, plusMinus }: Fault): NonNullable<ProvedAdvice['fault']> {
  return { measure, side, unit, sense, limit, plusMinus };
}
