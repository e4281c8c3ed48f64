import type { Result } from '../../scoring/index.ts';
import { words } from '../locale/index.ts';

export interface Flag {
  number: number;
  y_mm: number;
  t_s: number | null;
  side: 'A' | 'B' | null;
  text: string;
}

/** Places nearer than this share a flag: the number leads to the cut, and the cut shows both. */
const TOGETHER_MM = 2;
const MOST_FLAGS = 9;

/** Numbered places on the bead: one for each line that is not within, at its worst height, worst verdict first. */
export function flagsOf(result: Result): Flag[] {
  const flags: Flag[] = [];
  const lines = [...result.lines].sort((a, b) => rank(a.verdict) - rank(b.verdict));
  for (const line of lines) {
    if (line.verdict === 'within') continue;
    const near = flags.find((f) => f.side === line.side && Math.abs(f.y_mm - line.y_mm) < TOGETHER_MM);
    const text = `${words.findings.measure(line.measure)}, ${words.findings.verdict[line.verdict]}`;
    if (near) near.text += `; ${text}`;
    else if (flags.length < MOST_FLAGS)
      flags.push({ number: flags.length + 1, y_mm: line.y_mm, t_s: null, side: line.side, text });
  }
  return flags;
}

/** Number of the flag a line hangs on, or null. */
export function flagNumber(flags: readonly Flag[], side: Flag['side'], y_mm: number): number | null {
  return flags.find((f) => f.side === side && Math.abs(f.y_mm - y_mm) < TOGETHER_MM)?.number ?? null;
}

/**
 * How many places farther out each flag stands, so that none covers another on its side.
 * @param near_mm flags nearer than this in height would touch
 */
export function flagColumns(flags: readonly Flag[], near_mm: number): number[] {
  const columns: number[] = [];
  for (const [i, flag] of flags.entries()) {
    const taken = flags
      .slice(0, i)
      .map((other, k) => ({ other, column: columns[k] }))
      .filter(({ other }) => left(other) === left(flag) && Math.abs(other.y_mm - flag.y_mm) < near_mm)
      .map(({ column }) => column);
    let column = 0;
    while (taken.includes(column)) column++;
    columns.push(column);
  }
  return columns;
}

/** The left toe's flags stand at the left; everything else at the right. */
function left(flag: Flag): boolean {
  return flag.side === 'B';
}

function rank(verdict: Result['lines'][number]['verdict']): number {
  return verdict === 'outside' ? 0 : verdict === 'too close to call' ? 1 : 2;
}
