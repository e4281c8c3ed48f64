import type { AttemptEntry, LoggedReading } from './shelf.ts';

/** One measure over the attempts at an exercise, oldest first. */
export interface Series {
  measure: string;
  unit: string;
  points: { id: string; made_ms: number; of: LoggedReading }[];
}

/** What a hand has done at one exercise. */
export interface Log {
  exercise: string;
  title: string | null;
  /** Judged attempts of this browser's own hand, oldest first. */
  attempts: AttemptEntry[];
  within: number;
  /** The attempt within its limits with the highest trend number; null while none is within. */
  best: AttemptEntry | null;
  series: Series[];
}

/** One log an exercise, the one welded last first. Robots and files opened from elsewhere are left out: they are another hand's. */
export function logsOf(shelf: readonly AttemptEntry[]): Log[] {
  const own = shelf
    .filter((e) => e.own && e.damaged === null && e.exercise !== null && e.verdict !== null)
    .sort((a, b) => a.made_ms - b.made_ms);
  const logs = new Map<string, AttemptEntry[]>();
  for (const entry of own) {
    const name = entry.exercise ?? '';
    logs.set(name, [...(logs.get(name) ?? []), entry]);
  }
  return [...logs]
    .map(([exercise, attempts]) => logOf(exercise, attempts))
    .sort((a, b) => lastOf(b).made_ms - lastOf(a).made_ms);
}

function logOf(exercise: string, attempts: AttemptEntry[]): Log {
  const good = attempts.filter((e) => e.verdict === 'within');
  return {
    exercise,
    title: attempts.at(-1)?.title ?? null,
    attempts,
    within: good.length,
    best: good.reduce<AttemptEntry | null>((best, e) => ((e.score ?? 0) > (best?.score ?? -1) ? e : best), null),
    series: seriesOf(attempts),
  };
}

/** Readings in the order in which the newest attempt has them; a measure read in another unit is another series. */
function seriesOf(attempts: readonly AttemptEntry[]): Series[] {
  const series = new Map<string, Series>();
  for (const entry of [...attempts].reverse())
    for (const { measure, unit } of entry.readings ?? [])
      if (!series.has(`${measure} ${unit}`)) series.set(`${measure} ${unit}`, { measure, unit, points: [] });
  for (const { id, made_ms, readings } of attempts)
    for (const of of readings ?? []) series.get(`${of.measure} ${of.unit}`)?.points.push({ id, made_ms, of });
  return [...series.values()];
}

function lastOf(log: Log): AttemptEntry {
  return log.attempts[log.attempts.length - 1];
}
