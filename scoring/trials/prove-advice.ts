import type { Section } from '../../engine/index.ts';
import { type Attempt, attemptOf } from '../attempt/attempt.ts';
import type { Exercise } from '../schema/exercise.ts';
import type { Profile } from '../schema/profile.ts';
import type { ProvedAdvice, ProvedResult, Trial } from '../schema/proved.ts';
import type { AttemptRecording } from '../schema/recording.ts';
import type { Advice, Change, Result } from '../schema/result.ts';
import { judgeAttempt, type ScoreOptions } from '../score.ts';
import { measureName } from '../words/names.ts';
import { anotherTime, applyChange } from './apply.ts';
import { candidates, drillFor, metalFirst } from './candidates.ts';
import { cutOf } from './cut.ts';
import { type Fault, faultOf, missing, sameLine, spoiled } from './fault.ts';
import { proofSentences } from './sentences.ts';
import { sensible } from './sized.ts';
import { inSteps, steps, stepsOf } from './steps.ts';

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
export const ENOUGH = 2;
/** Re-runs kept for what comes after the first fault. */
const KEPT_FOR_LATER = 2;
/** A single step that covers less of the way than this is not the thing to change. */
const LEAST_PROGRESS = 0.12;
/** Steps are reckoned to pass the limit by a little more than the plus-minus. */
const WITH_ROOM = 1.2;
/** Readings bend: steps grow at most so many times at once, and a way reckoned longer than this many times the most is not gone. */
const MOST_GROWTH = 3;
const FARTHEST = 1.6;

/** Nothing a change of one thing could mend: the attempt itself has to be another one. */
const OTHER_ATTEMPT: readonly Advice['code'][] = [
  'weld-the-judged-length',
  'climb',
  'no-climb',
  'one-pass',
  'crater-open',
  'restart-on-crater',
  'restart-not-back',
  'restart-overfilled',
];

interface Welded {
  attempt: Attempt;
  line: Fault | null;
  spoils: string[];
}

interface Rerun {
  change: Change;
  attempt: Attempt;
  trial: Trial;
  line: Fault | null;
}

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
  const most = options.reruns ?? RERUNS;
  const enough = options.enough ?? ENOUGH;
  let spent = 0;
  let proved = 0;
  let original = options.attempt ?? null;
  const looked = new Set<string>();
  const { kind } = recording.simulation.joint;
  const weld = (changed: AttemptRecording, fault: Fault): Welded => {
    spent++;
    const attempt = attemptOf(changed);
    const again = judgeAttempt(changed, attempt, judgedBy(exercise!, changed, options));
    const spoils = spoiled(result, again, fault).map((s) =>
      s.line === null ? s.text : `${measureName(s.line.measure, s.line.side, kind)} ${s.text}`,
    );
    options.onRerun?.(spent, most);
    return { attempt, line: sameLine(fault, again), spoils };
  };
  const rerun = (change: Change, fault: Fault): Rerun | null => {
    if (exercise === null || spent >= most) return null;
    if (!sensible(change, result, exercise, recording.simulation.process)) return null;
    const changed = applyChange(recording, change);
    if (changed === null) return null;
    const first = weld(changed, fault);
    const good = (r: Welded): boolean => r.line?.verdict === 'within' && r.spoils.length === 0;
    // What mends by a hair mends by chance: it has to hold for the same hand going a little differently, too.
    const again = good(first) ? spent < most && good(weld(anotherTime(changed), fault)) : null;
    const { attempt, line, spoils } = first;
    const trial: Trial = { change, after: readingOf(line), mends: again === true, again, spoils };
    return { change, attempt, trial, line };
  };
  const advice = result.advice.map((a, index): ProvedAdvice => {
    const fault = faultOf(a, result);
    const untouched = {
      ...a,
      proved: false,
      fault: null,
      before: null,
      after: null,
      cuts: null,
      tried: [],
      drill: null,
      unproved: a.text,
    };
    if (exercise === null || OTHER_ATTEMPT.includes(a.code))
      return { ...untouched, untried: 'not a matter of one change' };
    if (fault === null) return { ...untouched, untried: 'no line is outside' };
    const key = `${fault.measure} ${fault.side} ${fault.rule}`;
    const about = { ...untouched, fault: shown(fault), before: readingOf(fault) };
    if (looked.has(key) || proved >= enough || spent >= most)
      return { ...about, untried: 'after the first things first', text: proofSentences.fault(fault, kind) };
    looked.add(key);
    const room = index === 0 ? Math.max(1, most - KEPT_FOR_LATER) : most - spent;
    const runs = mend(fault, candidates(fault, a, result, exercise), room, rerun);
    const good = runs.find((r) => r.trial.mends);
    const tried = runs.map((r) => r.trial);
    const first = metalFirst(fault, result);
    const opening = first === null ? [] : [proofSentences.metalFirst(first)];
    if (good === undefined || good.line === null) {
      const drill = drillFor(fault, exercise, result.motion);
      const near = nearest(runs);
      const text = [
        ...opening,
        proofSentences.fault(fault, kind),
        proofSentences.notMended(tried.length, near, drill.title, kind),
      ];
      return { ...about, untried: null, change: null, text: text.join(' '), tried, drill };
    }
    proved++;
    original ??= attemptOf(recording);
    const before = original.section(fault.y_mm);
    const after = good.attempt.section(fault.y_mm);
    const ownAdvice = a.change !== null && a.change.what === good.change.what && a.change.by * good.change.by > 0;
    // Advice on too much metal says so itself.
    const own = a.code === 'too-much-metal' ? [a.text] : [...opening, a.text];
    const lead = ownAdvice ? own : [...opening, proofSentences.fault(fault, kind)];
    const entry: ProvedAdvice = {
      ...about,
      proved: true,
      untried: null,
      change: good.change,
      text: [...lead, proofSentences.proved(good.change, fault, good.line, kind)].join(' '),
      after: readingOf(good.line),
      cuts: { before: cutOf(before), after: cutOf(after) },
      tried,
    };
    options.onCuts?.(entry, before, after);
    return entry;
  });
  return { ...result, advice, reruns: spent };
}

