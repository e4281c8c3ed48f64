import { type Attempt, attemptOf } from '../attempt/attempt.ts';
import type { Exercise } from '../schema/exercise.ts';
import type { Profile } from '../schema/profile.ts';
import type { Trial } from '../schema/proved.ts';
import type { AttemptRecording } from '../schema/recording.ts';
import type { Change, Result } from '../schema/result.ts';
import { judgeAttempt } from '../score.ts';
import { measureName } from '../words/names.ts';
import { anotherTime, applyChange } from './apply.ts';
import { type Fault, missing, sameLine, spoiled } from './fault.ts';
import { sensible } from './sized.ts';
import { inSteps, steps, stepsOf } from './steps.ts';

/** A single step that covers less of the way than this is not the thing to change. */
const LEAST_PROGRESS = 0.12;
/** Steps are reckoned to pass the limit by a little more than the plus-minus. */
const WITH_ROOM = 1.2;
/** Readings bend: steps grow at most so many times at once, and a way reckoned longer than this many times the most is not gone. */
const MOST_GROWTH = 3;
const FARTHEST = 1.6;

interface Welded {
  attempt: Attempt;
  line: Fault | null;
  spoils: string[];
}

/** One change welded again: what became of the fault's line, and the attempt itself. */
export interface Rerun {
  change: Change;
  attempt: Attempt;
  trial: Trial;
  line: Fault | null;
}

/** A change welded again; null where it means nothing for this hand, or where nothing is left to spend. */
type TryOut = (change: Change, fault: Fault) => Rerun | null;

/** What the re-runs of one attempt are judged by and measured against. */
interface Bench {
  recording: AttemptRecording;
  /** As judged before anything was changed. */
  result: Result;
  exercise: Exercise;
  profile: Profile | undefined;
  /** Most re-runs in all. */
  most: number;
  /** Called after each: how many so far, of at most how many. */
  onRerun: (done: number, most: number) => void;
}

/** Welds changed recordings again and keeps count. */
export class Reruns {
  spent = 0;

  constructor(private readonly bench: Bench) {}

  /** Nothing is left to spend. */
  get over(): boolean {
    return this.spent >= this.bench.most;
  }

  /** Tries a change on a fault, and once more on the same hand going a little differently where it mends. */
  readonly tryOut: TryOut = (change, fault) => {
    const { recording, result, exercise } = this.bench;
    if (this.over || !sensible(change, result, exercise, recording.simulation.process)) return null;
    const changed = applyChange(recording, change);
    if (changed === null) return null;
    const { attempt, line, spoils } = this.weld(changed, fault);
    const good = (r: Pick<Welded, 'line' | 'spoils'>): boolean => r.line?.verdict === 'within' && r.spoils.length === 0;
    // What mends by a hair mends by chance: it has to hold for the same hand going a little differently, too.
    const again = good({ line, spoils }) ? !this.over && good(this.weld(anotherTime(changed), fault)) : null;
    return { change, attempt, trial: { change, after: readingOf(line), mends: again === true, again, spoils }, line };
  };

  private weld(changed: AttemptRecording, fault: Fault): Welded {
    const { exercise, profile, result, onRerun, most } = this.bench;
    const attempt = attemptOf(changed);
    // The exercise's settings go along with a change of settings, which is no editing of the file.
    const again = judgeAttempt(changed, attempt, {
      exercise: { ...exercise, process: changed.simulation.process },
      ...(profile === undefined ? {} : { profile }),
    });
    const { kind } = changed.simulation.joint;
    const spoils = spoiled(result, again, fault).map((s) =>
      s.line === null ? s.text : `${measureName(s.line.measure, s.line.side, kind)} ${s.text}`,
    );
    onRerun(++this.spent, most);
    return { attempt, line: sameLine(fault, again), spoils };
  }
}

/** Tries the changes in turn until one mends the fault: first as far as the hand was off, then as far as the progress made calls for. */
export function mend(fault: Fault, changes: readonly Change[], room: number, rerun: TryOut): Rerun[] {
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

/** The change that came nearest without spoiling anything. */
export function nearest(runs: readonly Rerun[]): { change: Change; after: Fault } | null {
  let best: { change: Change; after: Fault } | null = null;
  for (const r of runs) {
    if (r.line === null || r.trial.spoils.length > 0) continue;
    if (best === null || missing(r.line) < missing(best.after)) best = { change: r.change, after: r.line };
  }
  return best;
}

/** A fault's line as a trial keeps it. */
export function readingOf(f: Fault | null): Trial['after'] {
  return f === null ? null : { reading: f.reading, verdict: f.verdict, y_mm: f.y_mm };
}
