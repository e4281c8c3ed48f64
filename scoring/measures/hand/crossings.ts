import type { Span, Trace } from '../../attempt/trace.ts';
import type { Band } from '../../schema/leeway.ts';
import type { Crossing } from '../../schema/motion.ts';
import { milli } from '../precision.ts';
import type { Turn } from './swings.ts';

/**
 * **Arc on the front of the puddle**: at each crossing of the root, the arc foot's height less that of the liquid's upper boundary
 * under it (`lead_mm`: 0 on the edge, negative behind it), and whether that lies in the exercise's band. At a toe the arc is at the
 * puddle's side by right, so toes do not count. Common practice, no source; the boundary is the engine's own, not a guess.
 * @param upperOnly a looping triangle crosses low along the shelf and high at its point: only the higher crossing of a cycle counts
 */
export function rootCrossings(
  trace: Trace,
  turns: readonly Turn[],
  cycleOf: (turn: number) => number,
  band: Band,
  upperOnly: boolean,
): Crossing[] {
  const u = trace.column('footU_mm');
  const crossings: Crossing[] = [];
  for (let k = 0; k + 1 < turns.length; k++) {
    const from = turns[k]!.at;
    const to = turns[k + 1]!.at;
    const rising = turns[k]!.toe === 'B';
    for (let i = from + 1; i <= to; i++) {
      if (!(rising ? u[i - 1]! < 0 && u[i]! >= 0 : u[i - 1]! > 0 && u[i]! <= 0)) continue;
      crossings.push(readCrossing(trace, i, cycleOf(k), band));
      break;
    }
  }
  return upperOnly ? highestPerCycle(crossings) : crossings;
}

/** A straight run stands on the root all the time: one reading each half second. */
export function alongRoot(trace: Trace, span: Span, band: Band): Crossing[] {
  const out: Crossing[] = [];
  for (let i = span.from; i < span.to; i += 50) out.push(readCrossing(trace, i, 0, band));
  return out;
}

/** The front is looked for this many samples either side where the trace has none at the crossing itself. */
const BESIDE = 4;

function readCrossing(trace: Trace, i: number, cycle: number, band: Band): Crossing {
  const foot = trace.column('footY_mm')[i]!;
  const lead = leadNear(trace, i);
  const known = !Number.isNaN(lead);
  return {
    cycle,
    t_s: milli(trace.column('t_s')[i]!),
    y_mm: milli(foot),
    lead_mm: known ? milli(lead) : null,
    onFront: known ? milli(lead) >= band.from && milli(lead) <= band.to : null,
  };
}

function leadNear(trace: Trace, at: number): number {
  const foot = trace.column('footY_mm');
  const front = trace.column('frontY_mm');
  for (let off = 0; off <= BESIDE; off++) {
    for (const i of off === 0 ? [at] : [at - off, at + off]) {
      if (i >= 0 && i < trace.length && trace.arcOn[i] === 1 && !Number.isNaN(front[i]!)) return foot[i]! - front[i]!;
    }
  }
  return Number.NaN;
}

function highestPerCycle(crossings: readonly Crossing[]): Crossing[] {
  const best = new Map<number, Crossing>();
  for (const c of crossings) {
    const had = best.get(c.cycle);
    if (had === undefined || (c.lead_mm ?? -Infinity) > (had.lead_mm ?? -Infinity)) best.set(c.cycle, c);
  }
  return [...best.values()];
}
