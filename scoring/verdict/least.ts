/**
 * The least an exercise must ask for a verdict to mean anything. An exercise in a file can be anybody's: without these, half a millimetre of
 * good bead at a size of one would be "within".
 */
import { judgedOf } from '../exercises/workshop.ts';
import type { Exercise } from '../schema/exercise.ts';
import type { FoundReason } from './found.ts';

/** Share of what a ready exercise judges of a joint this long. */
const JUDGED_SHARE = 0.7;

/**
 * Least size of a single-pass fillet by the thicker plate: 3 mm to 6 mm, 5 mm to 12 mm, 6 mm beyond (AWS D1.1 table of minimum fillet
 * sizes, from memory), but never more than three quarters of the thinner plate. mm
 */
function leastSize_mm({ plateA_mm, plateB_mm }: Exercise['joint']): number {
  const thicker = Math.max(plateA_mm, plateB_mm);
  const by = thicker <= 6 ? 3 : thicker <= 12 ? 5 : 6;
  return Math.min(by, 0.75 * Math.min(plateA_mm, plateB_mm));
}

/** What of an exercise is under its least; empty for one that shows something. */
export function tooLittle(exercise: Exercise): FoundReason[] {
  const { joint, asked, judged, cuts_mm } = exercise;
  const found: FoundReason[] = [];
  const say = (what: 'judged length' | 'size' | 'cuts', is: number, least: number): void => {
    if (is < least) found.push({ code: 'exercise-too-little', data: { what, is, least } });
  };
  const usual = judgedOf(joint.length_mm);
  say('judged length', judged.to_mm - judged.from_mm, JUDGED_SHARE * (usual.to_mm - usual.from_mm));
  const leg = asked.kind === 'throat' ? asked.size_mm * Math.SQRT2 : asked.size_mm;
  say('size', leg, leastSize_mm(joint));
  say('cuts', cuts_mm.filter((y) => y >= judged.from_mm && y <= judged.to_mm).length, 1);
  return found;
}
