import type { Trace } from '../../attempt/trace.ts';
import type { ToeVisit } from '../../schema/motion.ts';
import { milli } from '../precision.ts';
import { quantile } from '../statistics.ts';
import type { Turn } from './swings.ts';

/** The aim is at the toe while it is this near its turning point: a share of the swing, and at least so much, mm. */
const NEAR_SHARE = 0.1;
const NEAR_MM = 0.4;
/**
 * A toe is filled when the puddle has wetted this far beyond the wire, along the plate: 1.35 mm across the view, within the 1 to 1.5 mm
 * a wire stops inside the finished toe (practice, no source). Without a pause the model's puddle gets to 1.7, with one to 2.1 to 2.9.
 */
const WETTED_BEYOND_MM = 1.9;
/** ... and metal, not a film, stands 1 mm beyond the wire: at least this much, mm, straight from the wetted edge inward. */
const STANDING_MM = 0.1;
/** Wetted this far beyond the wire, the edge may be a film: inside it the toe is full. */
const WELL_BEYOND_MM = 2.4;

/**
 * **Pause at the toe**: time the aim stays within a tenth of the swing of its turning point, less the time a hand crossing at its own
 * speed without stopping would spend there; so a sharp turn reads 0 and a soft one a little. s. **Reach**: median aim over that time,
 * across the welder's view from the root. mm. **Filled when left**: see the two constants above; read when the aim leaves.
 * Definitions are the project's; common practice is behind them, no source.
 */
export function toeVisits(trace: Trace, turns: readonly Turn[], cycleOf: (turn: number) => number): ToeVisit[] {
  const u = trace.column('aimU_mm');
  const t = trace.column('t_s');
  const y = trace.column('aimY_mm');
  const visits: ToeVisit[] = [];
  for (let k = 1; k < turns.length - 1; k++) {
    const turn = turns[k]!;
    const before = turns[k - 1]!.at;
    const after = turns[k + 1]!.at;
    const outer = u[turn.at]!;
    const swing = (Math.abs(outer - u[before]!) + Math.abs(outer - u[after]!)) / 2;
    const near = Math.max(NEAR_MM, NEAR_SHARE * swing);
    let from = turn.at;
    let to = turn.at;
    while (from > before && Math.abs(u[from - 1]! - outer) <= near) from--;
    while (to < after && Math.abs(u[to + 1]! - outer) <= near) to++;
    const speed = (crossingSpeed(u, t, before, turn.at) + crossingSpeed(u, t, turn.at, after)) / 2;
    const stay = t[to]! - t[from]!;
    const aims: number[] = [];
    for (let i = from; i <= to; i++) aims.push(u[i]!);
    const reach = quantile(aims, 0.5) * (turn.toe === 'A' ? 1 : -1);
    visits.push({
      cycle: cycleOf(k),
      toe: turn.toe,
      from_s: milli(t[from]!),
      to_s: milli(t[to]!),
      y_mm: milli(y[turn.at]!),
      pause_s: milli(Math.max(0, speed > 0 ? stay - (2 * near) / speed : stay)),
      reach_mm: milli(reach),
      filled: filledWhenLeft(trace, turn.toe, to, reach),
    });
  }
  return visits;
}

/** Speed over the middle half of one swing, mm/s. */
function crossingSpeed(u: Float64Array, t: Float64Array, from: number, to: number): number {
  const start = u[from]!;
  const way = u[to]! - start;
  let enter = -1;
  let leave = -1;
  for (let i = from; i <= to; i++) {
    const share = (u[i]! - start) / way;
    if (enter < 0 && share >= 0.25) enter = i;
    if (share >= 0.75) {
      leave = i;
      break;
    }
  }
  if (enter < 0 || leave <= enter) return 0;
  return Math.abs(u[leave]! - u[enter]!) / (t[leave]! - t[enter]!);
}

function filledWhenLeft(trace: Trace, toe: 'A' | 'B', at: number, reach_mm: number): boolean | null {
  if (trace.arcOn[at] === 0) return null;
  const wet = trace.column(toe === 'A' ? 'wetA_mm' : 'wetB_mm')[at]!;
  const fill = trace.column(toe === 'A' ? 'fillA_mm' : 'fillB_mm')[at]!;
  if (Number.isNaN(wet) || Number.isNaN(fill)) return false;
  const beyond = wet - Math.SQRT2 * Math.max(0, reach_mm);
  return beyond >= WELL_BEYOND_MM || (beyond >= WETTED_BEYOND_MM && fill * (beyond - 1) >= STANDING_MM);
}
