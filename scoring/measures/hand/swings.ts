import type { Span, Trace } from '../../attempt/trace.ts';
import { quantile } from '../statistics.ts';

/** Sideways movement below this is a straight run, mm. */
const LEAST_WEAVE_MM = 1.2;
/** A reversal counts once the aim has come back this share of the weave's spread. */
const REVERSAL_SHARE = 0.3;
const LEAST_REVERSAL_MM = 0.8;

/** A turning point of the aim across the joint: `A` at the right-hand end of a swing (u largest), `B` at the left. */
export interface Turn {
  toe: 'A' | 'B';
  /** Sample of the outermost aim. */
  at: number;
}

/**
 * Turning points of the weave, alternately A and B. A change of direction counts when the aim comes back by a fair share of the
 * weave's own spread, so tremor does not. Empty for a straight run.
 */
export function turnsOf(trace: Trace, span: Span): Turn[] {
  const u = trace.column('aimU_mm');
  const values: number[] = [];
  for (let i = span.from; i < span.to; i++) values.push(u[i]!);
  const spread = quantile(values, 0.97) - quantile(values, 0.03);
  if (!(spread >= LEAST_WEAVE_MM)) return [];
  const back = Math.max(LEAST_REVERSAL_MM, REVERSAL_SHARE * spread);
  const turns: Turn[] = [];
  let high = span.from;
  let low = span.from;
  let looking: 'A' | 'B' | null = null;
  for (let i = span.from; i < span.to; i++) {
    if (u[i]! > u[high]!) high = i;
    if (u[i]! < u[low]!) low = i;
    if (looking !== 'B' && u[high]! - u[i]! >= back) {
      turns.push({ toe: 'A', at: high });
      looking = 'B';
      low = i;
    } else if (looking !== 'A' && u[i]! - u[low]! >= back) {
      turns.push({ toe: 'B', at: low });
      looking = 'A';
      high = i;
    }
    if (looking === 'B') high = i;
    if (looking === 'A') low = i;
  }
  // The first turn is where the window happened to open unless the hand swung there from the other side.
  return turns.slice(1);
}
