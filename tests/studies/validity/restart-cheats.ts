import type { Pose, WeaveOptions } from '../../../engine/index.ts';

/**
 * Bad welds covered with what counts as technique: restarts and crater fill. The hands are the robot's own poses put together anew, 100 a
 * second. Heights are of the 50 mm tee, judged from 16 to 40 mm.
 */
export interface RestartCheat {
  name: string;
  /** What is wrong with the hand that is to be covered. */
  weave: Partial<WeaveOptions>;
  change(poses: Pose[]): Pose[];
}

/** Too fast: a leg under the size asked. A narrow weave: a cold toe. */
const FAST: Partial<WeaveOptions> = { travel_mmps: 3.6 };
const NARROW: Partial<WeaveOptions> = { width_mm: 1.5 };
const SHORT_STOP_S = 0.6;
const COLD_STOP_S = 12;

function held(p: Pose, seconds: number, trigger: boolean): Pose[] {
  return Array.from({ length: Math.round(100 * seconds) }, () => ({ ...p, trigger }));
}

function at(p: Pose, u_mm: number, y_mm: number): Pose {
  return { ...p, u_mm, y_mm };
}

/** First pose that has climbed to a height over the root. */
function reach(poses: readonly Pose[], y_mm: number): number {
  return poses.findIndex((p) => p.trigger && p.y_mm >= y_mm && Math.abs(p.u_mm) < 0.5);
}

/** The part of the run between two heights. */
function between(poses: readonly Pose[], from_mm: number, to_mm: number): Pose[] {
  return poses.slice(reach(poses, from_mm), reach(poses, to_mm));
}

/** Strikes above a stop and drops back below it: what a restart is allowed. */
function dropBack(stop: Pose, above_mm: number, below_mm: number): Pose[] {
  const out = held(at(stop, 0, stop.y_mm + above_mm), 0.1, true);
  for (let i = 1; i <= 50; i++)
    out.push({ ...at(stop, 0, stop.y_mm + above_mm - (i / 50) * (above_mm + below_mm)), trigger: true });
  return out;
}

/** Stops at each height, and welds the length below it once more as the start of a restart. */
function weldTwice(poses: Pose[], stops_mm: readonly number[], back_mm: number, pause_s: number): Pose[] {
  const out: Pose[] = [];
  let from = 0;
  for (const y of stops_mm) {
    const i = reach(poses, y);
    const stop = poses[i]!;
    out.push(...poses.slice(from, i), ...held(stop, pause_s, false), ...dropBack(stop, 8, back_mm));
    out.push(...between(poses, y - back_mm, y));
    from = i;
  }
  return [...out, ...poses.slice(from)];
}

/** Stops at each height and strikes short arcs below it, as if its crater were being filled. */
function fill(poses: Pose[], stops_mm: readonly number[], arcs: (stop: Pose) => Pose[]): Pose[] {
  const out: Pose[] = [];
  let from = 0;
  for (const y of stops_mm) {
    const i = reach(poses, y);
    out.push(...poses.slice(from, i), ...arcs(poses[i]!));
    from = i;
  }
  return [...out, ...poses.slice(from)];
}

/** A short arc that weaves over what is just below a stop. */
function shortWeave(stop: Pose, under_mm: number, seconds: number): Pose[] {
  const n = Math.round(100 * seconds);
  return Array.from({ length: n }, (_, i) => ({
    ...at(stop, 2.5 * Math.sin((2 * Math.PI * i) / 60), stop.y_mm - under_mm + (i / n) * 4),
    trigger: true,
  }));
}

export const restartCheats: readonly RestartCheat[] = [
  {
    name: 'a bad length covered by one restart, dropped back 10 mm',
    weave: FAST,
    change: (p) => weldTwice(p, [26], 9.5, COLD_STOP_S),
  },
  {
    name: 'each 8 mm welded twice as a chain of restarts',
    weave: FAST,
    change: (p) => weldTwice(p, [14, 22, 30, 38, 45], 9, SHORT_STOP_S),
  },
  {
    name: 'each 8 mm welded twice, cold each time',
    weave: FAST,
    change: (p) => weldTwice(p, [14, 22, 30, 38, 45], 9, COLD_STOP_S),
  },
  {
    name: 'a narrow run widened by a chain of restarts',
    weave: NARROW,
    change: (p) => weldTwice(p, [14, 22, 30, 38, 45], 9, SHORT_STOP_S),
  },
  {
    name: 'drawn back 9 mm every 9 mm without letting go',
    weave: FAST,
    change: (p) =>
      [18, 27, 36, 45].reduceRight(
        (q, y) => [...q.slice(0, reach(q, y)), ...between(q, y - 9, y), ...q.slice(reach(q, y))],
        p,
      ),
  },
  {
    name: 're-striking over every cold place after the run',
    weave: FAST,
    change: (p) => {
      const last = p.map((q) => q.trigger).lastIndexOf(true);
      const places = [12, 16, 20, 24, 28, 32, 36, 40];
      const arcs = places.flatMap((y) => [
        ...held(at(p[last]!, 0, y), 0.8, false),
        ...shortWeave(at(p[last]!, 0, y), 0, 1.1),
      ]);
      return [...p.slice(0, last + 1), ...arcs, ...held(p[last]!, 2, false)];
    },
  },
  {
    name: 'two long re-strikes at a stop every 5 mm, as crater fill',
    weave: FAST,
    change: (p) =>
      fill(p, [15, 20, 25, 30, 35, 40, 45], (stop) => [
        ...held(stop, SHORT_STOP_S, false),
        ...shortWeave(stop, 5.5, 1.1),
        ...held(stop, SHORT_STOP_S, false),
        ...shortWeave(stop, 5.5, 1.1),
        ...held(stop, SHORT_STOP_S, false),
      ]),
  },
  {
    name: 'the whole run tapped',
    weave: {},
    change: (p) => p.map((q, i) => ({ ...q, trigger: q.trigger && i % 90 < 55 })),
  },
  {
    name: 'stopped short and the crater filled for 5 s until it runs down over the bead',
    weave: FAST,
    change: (p) => {
      const i = reach(p, 41);
      return [...p.slice(0, i), ...held(at(p[i]!, 0, 40), 5, true), ...held(p[i]!, 2, false)];
    },
  },
  {
    name: 'crater fill held 5 s at four stops of a fast run',
    weave: FAST,
    change: (p) =>
      fill(p, [18, 25, 32, 39], (stop) => [
        ...held(stop, 0.4, false),
        ...held(at(stop, 0, stop.y_mm - 2), 5, true),
        ...held(stop, 0.4, false),
      ]),
  },
  {
    name: 'a restart that never goes back into its crater',
    weave: {},
    change: (p) => {
      const i = reach(p, 26);
      const on = reach(p, 30);
      return [...p.slice(0, i), ...held(p[i]!, COLD_STOP_S, false), ...p.slice(on)];
    },
  },
  {
    name: 'a restart on the cold crater',
    weave: {},
    change: (p) => fill(p, [26], (stop) => held(stop, COLD_STOP_S, false)),
  },
  {
    name: 'cold crater, restarted on it, covered by a second restart from above',
    weave: {},
    change: (p) =>
      weldTwice(
        fill(p, [24], (stop) => held(stop, COLD_STOP_S, false)),
        [29],
        8,
        COLD_STOP_S,
      ),
  },
];
