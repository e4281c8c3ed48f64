/** One tick of heat in the fine region after the arc has had its turn: potential, conduction, faying face, losses. */

import type { Heated } from '../state/state.ts';
import { applyLosses, LOSS_INTERVAL } from './losses.ts';
import { refreshFlags } from './program.ts';

/** @param joinEnds sets the guards at the fine region's ends between potential and conduction; null where the fine region is the whole piece. */
export function tickHeat<S extends Heated>(s: S, joinEnds: ((s: S) => void) | null = null): void {
  const { heat, fine } = s;
  if (fine.from === fine.to) return;
  if (heat.flagsStale) refreshFlags(heat);
  heat.kernel.potential(fine.from, fine.to);
  joinEnds?.(s);
  heat.kernel.conduct(fine.from, fine.to);
  heat.kernel.faying(fine.from, fine.to);
  if (s.tick % LOSS_INTERVAL === 0) applyLosses(s);
}
