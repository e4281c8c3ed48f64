import { median, spread } from '../measures/statistics.ts';
import type { AdviceCode } from '../schema/result.ts';
import { byTime, compare, type Entry, entriesOf, LATEST, type TraineeRow } from './entry.ts';
import { kindOrder } from './faults.ts';
import { mixesAlphabets, personKey, personSaid } from './file-name.ts';
import { type First, firstThree } from './first-three.ts';
import type { KnownPieces } from './pieces.ts';
import type { BadFile, OtherFile, Scored } from './scored.ts';

/** A class on one sheet: who does what now, what they have in common, whom to see first, and every file that does not fit. */
export interface ClassSheet {
  rows: TraineeRow[];
  /** Most trainees have it among their latest attempts; null where no two share one (or one trainee alone has none). */
  commonFault: { code: AdviceCode; trainees: number; attempts: number } | null;
  firstThree: First[];
  /** Attempts kept and not counted, each with the reasons. */
  notCounted: Entry[];
  /** Attempts counted although something does not fit. */
  mismatched: Entry[];
  /** Attempts whose file name gives no trainee. */
  unnamed: Entry[];
  bad: BadFile[];
  /** Whole files that are no attempts, left alone. */
  others: OtherFile[];
  folders: string[];
  files: number;
  counted: number;
  trainees: number;
  days: { from: string; to: string } | null;
  /** Things of note about the sheet itself. */
  notes: string[];
}

/**
 * Makes the class sheet. Trainees stand in the order of their names: the sheet ranks nobody.
 * @param asked digests of the exercises that count (`exerciseDigest`); left out: the ready ones. Attempts at any other are practice
 * @param known whose plate is whose and the start word, for exercises that deal everybody a piece of their own
 */
export function classSheet(
  scores: {
    scored: readonly Scored[];
    bad: readonly BadFile[];
    others?: readonly OtherFile[];
    folders?: readonly string[];
  },
  asked?: ReadonlySet<string>,
  known: KnownPieces = {},
): ClassSheet {
  const entries = entriesOf(scores.scored, asked, known);
  const counted = entries.filter((e) => e.notCounted.length === 0);
  const named = counted.filter((e) => e.name.trainee !== null);
  const rows = rowsOf(named);
  const days = entries.map((e) => e.name.date).filter((d) => d !== null);
  return {
    rows,
    commonFault: commonOfClass(rows),
    firstThree: firstThree(rows),
    notCounted: entries.filter((e) => e.notCounted.length > 0).sort((a, b) => compare(a.file, b.file)),
    mismatched: counted.filter((e) => e.mismatches.length > 0),
    unnamed: counted.filter((e) => e.name.trainee === null),
    bad: [...scores.bad],
    others: [...(scores.others ?? [])],
    folders: [...(scores.folders ?? [])],
    files: scores.scored.length + scores.bad.length,
    counted: counted.length,
    trainees: new Set(rows.map((r) => r.trainee)).size,
    days: days.length === 0 ? null : { from: days.reduce(least), to: days.reduce(most) },
    notes: notesOf(rows, entries),
  };
}

function rowsOf(entries: readonly Entry[]): TraineeRow[] {
  const groups = new Map<string, Entry[]>();
  for (const e of entries) {
    const key = JSON.stringify([
      personKey(e.name.trainee),
      e.scored.result.exercise?.name ?? null,
      e.scored.result.device.kind,
    ]);
    groups.set(key, [...(groups.get(key) ?? []), e]);
  }
  return [...groups.values()].map(rowOf).sort(byName);
}

