import { type Attempt, attemptOf, judgeAttempt, type Result } from '../../../scoring/index.ts';
import { reStruck, restartOnCrater, tapped } from '../../scoring/measures/technique.ts';
import { type Weld, weld } from '../../scoring/welds.ts';

/** A real weld behind the pictures, and what it came to. */
export interface Welded {
  attempt: Attempt;
  result: Result;
}

const WELDS = {
  /** The plain weave, stopped 13 mm short of the top. */
  weave: { joint: { length_mm: 60 }, weave: { length_mm: 44 } },
  /** The same, crater filled. */
  filled: { joint: { length_mm: 60 }, weave: { length_mm: 44 }, hand: reStruck(2) },
  cold: { joint: { length_mm: 45 }, process: { feed_mpmin: 3.5, volts_V: 15 }, weave: { pattern: 'straight' } },
  hot: { joint: { length_mm: 45, startTemp_C: 200 }, process: { volts_V: 21 } },
  lap: { joint: { kind: 'lap', length_mm: 45 }, process: { volts_V: 19.5, feed_mpmin: 5.5 } },
  restart: { hand: restartOnCrater(30) },
  climbedOff: { joint: { length_mm: 45 }, weave: { shelf_s: 0, start_mm: 6, length_mm: 34 } },
  shelf: { joint: { length_mm: 45 }, weave: { shelf_s: 1.2, start_mm: 6, length_mm: 34 } },
  uneven: { faults: { tremor_mm: 0.5, timing: 0.25 } },
  /** The plain weave to the top. */
  whole: {},
  tapped: { joint: { length_mm: 45 }, hand: tapped(0.6, 0.5) },
} as const satisfies Record<string, Weld>;

export type WeldName = keyof typeof WELDS;
export type Welds = Record<WeldName, Welded>;

/** Welds them all with the robot hand. */
export function weldAll(): Welds {
  const made = Object.entries(WELDS).map(([name, w]) => {
    const recording = weld(w);
    const attempt = attemptOf(recording);
    return [name, { attempt, result: judgeAttempt(recording, attempt) }] as const;
  });
  return Object.fromEntries(made) as Welds;
}
