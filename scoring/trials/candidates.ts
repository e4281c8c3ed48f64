import { overfull } from '../advice/metal.ts';
import { exerciseNamed, exercises } from '../exercises/ready.ts';
import type { Exercise } from '../schema/exercise.ts';
import type { Motion } from '../schema/motion.ts';
import { DROPPED } from '../schema/proved.ts';
import type { Advice, Change, Result } from '../schema/result.ts';
import type { Fault } from './fault.ts';
import { backToMiddle, outOfBand, sized } from './sized.ts';
import { inSteps, type Knob } from './steps.ts';

/** More metal than the joint holds, and the fault is of the kind that makes: crown or size. */
export function metalFirst(fault: Fault, exercise: Exercise): { laid_mm2: number; holds_mm2: number } | null {
  const metal = overfull(exercise);
  const over = fault.sense === 'at most' && ['leg', 'throat', 'size over'].includes(fault.measure);
  return over || fault.measure === 'convexity' || fault.measure === 'toe angle' ? metal : null;
}

/**
 * Changes worth trying for a fault, first things first: back to what was asked where the hand was measured to be off, what the advice itself
 * says, back to the middle of the joint, then what the trade would try. One thing each, one step each or as many as the hand was off;
 * the prover takes more steps where one moves the reading and is not enough.
 */
export function candidates(fault: Fault, advice: Advice, result: Result, exercise: Exercise): Change[] {
  const own = advice.change;
  const trade = tradeOrder(fault, result);
  const list =
    metalFirst(fault, exercise) === null ? trade : [inSteps('travel_mmps', 1), inSteps('feed_mpmin', -1), ...trade];
  const middle = backToMiddle(result);
  const ordered = [
    ...outOfBand(result, exercise),
    ...(own === null ? [] : [own]),
    ...(middle === null ? [] : [middle]),
    ...list,
  ].map((c) => sized(c, result, exercise));
  const seen = new Set<string>();
  const distinct = ordered.filter((c) => {
    const key = `${c.what} ${Math.sign(c.by)}`;
    if (c.by === 0 || seen.has(key)) return false;
    seen.add(key);
    return true;
  });
  // A ready exercise that fixes the machine wants the hand mended first.
  if (exercise.settings !== 'fixed' || result.exercise?.ready !== true) return distinct;
  const machine = (c: Change): boolean => c.what === 'volts_V' || c.what === 'feed_mpmin';
  return [...distinct.filter((c) => !machine(c)), ...distinct.filter(machine)];
}

function tradeOrder(fault: Fault, result: Result): Change[] {
  const up = (what: Knob): Change => inSteps(what, 1);
  const down = (what: Knob): Change => inSteps(what, -1);
  const pause = (side: 'A' | 'B'): Knob => (side === 'A' ? 'pauseA_s' : 'pauseB_s');
  const mean = result.bead.mean;
  const shorter: 'A' | 'B' = mean !== null && mean.legA_mm < mean.legB_mm ? 'A' : 'B';
  const longer = shorter === 'A' ? 'B' : 'A';
  const { side } = fault;
  switch (fault.measure) {
    case 'root fusion':
      return [up('lead_mm'), down('tipToWork_mm'), up('feed_mpmin'), up('volts_V'), up('travelAngle_deg')];
    case 'overlap':
    case 'fusion to plate': {
      const at = side ?? shorter;
      return [
        up(pause(at)),
        up('volts_V'),
        up('width_mm'),
        up('travel_mmps'),
        inSteps('centre_mm', at === 'A' ? 1 : -1),
      ];
    }
    case 'undercut':
      return [up(pause(side ?? shorter)), down('volts_V'), down('width_mm')];
    case 'convexity':
    case 'toe angle':
      return [up('width_mm'), up(pause(side ?? shorter)), up('travel_mmps'), up('volts_V'), down('feed_mpmin')];
    case 'edge melted back':
      return [down('pauseB_s'), inSteps('centre_mm', 1), down('volts_V'), down('feed_mpmin'), up('travel_mmps')];
    case 'unequal legs':
      return [
        inSteps('centre_mm', shorter === 'A' ? 1 : -1),
        up(pause(shorter)),
        down(pause(longer)),
        inSteps('workAngle_deg', shorter === 'A' ? -1 : 1),
      ];
    case DROPPED:
      return [up('travel_mmps'), down('feed_mpmin'), up('width_mm'), down('volts_V')];
    case 'leg':
    case 'throat':
    case 'leg short, length':
    case 'throat short, length':
      return fault.sense === 'at least' || fault.measure.includes('short')
        ? [down('travel_mmps'), up('width_mm'), up(pause(shorter)), up('feed_mpmin')]
        : [up('travel_mmps'), down('feed_mpmin'), down('width_mm')];
    case 'size over':
      return [up('travel_mmps'), down('feed_mpmin'), down('width_mm')];
    default:
      return [];
  }
}

/** The exercise that teaches what a fault lacks. */
function teaches(fault: Fault, exercise: Exercise, motion: Motion): string {
  switch (fault.measure) {
    case 'root fusion':
      if ((motion.lead_mm ?? 0) < exercise.target.lead_mm.from) return 'tee-inverted-v';
      // The arc on the front at the climb asked for, and the root still short: it is the settings.
      return climbsAsAsked(exercise, motion) ? 'settings-by-ear' : 'straight-run';
    case 'edge melted back':
      return 'lap-5';
    case DROPPED:
      return 'straight-run';
    case 'size over':
      return 'straight-run';
    default:
      return motion.period_s === null || fault.measure !== 'unequal legs' ? 'two-toe-pause' : 'tee-crescent';
  }
}

function climbsAsAsked({ target }: Exercise, { travel_mmps: climb }: Motion): boolean {
  return climb !== null && climb >= target.travel_mmps.from && climb <= target.travel_mmps.to;
}

/**
 * The drill to go to when no single change mends a fault. Somebody who is at it already goes back to the exercise of the hand before
 * it in teaching order; the first is its own drill.
 */
export function drillFor(fault: Fault, exercise: Exercise, motion: Motion): { name: string; title: string } {
  const wanted = teaches(fault, exercise, motion);
  const at = exercises.findIndex((e) => e.name === wanted);
  const before = exercises
    .slice(0, Math.max(0, at))
    .filter((e) => e.settings !== 'own process')
    .at(-1);
  const drill = (wanted === exercise.name ? before : exerciseNamed(wanted)) ?? exercises[0]!;
  return { name: drill.name, title: drill.title };
}