/** Judged as before; the exercise's settings go along with a change of settings, which is no editing of the file. */
function judgedBy(exercise: Exercise, changed: AttemptRecording, options: ProveOptions): ScoreOptions {
  return {
    exercise: { ...exercise, process: changed.simulation.process },
    ...(options.profile === undefined ? {} : { profile: options.profile }),
  };
}

/** Tries the changes in turn until one mends the fault: first as far as the hand was off, then as far as the progress made calls for. */
function mend(
  fault: Fault,
  changes: readonly Change[],
  room: number,
  rerun: (change: Change, fault: Fault) => Rerun | null,
): Rerun[] {
  const runs: Rerun[] = [];
  for (const change of changes) {
    if (runs.length >= room) break;
    const first = rerun(change, fault);
    if (first === null) continue;
    runs.push(first);
    let last = first;
    for (let next = nextSteps(fault, last); next !== null && runs.length < room; next = nextSteps(fault, last)) {
      const run = runs.some((r) => sameChange(r.change, next!)) ? null : rerun(next, fault);
      if (run === null) break;
      runs.push(run);
      last = run;
    }
    if (last.trial.mends) break;
  }
  return runs;
}

/**
 * The same change with as many steps as the way still to go asks for, or fewer where it went far enough and spoiled another line. Null
 * where it mends, or where it does not lead there.
 */
function nextSteps(fault: Fault, run: Rerun): Change | null {
  if (run.line === null || run.trial.mends) return null;
  if (run.line.verdict !== 'within' && run.trial.spoils.length > 0) return null;
  if (run.trial.again === false) {
    const further = inSteps(run.change.what, stepsOf(run.change) + Math.sign(run.change.by));
    return sameChange(further, run.change) ? null : further;
  }
  const way = missing(fault);
  const made = way - missing(run.line);
  if (made < LEAST_PROGRESS * way) return null;
  const now = Math.abs(stepsOf(run.change));
  const needed = (now * way * WITH_ROOM) / made;
  const count = Math.min(MOST_GROWTH * now, Math.ceil(needed - 1e-9));
  const { step, most } = steps[run.change.what];
  if (run.line.verdict === 'within' ? count >= now : needed * step > FARTHEST * most) return null;
  const change = inSteps(run.change.what, run.change.by < 0 ? -count : count);
  return sameChange(change, run.change) ? null : change;
}

function sameChange(a: Change, b: Change): boolean {
  return a.what === b.what && a.by === b.by;
}

function nearest(runs: readonly Rerun[]): { change: Change; after: Fault } | null {
  let best: { change: Change; after: Fault } | null = null;
  for (const r of runs) {
    if (r.line === null || r.trial.spoils.length > 0) continue;
    if (best === null || missing(r.line) < missing(best.after)) best = { change: r.change, after: r.line };
  }
  return best;
}

function readingOf(f: Fault | null): Trial['after'] {
  return f === null ? null : { reading: f.reading, verdict: f.verdict, y_mm: f.y_mm };
}

function shown({ measure, side, unit, sense, limit, plusMinus }: Fault): NonNullable<ProvedAdvice['fault']> {
  return { measure, side, unit, sense, limit, plusMinus };
}
