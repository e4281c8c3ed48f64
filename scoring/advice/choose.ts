import type { Advice } from '../schema/index.ts';
import { crowned } from './crown.ts';
import type { Facts } from './facts.ts';
import {
  closeCall,
  earlyEitherSide,
  edgeMelted,
  hotTop,
  keepIt,
  oneSided,
  unevenRhythm,
  unexplained,
} from './habits.ts';
import { tooMuchMetal, wrongSize } from './metal.ts';
import { rootShort } from './root.ts';
import { sentences } from './sentences.ts';
import { toeFault } from './toes.ts';

/** A reason for advice: looks at the facts and says one thing, or nothing. */
export type Reasoner = (f: Facts) => Advice | null;

/**
 * The order in which an instructor thinks: is there too much metal for the joint, then the root, then the toes, the face, the size, and
 * only then the habits of the hand.
 */
export const faultOrder: readonly Reasoner[] = [tooMuchMetal, rootShort, toeFault, crowned, edgeMelted, wrongSize];
export const habitOrder: readonly Reasoner[] = [oneSided, hotTop, earlyEitherSide, unevenRhythm];

/** Most pieces of advice kept; the first is the one to act on. */
const MOST = 4;

/** Picks what to change, the one thing first. Never empty for an attempt with a bead over the judged length. */
export function adviceFor(f: Facts): Advice[] {
  const blocked = f.reasons.map((r) => r.code);
  if (blocked.includes('judged-length-not-covered') && !blocked.includes('vertical-down')) return [weldTheLength(f)];
  if (blocked.includes('vertical-down')) return [plain('climb', sentences.climb())];
  if (f.bead.stations.length === 0) return [];
  const said: Advice[] = [];
  const say = (a: Advice | null): void => {
    if (a !== null && said.length < MOST && !said.some((b) => b.code === a.code && b.side === a.side)) said.push(a);
  };
  for (const reason of faultOrder) say(reason(f));
  if (said.length === 0) say(unexplained(f));
  say(keepIt(f));
  if (said.length === 0) say(closeCall(f));
  for (const reason of habitOrder) say(reason(f));
  return said;
}

function weldTheLength(f: Facts): Advice {
  const { from_mm, to_mm } = f.exercise.judged;
  const text = sentences.weldTheLength({ bare_mm: f.bead.bare_mm.length, from_mm, to_mm });
  return { ...plain('weld-the-judged-length', text), y_mm: f.bead.bare_mm[0] ?? null };
}

function plain(code: Advice['code'], text: string): Advice {
  return { code, text, y_mm: null, t_s: null, cycle: null, side: null, change: null };
}
