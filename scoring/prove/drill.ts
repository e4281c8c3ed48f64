import { exerciseNamed, exercises } from '../exercises/index.ts';
import type { Exercise } from '../schema/index.ts';
import { DROPPED, type Fault } from './fault.ts';

/** The exercise that teaches what a fault lacks. */
function teaches(fault: Fault, straight: boolean): string {
  switch (fault.measure) {
    case 'root fusion':
      return 'tee-inverted-v';
    case 'edge melted back':
      return 'lap-5';
    case DROPPED:
      return 'straight-run';
    case 'size over':
      return 'straight-run';
    default:
      return straight || fault.measure !== 'unequal legs' ? 'two-toe-pause' : 'tee-crescent';
  }
}

/**
 * The drill to go to when no single change mends a fault. Somebody who is at it already goes one exercise back in teaching order; the
 * first exercise is its own drill.
 */
export function drillFor(fault: Fault, exercise: Exercise, straight: boolean): { name: string; title: string } {
  const wanted = teaches(fault, straight);
  const at = exercises.findIndex((e) => e.name === wanted);
  const drill = wanted === exercise.name ? exercises[Math.max(0, at - 1)]! : (exerciseNamed(wanted) ?? exercises[0]!);
  return { name: drill.name, title: drill.title };
}
