import type { HandCode } from '../schema/result.ts';
import { arcTakenUp, craterLeft, restartOverfilled } from './ends.ts';
import { broken, type Facts, runsTheLength } from './facts.ts';
import { type Found, NOWHERE, type Suspect } from './found.ts';
import { closeCall, edgeMelted, hotTop, keepIt, oneSided, unexplained } from './habits.ts';
import { handFault } from './hand.ts';
import { wrongSize } from './metal.ts';
import { besideShown, nearlyOff, type Off, offFromAsked } from './off.ts';
import { rootJustShort, straightArcBack } from './root.ts';
import { worstSeen } from './seen.ts';
import { settingsFault } from './settings.ts';
import { crownedStraight, meltedOpen } from './toes.ts';

/** Most pieces of advice kept; the first is the one to act on. */
const MOST = 4;
/** Ways the hand was off that are spoken of, at most. */
const MOST_OFF = 3;

/**
 * Picks what to change, the one thing first. An instructor's order: what kept the attempt from being one; the arc lost and taken up again; the
 * hand where it was not as asked, the farthest off first; the machine, only where the hand was as asked and the fault runs the length; what is
 * seen, where nothing accounts for it. Empty where there is no bead, and where all of it holds but something else keeps it from a verdict.
 */
export function adviceFor(f: Facts): Found[] {
  const first = noAttempt(f);
  if (first !== null) return [first];
  const said: Found[] = [];
  const say = (a: Found | null): void => {
    if (a !== null && said.length < MOST && said.every((b) => goesWith(a, b))) said.push(a);
  };
  say(arcTakenUp(f));
  const hand = besideShown(f.curve, f.exercise);
  const off = offFromAsked(hand);
  for (const o of off.slice(0, MOST_OFF)) say(handFault(f, o));
  if (said.length === 0) for (const a of machineOr(f, nearlyOff(hand))) say(a);
  if (said.length === 0) say(uncovered(f));
  if (f.bead.stations.length === 0) return said;
  for (const reason of [restartOverfilled, meltedOpen, craterLeft, edgeMelted]) say(reason(f));
  if (said.length === 0) for (const reason of [crownedStraight, wrongSize, rootJustShort]) say(reason(f));
  if (said.length === 0) say(unexplained(f));
  if (said.length === 0) say(keepIt(f));
  if (said.length === 0) say(closeCall(f));
  for (const reason of [oneSided, hotTop]) say(reason(f));
  return seenOnce(said);
}

/** What was seen stands beside the first way the hand was off; the next ones that would say the very same leave it out. */
function seenOnce(said: readonly Found[]): Found[] {
  const before = new Set<string>();
  return said.map((found) => {
    if (!isOfHand(found) || found.data.seen === null) return found;
    const seen = JSON.stringify(found.data.seen);
    if (before.has(seen)) return { ...found, data: { ...found.data, seen: null } };
    before.add(seen);
    return found;
  });
}

/** Says how the hand was against what was asked. */
function isOfHand(found: Found): found is Extract<Found, { code: HandCode }> {
  return 'stretch' in found.data;
}

/** Went down, or about, or over it twice: there is nothing else to talk about. */
function noAttempt(f: Facts): Found | null {
  const blocked = f.reasons.map((r) => r.code);
  if (blocked.includes('vertical-down')) return { code: 'climb', data: {}, ...NOWHERE };
  if (blocked.includes('no-climb')) return { code: 'no-climb', data: {}, ...NOWHERE };
  if (blocked.includes('second-pass')) return { code: 'one-pass', data: { twice_mm: f.weldedTwice_mm }, ...NOWHERE };
  return null;
}

/** The bead is not there, or not all of it, and neither hand nor machine accounts for it. */
function uncovered(f: Facts): Found | null {
  const blocked = f.reasons.map((r) => r.code);
  const { bare_mm } = f.bead;
  if (blocked.includes('dropped-out')) {
    const { dripped_g, laid_mm2, holds_mm2 } = f.figures;
    return { code: 'metal-dropped', data: { dripped_g: dripped_g ?? 0, laid_mm2, holds_mm2 }, ...NOWHERE };
  }
  if (!blocked.includes('judged-length-not-covered')) return null;
  const data = { bare_mm: bare_mm.length, ...f.exercise.judged };
  return { code: 'weld-the-judged-length', data, ...NOWHERE, y_mm: bare_mm[0] ?? null };
}

/** The machine, where the hand was as asked; both, where the hand was off by a little and either could be behind what is seen. */
function machineOr(f: Facts, nearly: readonly Off[]): Found[] {
  const straight = straightArcBack(f);
  if (straight !== null) return [straight];
  const machine = settingsFault(f);
  const seen = worstSeen(f);
  const [near] = nearly;
  if (seen === null || near === undefined || !matters(f)) return machine === null ? [] : [machine];
  const other = machine?.code ?? runnerUp(f, nearly);
  if (other === null) return [];
  const y = seen.what === 'line' ? seen.y_mm : null;
  const data = { seen, one: near.code, other };
  return [{ code: 'either', data, ...NOWHERE, y_mm: y }, ...(machine === null ? [] : [machine])];
}

/** Something is surely outside, or in doubt over most of the length. */
function matters(f: Facts): boolean {
  return f.reasons.length > 0 || f.lines.some((l) => l.verdict === 'outside' || runsTheLength(f, l));
}

/** The next farthest off, to be named beside the first. */
function runnerUp(f: Facts, [first, ...rest]: readonly Off[]): Suspect | null {
  return rest.find((o) => o.code !== first?.code)?.code ?? (broken(f, 'root fusion') === null ? null : 'cold-root');
}

/** Says that metal was too cold, or too hot. */
const COLD: readonly Found['code'][] = ['cold-root', 'cold-toe', 'root-just-short', 'too-little-wire'];
const HOT: readonly Found['code'][] = [
  'too-hot',
  'too-much-metal',
  'metal-dropped',
  'edge-melted-back',
  'hot-top',
  'toe-melted-open',
];

/** Two pieces of advice that can stand together: not the same again, not the opposite, not cold beside hot. */
function goesWith(a: Found, b: Found): boolean {
  if (a.code === b.code && a.side === b.side) return false;
  if (a.change !== null && b.change !== null && a.change.what === b.change.what) return false;
  const clash = (x: Found, y: Found): boolean => COLD.includes(x.code) && HOT.includes(y.code);
  return !clash(a, b) && !clash(b, a);
}
