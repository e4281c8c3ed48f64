/**
 * Weave patterns as curves in time. A cycle goes toe A, root, toe B, root; `phase` 0..1 is split into two pauses and two crossings.
 * Heights are relative to the climbing mid-line y = start + travel (t - shelf).
 *
 *   straight    no weave: u = 0
 *   inverted-v  toe, up over the apex at the root, down to the other toe; both ways over the top
 *   triangle    toe across low to the other toe, then up over the apex and back: one direction only
 *   zigzag      straight crossings climbing evenly; no apex
 *   crescent    crossings that sag upward as an arc (parabola through the apex)
 */

/** The weave as a curve in time; which knobs a pattern uses is said in weave.ts. */
export type PatternName = 'straight' | 'inverted-v' | 'triangle' | 'zigzag' | 'crescent';

/** What the robot hand is asked to follow. */
export interface WeaveOptions {
  pattern: PatternName;
  cyclesPerSecond: number;
  /** Wire-tip travel from toe to toe across the welder's view. */
  width_mm: number;
  travel_mmps: number;
  /** Pause at each toe, s. */
  pauseA_s: number;
  pauseB_s: number;
  /** Reach ahead at the root crossing, above the toes. */
  apex_mm: number;
  /** Which toe comes first, and which way round a triangle loops. */
  firstToe: 'A' | 'B';
  tipToWork_mm: number;
  workAngle_deg: number;
  travelAngle_deg: number;
  /** Hold at the bottom before climbing (builds the shelf), s. */
  shelf_s: number;
  start_mm: number;
  length_mm: number;
  /** Short arcs into the crater after the run, on the root, that fill it; left out: none. */
  reStrikes?: number;
}

/** Every pattern the robot hand knows. */
export const PATTERNS: readonly PatternName[] = ['straight', 'inverted-v', 'triangle', 'zigzag', 'crescent'];

/** The weave everything starts from: an inverted V. */
export function defaultWeave(): WeaveOptions {
  return {
    pattern: 'inverted-v',
    cyclesPerSecond: 0.9,
    width_mm: 5,
    travel_mmps: 2,
    pauseA_s: 0.25,
    pauseB_s: 0.25,
    apex_mm: 2,
    firstToe: 'A',
    tipToWork_mm: 12,
    workAngle_deg: 45,
    travelAngle_deg: 8,
    shelf_s: 0.8,
    start_mm: 4,
    length_mm: 60,
  };
}

/** A place on a weave, against the mid-line that climbs at the travel asked for. */
export interface WeavePoint {
  u_mm: number;
  /** Above the climbing mid-line. */
  ahead_mm: number;
  /** 0 at the root, 1 at the toes. */
  away: number;
}

/** Shares of a cycle: pauses as asked, at most 80 % of the cycle together; the rest is crossing, half each way. */
export function cycleShares(w: WeaveOptions): { pauseA: number; pauseB: number; cross: number } {
  const both = (w.pauseA_s + w.pauseB_s) * w.cyclesPerSecond;
  const fit = both > 0.8 ? 0.8 / both : 1;
  const pauseA = w.pauseA_s * w.cyclesPerSecond * fit;
  const pauseB = w.pauseB_s * w.cyclesPerSecond * fit;
  return { pauseA, pauseB, cross: (1 - pauseA - pauseB) / 2 };
}

/** Where the weave stands at `phase` of a cycle that starts with the pause at the first toe. */
export function weaveAt(w: WeaveOptions, phase: number): WeavePoint {
  if (w.pattern === 'straight') return { u_mm: 0, ahead_mm: 0, away: 0 };
  const { pauseA, pauseB, cross } = cycleShares(w);
  const firstIsA = w.firstToe === 'A';
  const first = firstIsA ? pauseA : pauseB;
  const second = firstIsA ? pauseB : pauseA;
  const side = firstIsA ? 1 : -1;
  const half = w.width_mm / 2;
  let x: number; // -1 at the second toe, +1 at the first
  let out: boolean; // on the way from the first toe to the second
  if (phase < first) {
    x = 1;
    out = true;
  } else if (phase < first + cross) {
    x = 1 - (2 * (phase - first)) / cross;
    out = true;
  } else if (phase < first + cross + second) {
    x = -1;
    out = false;
  } else {
    x = -1 + (2 * (phase - first - cross - second)) / cross;
    out = false;
  }
  const u = side * x * half;
  const away = Math.abs(x);
  switch (w.pattern) {
    case 'inverted-v':
      return { u_mm: u, ahead_mm: w.apex_mm * (1 - away), away };
    case 'triangle':
      // Low across on the way out, over the apex on the way back.
      return { u_mm: u, ahead_mm: out ? 0 : w.apex_mm * (1 - away), away };
    case 'crescent':
      return { u_mm: u, ahead_mm: w.apex_mm * (1 - away * away), away };
    default:
      return { u_mm: u, ahead_mm: 0, away };
  }
}