function rowOf(group: Entry[]): TraineeRow {
  const attempts = [...group].sort(byTime);
  const latest = attempts.slice(-LATEST);
  const numbers = latest.map((e) => e.scored.result.score).filter((n) => n !== null);
  return {
    trainee: personSaid(attempts[0]!.name.trainee ?? ''),
    exercise: attempts[0]!.scored.result.exercise?.name ?? null,
    device: attempts[0]!.scored.result.device.kind,
    attempts,
    first: attempts[0]!,
    latest: attempts[attempts.length - 1]!,
    median: median(numbers),
    spread: spread(numbers),
    within: attempts.filter((e) => e.scored.result.verdict === 'within').length,
    withoutVerdict: attempts.filter((e) => e.scored.result.verdict === 'no verdict').length,
    commonFault: mostOften(latest),
  };
}

function byName(a: TraineeRow, b: TraineeRow): number {
  return compare(a.trainee, b.trainee) || compare(a.exercise ?? '', b.exercise ?? '') || compare(a.device, b.device);
}

/** The fault met most often; of two met as often the graver kind, then the one met last. */
function mostOften(entries: readonly Entry[]): AdviceCode | null {
  const counts = new Map<AdviceCode, number>();
  for (const e of entries) if (e.fault !== null) counts.set(e.fault.code, (counts.get(e.fault.code) ?? 0) + 1);
  let best: AdviceCode | null = null;
  for (const [code, count] of counts) {
    const than = best === null ? 0 : counts.get(best)!;
    if (count > than || (count === than && best !== null && kindOrder(code) <= kindOrder(best))) best = code;
  }
  return best;
}

/** One vote a trainee for each fault among the latest attempts. */
function commonOfClass(rows: readonly TraineeRow[]): ClassSheet['commonFault'] {
  const trainees = new Map<AdviceCode, Set<string>>();
  const attempts = new Map<AdviceCode, number>();
  for (const row of rows) {
    for (const e of row.attempts.slice(-LATEST)) {
      if (e.fault === null) continue;
      const { code } = e.fault;
      trainees.set(code, (trainees.get(code) ?? new Set()).add(row.trainee));
      attempts.set(code, (attempts.get(code) ?? 0) + 1);
    }
  }
  const [top] = [...trainees].sort(
    ([a, x], [b, y]) => y.size - x.size || attempts.get(b)! - attempts.get(a)! || kindOrder(a) - kindOrder(b),
  );
  const together = new Set(rows.map((r) => r.trainee)).size > 1 ? 2 : 1;
  return top === undefined || top[1].size < together
    ? null
    : { code: top[0], trainees: top[1].size, attempts: attempts.get(top[0])! };
}

function notesOf(rows: readonly TraineeRow[], entries: readonly Entry[]): string[] {
  const notes: string[] = [];
  const inTable = new Set(rows.map((r) => personKey(r.latest.name.trainee)));
  const without = new Set(
    entries.flatMap(({ name: { trainee } }) =>
      trainee === null || inTable.has(personKey(trainee)) ? [] : [personSaid(trainee)],
    ),
  );
  if (without.size > 0) notes.push(`Nothing that counts from ${[...without].sort().join(', ')}.`);
  const mixed = [...new Set(entries.flatMap(({ name }) => name.trainee ?? []))].filter(mixesAlphabets).sort();
  if (mixed.length > 0)
    notes.push(
      `Letters of two alphabets in one name, which can look like somebody else's: ${mixed.map(personSaid).join(', ')}.`,
    );
  const devices = [...new Set(rows.map((r) => r.device))].sort();
  if (devices.length > 1) {
    notes.push(
      `Welded with ${devices.join(' and ')}: numbers of different devices are not compared, each has rows of its own.`,
    );
  }
  const several = rows.filter((r) => r.attempts.length > 2 * LATEST);
  if (several.length > 0) {
    notes.push(
      `More than ${2 * LATEST} attempts: ${several.map((r) => `${r.trainee} (${r.attempts.length})`).join(', ')}. The first attempt and the median are shown, never the best.`,
    );
  }
  return notes;
}

const least = (a: string, b: string): string => (a < b ? a : b);
const most = (a: string, b: string): string => (a > b ? a : b);
