/** Whether a first sentence names the cause of an attempt. */

import type { AdviceCode, Result } from '../../../scoring/index.ts';
import { handCodes, settingsCodes } from '../../../scoring/schema/result.ts';
import { suspectSaid } from '../../../scoring/words/machine.ts';
import type { Cause } from './causes.ts';

/** The cause a sentence names, in the set's words. Codes that are not here name no cause. */
const NAMES: Partial<Record<AdviceCode, readonly Cause[]>> = {
  climb: ['downhill'],
  'let-go-early': ['gives up early'],
  'arc-lost': ['arc lost'],
  'restart-not-back': ['restart not taken back'],
  'restart-on-crater': ['restart on the cold crater'],
  'arc-back-on-puddle': ['arc back in the puddle'],
  'tip-too-far': ['tip too far'],
  'pushed-far': ['pushed too far'],
  dragged: ['dragged'],
  'work-angle-off': ['work angle off'],
  'too-narrow': ['too narrow'],
  'too-wide': ['too wide'],
  'to-one-side': ['to one side'],
  drifted: ['drifting to one side'],
  'toe-skipped': ['a toe skipped'],
  'toes-left-early': ['no wait at either toe'],
  'waited-long': ['waits too long'],
  'beat-slow': ['beat too slow'],
  'beat-fast': ['beat too fast'],
  'climbed-fast': ['climbs too fast'],
  'climbed-slowly': ['climbs too slowly'],
  stalled: ['stalls'],
  jumped: ['jumps'],
  slipped: ['slips'],
  'fits-and-starts': ['fits and starts'],
  'uneven-rhythm': ['uneven beat'],
  'uneven-waits': ['uneven beat'],
  shaky: ['shaky'],
  'cold-root': ['settings too cold'],
  'cold-toe': ['settings too cold'],
  'too-hot': ['settings too hot'],
  'too-much-metal': ['too much wire'],
  'too-little-wire': ['too little wire'],
  'gap-takes-metal': ['a gap not allowed for'],
};

/** Sentences that say what was seen and leave the cause open. */
const OPEN: readonly AdviceCode[] = ['either', 'see-the-cut', 'measure-a-real-one', 'root-just-short'];

const suspects = [...handCodes, ...settingsCodes];

export interface Grade {
  /** What the first sentence is about; null: nothing was said. */
  code: AdviceCode | null;
  names: readonly Cause[];
  grade: 'right' | 'right among two' | 'open' | 'wrong';
}

/** The causes a code names. */
export function nameOf(code: AdviceCode, side: 'A' | 'B' | null): readonly Cause[] {
  if (code === 'toe-left-early') return [side === 'A' ? 'no wait at the right toe' : 'no wait at the left toe'];
  return NAMES[code] ?? [];
}

export function gradeOf(result: Result, truth: readonly Cause[]): Grade {
  const [first] = result.advice;
  if (first === undefined) return { code: null, names: [], grade: 'open' };
  const { code } = first;
  const names = nameOf(code, first.side);
  if (names.some((n) => truth.includes(n))) return { code, names, grade: 'right' };
  if (code === 'either') {
    const offered = suspects.filter((s) => first.text.includes(suspectSaid(s))).flatMap((s) => NAMES[s] ?? []);
    return { code, names: offered, grade: offered.some((n) => truth.includes(n)) ? 'right among two' : 'open' };
  }
  return { code, names, grade: OPEN.includes(code) ? 'open' : 'wrong' };
}
