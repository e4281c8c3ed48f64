import type { JointOptions } from '../../../engine/index.ts';

/** Length of a run-on or run-off tab, mm (see JointOptions.tabs). */
const TAB_MM = 12;

/** Ends of the metal up the joint, mm. */
export function metalEnds(joint: JointOptions): { low_mm: number; high_mm: number } {
  const tab = joint.tabs ? TAB_MM : 0;
  return { low_mm: -tab, high_mm: joint.length_mm + tab };
}
