import { crowned } from './crown.ts';
import { craterLeft, restartMissed, restartOverfilled } from './ends.ts';
import type { Facts } from './facts.ts';
import { type Found, NOWHERE } from './found.ts';
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
import { toeFault } from './toes.ts';

/** A reason for advice: looks at the facts and says one thing, or nothing. */
type Reasoner = (f: Facts) => Found | null;

/**
 * The order in which an instructor thinks: what only a restart made is the restart's; then, is there too much metal for the joint, then the
 * root, then the toes, the face, the size, and only then the habits of the hand.
 */
const faultOrder: readonly Reasoner[] = [
  restartMissed,
  restartOverfilled,
  tooMuchMetal,
  rootShort,
  toeFault,
  craterLeft,
  crowned,
  edgeMelted,
  wrongSize,
];
const habitOrder: readonly Reasoner[] = [oneSided, hotTop, earlyEitherSide, unevenRhythm];

/** Most pieces of advice kept; the first is the one to act on. */
const MOST = 4;

/** Picks what to change, the one thing first. Never empty for an attempt with a bead over the judged length. */
export function adviceFor(f: Facts): Found[] {
  const first = blockedBy(f);
  if (first !== null) return [first];
  if (f.bead.stations.length === 0) return [];
  const said: Found[] = [];
  const say = (a: Found | null): void => {
    if (a !== null && said.length < MOST && !said.some((b) => b.code === a.code && b.side === a.side)) said.push(a);
  };
  const faults = faultOrder.map((reason) => reason(f)).filter((a): a is Found => a !== null);
  for (const a of faults) if (!inDoubt(a)) say(a);
  for (const a of faults) if (inDoubt(a)) say(a);
  if (said.length === 0) say(unexplained(f));
  say(keepIt(f));
  if (said.length === 0) say(closeCall(f));
  for (const reason of habitOrder) say(reason(f));
  return said;
}

/** Speaks of a reading that is too close to call: faults that are sure go first. */
function inDoubt(a: Found): boolean {
  return a.code === 'root-just-short';
}

/** What kept the attempt from a verdict, where that is the one thing to talk about. */
function blockedBy(f: Facts): Found | null {
  const blocked = f.reasons.map((r) => r.code);
  if (blocked.includes('vertical-down')) return { code: 'climb', data: {}, ...NOWHERE };
  if (blocked.includes('no-climb')) return { code: 'no-climb', data: {}, ...NOWHERE };
  if (blocked.includes('second-pass')) return { code: 'one-pass', data: { twice_mm: f.weldedTwice_mm }, ...NOWHERE };
  if (blocked.includes('judged-length-not-covered')) return weldTheLength(f);
  if (!blocked.includes('dropped-out')) return null;
  const { dripped_g, laid_mm2, holds_mm2 } = f.figures;
  return { code: 'metal-dropped', data: { dripped_g: dripped_g ?? 0, laid_mm2, holds_mm2 }, ...NOWHERE };
}

function weldTheLength(f: Facts): Found {
  const { bare_mm } = f.bead;
  const data = { bare_mm: bare_mm.length, ...f.exercise.judged };
  return { code: 'weld-the-judged-length', data, ...NOWHERE, y_mm: bare_mm[0] ?? null };
}
