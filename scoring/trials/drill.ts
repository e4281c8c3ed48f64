import { exerciseNamed, exercises } from '../exercises/ready.ts';
import type { Exercise } from '../schema/exercise.ts';
import type { Motion } from '../schema/motion.ts';
import { DROPPED, type Fault } from './fault.ts';

/** The exercise that teaches what a fault lacks. */
function teaches(fault: Fault, exercise: Exercise, motion: Motion): string {
  switch (fault.measure) {
    case 'root fusion':
      // The arc on the front and the root still short: it is the settings.
      return (motion.lead_mm ?? 0) < exercise.target.lead_mm.from ? 'tee-inverted-v' : 'settings-by-ear';
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

/**
 * The drill to go to when no single change mends a fault. Somebody who is at it already goes one exercise back in teaching order; the
 * first exercise is its own drill.
 */
export function drillFor(fault: Fault, exercise: Exercise, motion: Motion): { name: string; title: string } {
  const wanted = teaches(fault, exercise, motion);
  const at = exercises.findIndex((e) => e.name === wanted);
  const drill = wanted === exercise.name ? exercises[Math.max(0, at - 1)]! : (exerciseNamed(wanted) ?? exercises[0]!);
  return { name: drill.name, title: drill.title };
}
