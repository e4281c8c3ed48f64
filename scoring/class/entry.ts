import { exerciseDigest } from '../exercises/digest.ts';
import { exercises } from '../exercises/ready.ts';
import type { Advice, AdviceCode, Note, Reason } from '../schema/result.ts';
import { pathOfText } from '../verdict/motion-path.ts';
import { type Copy, copyOf } from '../verdict/twins.ts';
import { said } from '../words/names.ts';
import { faults } from './faults.ts';
import { type AttemptName, exerciseMeant, personKey, wordsInName } from './file-name.ts';
import { type KnownPieces, namePieces } from './pieces.ts';
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
    compare(a.scored.started ?? '', b.scored.started ?? '') ||
    compare(a.file, b.file)
  );
}

export function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

/** Reasons that speak of the file and not of the hand. */
export const OF_THE_FILE: ReadonlySet<Reason['code']> = new Set([
  'recording-edited',
  'header-edited',
  'state-differs',
  'exercise-edited',
  'piece-edited',
  'settings-edited',
  'exercise-too-little',
]);
/** Notes that say the same: such a file is practice. */
export const PRACTICE: ReadonlySet<Note['code']> = new Set([
  'robot-left-in-origin',
  'unmeasured-varies',
  'no-check-number',
  'study-cell',
  'follows-demonstration',
  'machine-beat',
  'engine-differs',
]);

/** What counts where the instructor names nothing else: the exercises that come with Toehold, by content. */
function readyDigests(): ReadonlySet<string> {
  return new Set(exercises.map((e) => exerciseDigest(e)!));
}

/**
 * Scored files as entries of the sheet, with everything that does not fit named.
 * @param asked digests of the exercises that count (`exerciseDigest`); attempts at any other are practice
 * @param known whose plate is whose and the start word, where the instructor says
 */
export function entriesOf(
  scored: readonly Scored[],
  asked: ReadonlySet<string> = readyDigests(),
  known: KnownPieces = {},
): Entry[] {
  const entries = scored.map((s) => entryOf(s, asked)).sort(byTime);
  nameTwins(entries);
  namePieces(entries, known);
  nameOverCount(entries);
  return entries;
}

function entryOf(scored: Scored, asked: ReadonlySet<string>): Entry {
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
  for (const note of r.notes) if (PRACTICE.has(note.code)) notCounted.push(sentenceStart(note.text));
  if (scored.exercise !== null && !asked.has(scored.exercise))
    notCounted.push('practice: not one of the exercises asked for');
  const meant = name.exercise === null ? null : exerciseMeant(name.exercise);
  const judged = r.exercise?.name ?? null;
  if (meant !== null && judged !== null && meant !== judged) {
    mismatches.push(`named ${name.exercise}, judged as ${judged}`);
  }
  const inside = scored.trainee === null ? null : wordsInName(scored.trainee.name);
  if (inside !== null && inside !== name.trainee) mismatches.push(`named ${name.trainee}, the file says ${inside}`);
  for (const note of r.notes) {
    if (note.code === 'aids') mismatches.push(sentenceStart(note.text));
  }
  const fault = first !== undefined && faults[first.code].kind !== 'none' ? { code: first.code, advice: first } : null;
  return { file: scored.file, name, scored, fault, notCounted, mismatches };
}

/** Beyond the attempts an exercise allows each trainee an attempt is practice; those that do not count for another reason use none up. */
function nameOverCount(entries: readonly Entry[]): void {
  const made = new Map<string, number>();
  for (const e of entries) {
    const allowed = e.scored.result.exercise?.attempts;
    if (allowed === undefined || e.name.trainee === null || e.notCounted.length > 0) continue;
    const key = JSON.stringify([e.name.trainee, e.scored.exercise]);
    const n = (made.get(key) ?? 0) + 1;
    made.set(key, n);
    if (n > allowed) e.notCounted.push(`attempt ${n} at an exercise that allows ${allowed}`);
  }
}

/** As part of a list: without the full stop, first letter small. */
function sentenceStart(text: string): string {
  return text.charAt(0).toLowerCase() + text.slice(1).replace(/\.$/, '');
}

/**
 * The same motion in two files, to the last pose or nearly: handed in under two names nobody can tell whose it is and none counts; otherwise
 * the first under a name counts and the others are its copies. Robots are left out: theirs are alike by nature.
 */
function nameTwins(entries: readonly Entry[]): void {
  const hands = entries.filter((e) => e.scored.result.origin.kind === 'hand');
  const found = twinsAmong(hands);
  hands.forEach((e, n) => {
    const twins = found[n]!;
    if (twins.length === 0) return;
    const people = new Set(
      [e, ...twins.map((t) => t.entry)].map((x) => personKey(x.name.trainee)).filter((x) => x !== null),
    );
    const files = twins.map((t) => `${t.entry.file}${t.told}`).join(', ');
    const earlier = twins.filter((t) => hands.indexOf(t.entry) < n);
    if (people.size > 1) e.notCounted.push(`the same motion as ${files}`);
    else if (
      isCopy(
        e,
        earlier.map((t) => t.entry),
        twins.map((t) => t.entry),
      )
    )
      e.notCounted.push(`a copy of ${files}`);
  });
}

interface ToldTwin {
  entry: Entry;
  /** In what they agree, in words; empty: pose for pose. */
  told: string;
}

/** The twins of each, in the order given; every pair is looked at once. */
function twinsAmong(hands: readonly Entry[]): ToldTwin[][] {
  const paths = hands.map((e) => pathOfText(e.scored.motion));
  const twins: ToldTwin[][] = hands.map(() => []);
  hands.forEach((e, n) => {
    for (let k = 0; k < n; k++) {
      const other = hands[k]!;
      const same = other.scored.hand === e.scored.hand;
      const twin = same ? null : copyOf(paths[k]!, paths[n]!);
      if (!same && twin === null) continue;
      const told = twin === null ? '' : copySaid(twin);
      twins[n]!.push({ entry: other, told });
      twins[k]!.push({ entry: e, told });
    }
  });
  return twins;
}

/** The first that bears a name is the original; without any name, the first. */
function isCopy(e: Entry, earlier: readonly Entry[], twins: readonly Entry[]): boolean {
  if (e.name.trainee === null) return earlier.length > 0 || twins.some((t) => t.name.trainee !== null);
  return earlier.some((t) => t.name.trainee !== null);
}

/** How one motion is another's, in brackets after whose it is. */
export function copySaid(twin: Copy): string {
  if (twin.kind === 'rhythm') {
    const { alike, swings, stretched } = twin;
    return ` (long and short swings in the same order, ${said(alike, 2)} of 1 alike over ${swings} of them, in ${said(stretched, 2)} times the time)`;
  }
  const { kind, apart_mm, together_s, mirrored, later_s, moved } = twin;
  const how = [
    `${said(apart_mm, 2)} mm apart over ${said(together_s, 0)} s`,
    ...(kind === 'stretch' ? ['a stretch of it'] : []),
    ...(mirrored ? ['mirrored'] : []),
    ...(Math.hypot(moved.u_mm, moved.y_mm) >= 0.1
      ? [`moved ${said(moved.u_mm)} across and ${said(moved.y_mm)} up`]
      : []),
    ...(later_s === 0 ? [] : [`${said(later_s, 2)} s later`]),
  ];
  return ` (${how.join(', ')})`;
}
