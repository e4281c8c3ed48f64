import { median } from '../measures/statistics.ts';
import { type ClassWords, classWords } from './class-words.ts';
import type { TraineeRow } from './entry.ts';

/** What somebody did in one week. */
export interface Week {
  /** Its Monday, ISO 8601. */
  monday: string;
  attempts: number;
  within: number;
  /** Median of the trend numbers; null where no attempt of the week has one. */
  median: number | null;
}

/** A day in ms. */
const DAY_MS = 86_400_000;

/** The Monday of a day's week, weeks as ISO 8601 has them. @param day such as 2026-03-14 */
function mondayOf(day: string): string {
  const at = new Date(`${day}T00:00:00Z`);
  const since = (at.getUTCDay() + 6) % 7;
  return new Date(at.getTime() - since * DAY_MS).toISOString().slice(0, 10);
}

/** A row week by week, the first first; attempts without a day are in none. */
export function weeksOf({ attempts }: Pick<TraineeRow, 'attempts'>): Week[] {
  const weeks = new Map<string, TraineeRow['attempts']>();
  for (const entry of attempts) {
    if (entry.name.date === null) continue;
    const monday = mondayOf(entry.name.date);
    weeks.set(monday, [...(weeks.get(monday) ?? []), entry]);
  }
  return [...weeks]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([monday, entries]) => ({
      monday,
      attempts: entries.length,
      within: entries.filter((e) => e.scored.result.verdict === 'within').length,
      median: median(entries.map((e) => e.scored.result.score).filter((n) => n !== null)),
    }));
}

/** Weeks that any of the rows has attempts in; with one alone there is no change to show. */
function weeksIn(rows: readonly TraineeRow[]): string[] {
  const all = [...new Set(rows.flatMap((row) => weeksOf(row).map((w) => w.monday)))].sort();
  return all.length > 1 ? all : [];
}

/** Most weeks on a sheet of paper; of more the latest stand. */
const MOST_WEEKS = 10;

/** Change over weeks as a table: the heading, and a row for each row of the class with attempts in more than one; empty: nothing changed yet. */
export function weekTable(
  rows: readonly TraineeRow[],
  w: ClassWords = classWords,
): { head: string[]; rows: string[][] } | null {
  const weeks = weeksIn(rows).slice(-MOST_WEEKS);
  const table = rows.flatMap((row) => {
    const by = new Map(weeksOf(row).map((week) => [week.monday, week]));
    if (by.size < 2) return [];
    return [[row.trainee, row.exercise ?? w.none, row.device, ...weeks.map((monday) => weekSaid(by.get(monday), w))]];
  });
  if (weeks.length === 0 || table.length === 0) return null;
  return { head: [w.head.trainee, w.head.exercise, w.head.device, ...weeks.map(w.from)], rows: table };
}

/** What stands above the table of weeks. */
export const WEEKS_RULE = classWords.weeksRule;

function weekSaid(week: Week | undefined, w: ClassWords): string {
  if (week === undefined) return '';
  return `${week.median ?? '–'}; ${w.within(week.within, week.attempts)}`;
}
