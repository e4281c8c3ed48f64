import { cycleShares, type WeaveOptions } from '../../engine/index.ts';

export interface Beat {
  /** Seconds after the strike. */
  t_s: number;
  toe: 'A' | 'B';
  /** Coming to the toe, or leaving it. */
  what: 'arrive' | 'leave';
}

/** Beats of the exercise's weave in [from, to), counted from the strike. A straight run has none. */
export function beatsBetween(weave: WeaveOptions, from_s: number, to_s: number): Beat[] {
  if (weave.pattern === 'straight' || weave.cyclesPerSecond <= 0) return [];
  const { pauseA, pauseB, cross } = cycleShares(weave);
  const firstIsA = weave.firstToe === 'A';
  const first = firstIsA ? pauseA : pauseB;
  const second = firstIsA ? pauseB : pauseA;
  const [one, two] = firstIsA ? (['A', 'B'] as const) : (['B', 'A'] as const);
  const marks = [
    { at: 0, toe: one, what: 'arrive' },
    { at: first, toe: one, what: 'leave' },
    { at: first + cross, toe: two, what: 'arrive' },
    { at: first + cross + second, toe: two, what: 'leave' },
  ] as const;
  const period = 1 / weave.cyclesPerSecond;
  const beats: Beat[] = [];
  for (let cycle = Math.max(0, Math.floor(from_s / period)); cycle * period < to_s; cycle++)
    for (const mark of marks) {
      const t_s = (cycle + mark.at) * period;
      if (t_s >= from_s && t_s < to_s) beats.push({ t_s, toe: mark.toe, what: mark.what });
    }
  return beats;
}
