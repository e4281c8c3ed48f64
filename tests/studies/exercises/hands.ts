/** Hands that an exercise is held against: its own demonstration, decent ones, poor ones. */
import { type HandFaults, handOfAmount, noFaults, POSE_RATE_HZ, type Pose, weaveHand } from '../../../engine/index.ts';
import { PoseClock } from '../../../game/core/bench/pose-clock.ts';
import type { Exercise } from '../../../scoring/index.ts';

type Weave = Exercise['demonstration'];

/** Some of every human failing, a quarter of a beginner's: what `--hand seed:0.25` welds with. */
export const DECENT_AMOUNT = 0.25;
/** All of a beginner's. */
export const POOR_AMOUNT = 1;

/**
 * What a poor hand does besides, one of them each: what goes wrong first with beginners and is plain to see from the next bench. Common
 * practice, no source.
 */
const habits: { name: string; weave?: (w: Weave) => Partial<Weave>; lead_mm?: number; aside_mm?: number }[] = [
  { name: 'arc 3 mm back at the root', lead_mm: -3 },
  { name: 'no wait at the toes', weave: () => ({ pauseA_s: 0, pauseB_s: 0 }) },
  { name: 'climbs half as fast again', weave: (w) => ({ travel_mmps: 1.5 * w.travel_mmps }) },
  { name: 'climbs at 0.6 of the speed', weave: (w) => ({ travel_mmps: 0.6 * w.travel_mmps }) },
  { name: '2.5 mm to one side', aside_mm: 2.5 },
  { name: 'weave half as wide again', weave: (w) => ({ width_mm: 1.5 * w.width_mm }) },
];
/** A straight run has no toes to wait at and no width. */
const forStraight = [0, 2, 3, 4] as const;

/** One hand that welds an exercise. */
export interface Hand {
  kind: 'shown' | 'decent' | 'mouse' | 'poor';
  seed: number;
  /** What a poor hand does besides. */
  habit: string | null;
  poses: Pose[];
}

/** The demonstration, without a fault. */
export function shownHand({ demonstration }: Exercise): Hand {
  return { kind: 'shown', seed: 1, habit: null, poses: [...weaveHand(demonstration, noFaults())] };
}

export function decentHand({ demonstration }: Exercise, seed: number): Hand {
  return {
    kind: 'decent',
    seed,
    habit: null,
    poses: [...weaveHand(demonstration, handOfAmount(seed, DECENT_AMOUNT))],
  };
}

/** A mouse is read this often (USB, full speed: every 8 ms) and to a whole pixel of the joint as it stands on a laptop's screen. */
const MOUSE_MS = 8;
const MOUSE_PX_PER_MM = 5.5;

/** A decent hand on a mouse: its way in readings as the page gets them; tip and angles are held for it. */
export function mouseHand(exercise: Exercise, seed: number): Hand {
  const { poses } = decentHand(exercise, seed);
  const pixel = (mm: number): number => Math.round(mm * MOUSE_PX_PER_MM) / MOUSE_PX_PER_MM;
  const clock = new PoseClock(0);
  const out: Pose[] = [];
  const end_ms = ((poses.length - 1) * 1000) / POSE_RATE_HZ;
  for (let at_ms = 0; at_ms <= end_ms; at_ms += MOUSE_MS) {
    const { u_mm, y_mm, trigger } = poses[Math.floor((at_ms * POSE_RATE_HZ) / 1000)]!;
    clock.add([{ at_ms, u_mm: pixel(u_mm), y_mm: pixel(y_mm), ...exercise.hold, trigger }], at_ms);
    for (let pose = clock.take(); pose !== null; pose = clock.take()) out.push(pose);
  }
  return { kind: 'mouse', seed, habit: null, poses: out };
}

export function poorHand({ demonstration }: Exercise, seed: number): Hand {
  const list = demonstration.pattern === 'straight' ? forStraight.map((k) => habits[k]!) : habits;
  const habit = list[seed % list.length]!;
  const all = handOfAmount(seed, POOR_AMOUNT);
  const faults: HandFaults = { ...all, lead_mm: all.lead_mm + (habit.lead_mm ?? 0) };
  const weave = { ...demonstration, ...habit.weave?.(demonstration) };
  const poses = [...weaveHand(weave, faults)].map((p) => ({ ...p, u_mm: p.u_mm + (habit.aside_mm ?? 0) }));
  return { kind: 'poor', seed, habit: habit.name, poses };
}
