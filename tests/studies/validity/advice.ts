import {
  type AttemptRecording,
  type Change,
  type Exercise,
  type Line,
  type ProvedAdvice,
  proveAdvice,
  type Result,
  scoreAttempt,
} from '../../../scoring/index.ts';
import { applyChange } from '../../../scoring/trials/apply.ts';
import type { AdviceHand } from './advice-hands.ts';
import { booksOf, weldCase } from './weld.ts';

export interface AdviceTrial {
  setting: string;
  name: string;
  /** Lines outside for this hand; none, or a reason against judging: it was not asked. */
  outside: string[];
  asked: boolean;
  /** The change that was shown; null: no single change was, and why. */
  shown: { change: Change; measure: string } | null;
  unshown: string | null;
  /** Changes welded again before one was shown or none was. */
  tried: number;
  /** Fresh seeds in which the fault was there at all; in how many the shown change mended it, in how many it put another line outside. */
  fresh: number;
  mended: number;
  spoiled: number;
  /** Largest error of the accounts of the welds made here. */
  books: number;
  runs: number;
}

const FRESH = 2;
/** Seeds of the fresh goes are this many times the first, and 1, 2, ... */
const FRESH_SEEDS = 100;

/** Asks for advice on one hand, then makes the shown change to the same hand with fresh seeds. */
export function tryAdvice({ name, case: c }: AdviceHand): AdviceTrial {
  const { recording, result } = weldCase(c);
  const trial: AdviceTrial = {
    setting: c.setting,
    name,
    outside: [...new Set(outsideLines(result).map((l) => l.measure))],
    asked: result.verdict === 'outside',
    shown: null,
    unshown: null,
    tried: 0,
    fresh: 0,
    mended: 0,
    spoiled: 0,
    books: booksOf(result),
    runs: 1,
  };
  if (!trial.asked) return trial;
  const proved = proveAdvice(recording, result, { enough: 1 });
  trial.runs += proved.reruns;
  trial.tried = proved.advice.reduce((sum, a) => sum + a.tried.length, 0);
  const advice = proved.advice.find((a) => a.proved);
  if (advice === undefined || advice.change === null) {
    trial.unshown = nearestOf(proved.advice[0]);
    return trial;
  }
  const { change } = advice;
  trial.shown = { change, measure: advice.fault!.measure };
  for (let k = 1; k <= FRESH; k++) {
    const again = weldCase({ ...c, seed: FRESH_SEEDS * c.seed + k });
    trial.runs++;
    trial.books = Math.max(trial.books, booksOf(again.result));
    if (verdictOf(again.result, advice) === 'within') continue;
    trial.fresh++;
    trial.runs++;
    const after = changed(again.recording, change, recording.exercise!);
    if (after === null) continue;
    trial.books = Math.max(trial.books, booksOf(after));
    if (verdictOf(after, advice) === 'within') trial.mended++;
    if (outsideLines(after).some((l) => !outsideLines(again.result).some((b) => isSame(b, l)))) trial.spoiled++;
  }
  return trial;
}

function changed(recording: AttemptRecording, change: Change, exercise: Exercise): Result | null {
  const made = applyChange(recording, change);
  return made === null ? null : scoreAttempt(made, { exercise: { ...exercise, process: made.simulation.process } });
}

function outsideLines(r: Result): Line[] {
  return r.lines.filter((l) => l.verdict === 'outside');
}

function isSame(a: Line, b: Line): boolean {
  return a.measure === b.measure && a.side === b.side && a.rule === b.rule;
}

function verdictOf(r: Result, advice: ProvedAdvice): string {
  const fault = advice.fault!;
  return (
    r.lines.find((l) => l.measure === fault.measure && l.side === fault.side && l.sense === fault.sense)?.verdict ??
    'not read'
  );
}

/** What stood in the way of the first piece of advice: why it was not tried, or what was tried and what each left. */
function nearestOf(first: ProvedAdvice | undefined): string {
  if (first === undefined) return 'nothing said';
  if (first.untried !== null) return first.untried;
  return first.tried
    .map(({ change, after, again, spoils }) => {
      const left = after === null ? 'not read' : after.verdict === 'within' ? '' : `${after.reading}`;
      return `${change.what} ${change.by}: ${[left, ...spoils, again === false ? 'not a second time' : ''].filter((x) => x !== '').join(', ')}`;
    })
    .join('; ');
}
