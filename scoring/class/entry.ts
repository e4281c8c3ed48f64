import type { Advice, AdviceCode, Reason } from '../schema/result.ts';
import { faults } from './faults.ts';
import { type AttemptName, exerciseMeant, wordsInName } from './file-name.ts';
import { nameOf, type Scored } from './scored.ts';

/** How many of the latest attempts stand for what somebody does now. */
export const LATEST = 5;

/** One attempt on the sheet. */
export interface Entry {
  file: string;
  name: AttemptName;
  scored: Scored;
  /** The first fix where there is something to mend; null where the advice is to keep it or to measure a real one. */
  fault: { code: AdviceCode; advice: Advice } | null;
  /** Why it is kept on the sheet and left out of every count; empty: it counts. */
  notCounted: string[];
  /** Things that do not fit together, said and counted all the same. */
  mismatches: string[];
}

/** One trainee at one exercise on one kind of device. Devices are never mixed: what they can measure differs. */
export interface TraineeRow {
  trainee: string;
  exercise: string | null;
  device: string;
  /** In the order they were made; only those that count. */
  attempts: Entry[];
  first: Entry;
  latest: Entry;
  /** Trend numbers of the latest attempts, those without a verdict left out. */
  median: number | null;
  spread: { from: number; to: number } | null;
  within: number;
  withoutVerdict: number;
  commonFault: AdviceCode | null;
}

/** Attempts in the order they were made, as far as their names say: day, number, file name. */
export function byTime(a: Entry, b: Entry): number {
  return (
    compare(a.name.date ?? '', b.name.date ?? '') ||
    (a.name.attempt ?? 0) - (b.name.attempt ?? 0) ||
    compare(a.file, b.file)
  );
}

export function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

/** Reasons that speak of the file and not of the hand. */
const OF_THE_FILE: ReadonlySet<Reason['code']> = new Set([
  'recording-edited',
  'header-edited',
  'state-differs',
  'exercise-edited',
  'settings-edited',
]);

/** Scored files as entries of the sheet, with everything that does not fit named. */
export function entriesOf(scored: readonly Scored[]): Entry[] {
  const entries = scored.map(entryOf).sort(byTime);
  nameTwins(entries);
  return entries;
}

function entryOf(scored: Scored): Entry {
  const name = nameOf(scored);
  const r = scored.result;
  const first = r.advice[0];
  const notCounted: string[] = [];
  const mismatches: string[] = [];
  if ((r.origin.kind === 'robot') !== (r.device.kind === 'robot')) {
    notCounted.push(`origin says ${r.origin.kind}, device says ${r.device.kind}`);
  } else if (r.origin.kind === 'robot') notCounted.push('welded by the robot hand');
  for (const x of r.reasons) {
    if (OF_THE_FILE.has(x.code)) notCounted.push(sentenceStart(x.text));
  }
  const meant = name.exercise === null ? null : exerciseMeant(name.exercise);
  const judged = r.exercise?.name ?? null;
  if (meant !== null && judged !== null && meant !== judged) {
    mismatches.push(`named ${name.exercise}, judged as ${judged}`);
  }
  const inside = scored.trainee === null ? null : wordsInName(scored.trainee.name);
  if (inside !== null && inside !== name.trainee) mismatches.push(`named ${name.trainee}, the file says ${inside}`);
  for (const note of r.notes) {
    if (note.code === 'engine-differs' || note.code === 'aids') mismatches.push(sentenceStart(note.text));
  }
  const fault = first !== undefined && faults[first.code].kind !== 'none' ? { code: first.code, advice: first } : null;
  return { file: scored.file, name, scored, fault, notCounted, mismatches };
}

/** As part of a list: without the full stop, first letter small. */
function sentenceStart(text: string): string {
  return text.charAt(0).toLowerCase() + text.slice(1).replace(/\.$/, '');
}

/**
 * The same hand in two files: handed in under two names nobody can tell whose it is and none counts; otherwise the first under a name counts
 * and the others are its copies.
 */
function nameTwins(entries: readonly Entry[]): void {
  const byHand = new Map<string, Entry[]>();
  for (const e of entries) byHand.set(e.scored.hand, [...(byHand.get(e.scored.hand) ?? []), e]);
  for (const twins of byHand.values()) {
    if (twins.length < 2) continue;
    const named = twins.filter((e) => e.name.trainee !== null);
    const people = new Set(named.map((e) => e.name.trainee));
    const original = named[0] ?? twins[0]!;
    for (const e of twins) {
      if (people.size > 1) {
        const others = twins.filter((t) => t !== e).map((t) => t.file);
        e.notCounted.push(`the same hand, pose for pose, as ${others.join(', ')}`);
      } else if (e !== original) e.notCounted.push(`a copy of ${original.file}`);
    }
  }
}
