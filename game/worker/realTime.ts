import type { Pose } from '../../engine/index.ts';

/** Falling this far behind real time ends the attempt: time at the bench is never slowed. */
export const TOO_SLOW_S = 0.25;
/** Longest spell of work before messages are looked at again. */
const SPELL_MS = 14;
/** Pause between spells when up to date. */
const IDLE_MS = 4;

export interface PoseSource {
  take(now_ms: number): Pose | null;
  lag_ms(now_ms: number): number;
}

export interface RealTimeHooks {
  weld(pose: Pose): void;
  /** After each spell; returns true to stop. */
  spell(): boolean;
  tooSlow(lag_s: number): void;
}

/** Milliseconds since the epoch on a clock that never jumps; page and Worker share it. */
export function now_ms(): number {
  return performance.timeOrigin + performance.now();
}

/** Welds poses as their time comes. Returns a function that stops it. */
export function runRealTime(source: PoseSource, hooks: RealTimeHooks): () => void {
  let timer: ReturnType<typeof setTimeout> | undefined;
  let worst_ms = 0;
  const spell = (): void => {
    const until = now_ms() + SPELL_MS;
    let pose = source.take(now_ms());
    while (pose) {
      hooks.weld(pose);
      if (now_ms() >= until) break;
      pose = source.take(now_ms());
    }
    worst_ms = source.lag_ms(now_ms());
    if (worst_ms > TOO_SLOW_S * 1000) {
      hooks.tooSlow(worst_ms / 1000);
      return;
    }
    if (!hooks.spell()) timer = setTimeout(spell, pose ? 0 : IDLE_MS);
  };
  timer = setTimeout(spell, 0);
  return () => clearTimeout(timer);
}
