/** How much work a recording will be, before it is welded: a file can ask for hours of it in a few kilobytes. */
import { ticksFor } from '../cold-piece.ts';
import { buildJoint } from '../grid/joint.ts';
import { BLOCK } from '../grid/tiles.ts';
import { MARGIN_MM } from '../heat/active-region.ts';
import { requireOptions } from '../input/options.ts';
import { POSE_RATE_HZ } from '../input/pose.ts';
import { calibration } from '../physics/calibration.ts';
import { steelTable } from '../physics/steel.ts';
import type { Recording } from './format.ts';
import { QUANTUM } from './recording.ts';

/** A puddle reaches about this far below the arc, mm. */
const PUDDLE_MM = 8;
/** How long a length stays in fine cells after the arc has left it, s. */
const HELD_S = 8;
/**
 * A core of today, measured on ten welds of two to twenty millimetre plates in cells of 0.5 to 1 mm: updates a second, and what a pose with the arc on
 * takes besides (footprint, settling).
 */
const UPDATES_PER_S = 2.2e8;
const POSE_S = 0.0004;

/** The work of a recording, reckoned. */
export interface Work {
  /** Updates of fine cells: cells times ticks. */
  updates: number;
  /** What that takes on a core of today, s. Within a factor of three; a slower machine takes longer. */
  core_s: number;
}

/**
 * Reckons the work of welding a recording from its joint, its cells and where its arc goes; takes some milliseconds.
 * @throws EngineError when the settings cannot be welded with
 */
export function workOf({ simulation, poses }: Pick<Recording, 'simulation' | 'poses'>): Work {
  requireOptions(simulation);
  const plan = buildJoint(simulation.joint, simulation.cell_mm);
  const ticks = ticksFor(plan, steelTable(calibration().stirring));
  const reach = plan.ny * plan.dy;
  const seconds = burning(poses);
  let slices = 0;
  let on = 0;
  for (const down of poses.trigger) on += down;
  for (let s = 0; s < seconds.length; s++) {
    let low = Number.POSITIVE_INFINITY;
    let high = Number.NEGATIVE_INFINITY;
    for (let before = Math.max(0, s - HELD_S); before <= s; before++) {
      low = Math.min(low, seconds[before]!.low);
      high = Math.max(high, seconds[before]!.high);
    }
    if (low > high) continue;
    const fine_mm = Math.min(reach, high - low + 2 * MARGIN_MM + PUDDLE_MM);
    slices += POSE_RATE_HZ * ticks * Math.min(plan.ny, Math.ceil(fine_mm / plan.dy) + BLOCK);
  }
  const updates = slices * plan.rods.count;
  return { updates, core_s: updates / UPDATES_PER_S + on * POSE_S };
}

/** Lowest and highest place of the arc in each second, mm; a second without an arc has none. */
function burning({ y, trigger }: Recording['poses']): { low: number; high: number }[] {
  const seconds = Array.from({ length: Math.ceil(y.length / POSE_RATE_HZ) }, () => ({
    low: Number.POSITIVE_INFINITY,
    high: Number.NEGATIVE_INFINITY,
  }));
  for (let n = 0; n < y.length; n++) {
    if (trigger[n] !== 1) continue;
    const second = seconds[Math.floor(n / POSE_RATE_HZ)]!;
    const at = y[n]! * QUANTUM.y_mm;
    second.low = Math.min(second.low, at);
    second.high = Math.max(second.high, at);
  }
  return seconds;
}
