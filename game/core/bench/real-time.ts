import type { Pose } from '../../../engine/index.ts';
import type { Clock } from '../ports.ts';

/** Falling this far behind real time ends the attempt: time at the bench is never slowed. */
export const TOO_SLOW_S = 0.25;
/** A slow page hands over its readings in bundles, and a bundle takes a moment to weld: only a lag that lasts this long counts. */
const LASTING_MS = 300;
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

/** Welds poses as their time comes. Returns a function that stops it. */
export function runRealTime(source: PoseSource, hooks: RealTimeHooks, clock: Clock): () => void {
  let callOff: () => void;
  let late_ms: number | null = null;
  const spell = (): void => {
    const until = clock.now_ms() + SPELL_MS;
    let pose = source.take(clock.now_ms());
    while (pose) {
      hooks.weld(pose);
      if (clock.now_ms() >= until) break;
      pose = source.take(clock.now_ms());
    }
    const now = clock.now_ms();
    const lag_s = source.lag_ms(now) / 1000;
    late_ms = lag_s > TOO_SLOW_S ? (late_ms ?? now) : null;
    if (late_ms !== null && now - late_ms > LASTING_MS) {
      hooks.tooSlow(lag_s);
      return;
    }
    if (!hooks.spell()) callOff = clock.after(pose ? 0 : IDLE_MS, spell);
  };
  callOff = clock.after(0, spell);
  return () => callOff();
}
