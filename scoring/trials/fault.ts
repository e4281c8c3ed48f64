import type { LineMeasure } from '../schema/profile.ts';
import { DROPPED } from '../schema/proved.ts';
import type { Advice, Line, ReasonCode, Result } from '../schema/result.ts';
import { HEAVY_DROP } from '../verdict/reasons.ts';

/** What a piece of advice is about: a line that is not within, or metal that dropped out. */
export interface Fault {
  measure: LineMeasure | typeof DROPPED;
  side: 'A' | 'B' | null;
  unit: string;
  sense: 'at most' | 'at least';
  limit: number;
  plusMinus: number;
  reading: number;
  verdict: Line['verdict'];
  y_mm: number;
  /** Tells lines of one measure under several rules apart. */
  rule: string;
}

const TOE: readonly LineMeasure[] = ['overlap', 'fusion to plate', 'toe angle'];
const SIZE: readonly LineMeasure[] = ['leg', 'throat', 'leg short, length', 'throat short, length'];
const CROWN: readonly LineMeasure[] = ['convexity', 'toe angle'];

/** Measures an advice may speak of, most likely first. Empty: it speaks of a habit or of nothing. */
function measuresOf(advice: Advice): readonly LineMeasure[] {
  switch (advice.code) {
    case 'arc-back-on-puddle':
    case 'tip-too-far':
    case 'cold-root':
    case 'root-just-short':
      return ['root fusion'];
    case 'toe-left-early':
      return [...TOE, 'undercut', ...SIZE, 'convexity', 'unequal legs'];
    case 'toe-not-reached':
    case 'cold-toe':
      return TOE;
    case 'toe-melted-open':
      return ['undercut'];
    case 'crowned-cold':
    case 'crowned-narrow':
    case 'crowned-slow':
      return CROWN;
    case 'too-much-metal':
      return [...CROWN, 'size over', ...SIZE];
    case 'undersize':
      return SIZE;
    case 'oversize':
      return ['size over', ...SIZE];
    case 'edge-melted-back':
      return ['edge melted back'];
    case 'one-sided':
      return ['unequal legs'];
    default:
      return [];
  }
}

/** The line of this result an advice is about; null where every line it could mean holds. */
export function faultOf(advice: Advice, result: Result): Fault | null {
  if (advice.code === 'metal-dropped') return dropped(result);
  if (advice.code === 'see-the-cut') return asFault(result.lines.find((l) => l.verdict === 'outside'));
  if (advice.code === 'measure-a-real-one')
    return asFault(result.lines.find((l) => l.verdict === 'too close to call' && past(l)));
  const named = measuresOf(advice);
  for (const wanted of ['outside', 'too close to call'] as const) {
    for (const measure of named) {
      const line = result.lines.find(
        (l) =>
          l.measure === measure &&
          l.verdict === wanted &&
          (l.side === null || advice.side === null || l.side === advice.side) &&
          rightWay(advice, l),
      );
      if (line !== undefined) return asFault(line);
    }
  }
  return null;
}

/** Legs and throats have lines both ways: short is one fault, over is another. */
function rightWay(advice: Advice, l: Line): boolean {
  if (l.measure !== 'leg' && l.measure !== 'throat') return true;
  const over = advice.code === 'too-much-metal' || advice.code === 'oversize';
  return l.sense === (over ? 'at most' : 'at least');
}

/** The reading itself has passed the limit. One that has not is a doubt to measure, not a fault to mend. */
function past(l: Line): boolean {
  return l.sense === 'at most' ? l.reading > l.limit : l.reading < l.limit;
}

function asFault(line: Line | undefined): Fault | null {
  if (line === undefined) return null;
  const { measure, side, unit, sense, limit, plusMinus, reading, verdict, y_mm, rule } = line;
  return { measure, side, unit, sense, limit, plusMinus, reading, verdict, y_mm, rule };
}

function dropped(result: Result): Fault | null {
  if (!result.reasons.some((r) => r.code === 'dropped-out')) return null;
  const { dripped_g, spatter_g, deposited_g } = result.process;
  if (dripped_g === null || spatter_g === null || deposited_g === null) return null;
  return {
    measure: DROPPED,
    side: null,
    unit: 'g',
    sense: 'at most',
    limit: Math.round(HEAVY_DROP * (dripped_g + spatter_g + deposited_g) * 1000) / 1000,
    plusMinus: 0,
    reading: dripped_g,
    verdict: 'outside',
    y_mm: result.bead.mean?.y_mm ?? 0,
    rule: 'dropped-out',
  };
}

/** The same line in another result; null where it is not read there. */
export function sameLine(fault: Fault, result: Result): Fault | null {
  if (fault.measure === DROPPED) {
    const still = dropped(result);
    if (still !== null) return still;
    // Nothing is read of a weld whose accounts are open, and so it mends nothing.
    const { dripped_g } = result.process;
    return dripped_g === null ? null : { ...fault, reading: dripped_g, verdict: 'within' };
  }
  return asFault(result.lines.find((l) => isSame(l, fault)));
}

type Named = Pick<Fault, 'measure' | 'side' | 'rule'>;

function isSame(a: Named, b: Named): boolean {
  return a.measure === b.measure && a.side === b.side && a.rule === b.rule;
}

/** Reasons that speak of the file and not of the weld; a re-run with other settings has them by right. */
const OF_THE_FILE: readonly ReasonCode[] = [
  'settings-edited',
  'recording-edited',
  'header-edited',
  'state-differs',
  'exercise-edited',
  'machine-too-slow',
];

/**
 * What a change spoiled: lines that are outside now and were not, lines outside before and worse by more than their plus-minus, reasons
 * against judging that were not there.
 */
export function spoiled(before: Result, after: Result, fault: Fault): { line: Line | null; text: string }[] {
  const out: { line: Line | null; text: string }[] = [];
  for (const l of after.lines) {
    if (l.verdict !== 'outside' || isSame(l, fault)) continue;
    const was = before.lines.find((b) => isSame(b, l));
    if (was === undefined || was.verdict !== 'outside') out.push({ line: l, text: 'outside' });
    else if (worseBy(was, l) > l.plusMinus) out.push({ line: l, text: 'worse' });
  }
  for (const r of after.reasons) {
    if (OF_THE_FILE.includes(r.code) || before.reasons.some((b) => b.code === r.code)) continue;
    out.push({ line: null, text: r.text });
  }
  return out;
}

function worseBy(was: Line, is: Line): number {
  const moved = is.reading - is.limit - (was.reading - was.limit);
  return is.sense === 'at most' ? moved : -moved;
}

/** How far a reading has to go to be within for sure, in its own unit; 0 or less: it is. */
export function missing(f: Fault): number {
  const past = f.sense === 'at most' ? f.reading - f.limit : f.limit - f.reading;
  return past + f.plusMinus;
}
