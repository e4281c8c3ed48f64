import { measureName, said } from '../words/names.ts';
import { classWords } from './class-words.ts';
import { compare, type Entry, LATEST, type TraineeRow } from './entry.ts';
import { faultName, kindOrder } from './faults.ts';

/** Somebody to go to first, why, and the cut to put on the table. */
export interface First {
  trainee: string;
  device: string;
  entry: Entry;
  fault: string;
  /** The first fix as said. */
  says: string;
  /** How many of the latest attempts had this fault first, and of how many. */
  times: number;
  of: number;
  /** Height to cut at. */
  y_mm: number | null;
  /** The line that stands farthest outside, with its reading; null where none is outside. */
  line: string | null;
}

/** How the three are chosen, printed beside them. */
export const FIRST_RULE = classWords.firstRule;

const HOW_MANY = 3;

/** The three to see first, one row a trainee. */
export function firstThree(rows: readonly TraineeRow[]): First[] {
  const candidates = rows.flatMap((row) => {
    const e = row.latest;
    return e.fault === null ? [] : [{ row, e, code: e.fault.code, times: timesOf(row), out: farthestOut(e) }];
  });
  candidates.sort(
    (a, b) =>
      settled(a.e) - settled(b.e) ||
      kindOrder(a.code) - kindOrder(b.code) ||
      b.times - a.times ||
      b.out.by - a.out.by ||
      compare(a.row.trainee, b.row.trainee),
  );
  const seen = new Set<string>();
  const three: First[] = [];
  for (const { row, e, code, times, out } of candidates) {
    if (seen.has(row.trainee) || three.length === HOW_MANY) continue;
    seen.add(row.trainee);
    three.push({
      trainee: row.trainee,
      device: row.device,
      entry: e,
      fault: faultName(code),
      says: e.fault!.advice.text,
      times,
      of: Math.min(LATEST, row.attempts.length),
      y_mm: e.fault!.advice.y_mm ?? out.y_mm ?? e.scored.result.exercise?.cuts_mm[0] ?? null,
      line: out.text,
    });
  }
  return three;
}

/** An attempt whose lines all hold comes after those that are outside or have no verdict. */
function settled(e: Entry): number {
  return e.scored.result.verdict === 'within' ? 1 : 0;
}

function timesOf(row: TraineeRow): number {
  const code = row.latest.fault?.code;
  return row.attempts.slice(-LATEST).filter((e) => e.fault?.code === code).length;
}

/** The line farthest outside its limit, in units of its own plus-minus. */
function farthestOut(e: Entry): { by: number; text: string | null; y_mm: number | null } {
  let worst: { by: number; text: string | null; y_mm: number | null } = { by: 0, text: null, y_mm: null };
  for (const l of e.scored.result.lines) {
    if (l.verdict !== 'outside') continue;
    const by = Math.abs(l.reading - l.limit) / Math.max(l.plusMinus, 1e-3);
    if (by <= worst.by) continue;
    const unit = l.unit === 'deg' ? '°' : ` ${l.unit}`;
    const decimals = l.unit === 'in' ? 3 : l.unit === 'mm' ? 2 : 0;
    worst = {
      by,
      text: `${measureName(l.measure, l.side, e.scored.joint)} ${said(l.reading, decimals)} ± ${said(l.plusMinus, decimals)}${unit}, limit ${said(l.limit, decimals)}`,
      y_mm: l.y_mm,
    };
  }
  return worst;
}
